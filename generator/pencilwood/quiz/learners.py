"""Simulated learners who answer a quiz, and what the quiz tells them.

The lucky ones know nothing and keep to one habit; they must fail. The ignorant ones know
everything but one rule; the quiz must tell them which.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace

from pencilwood.cases.quiz import Quiz
from pencilwood.plan.ignorance import ignorant_of
from pencilwood.plan.solver import solve
from pencilwood.quiz.made import Choices, MadeQuestion, MadeQuiz, Ordering, Pruning, Tapping
from pencilwood.quiz.vines import ProvedVine, Vines
from pencilwood.rules import RULE_BY_NAME
from pencilwood.score.judge import judge_cuts
from pencilwood.score.lookup import LookUp
from pencilwood.vine.passes import DoneCut, Stub, Tool
from pencilwood.vine.wood import Parts

_FIRST_BUDS, _SECOND_BUDS = 2, 5


@dataclass(frozen=True)
class Outcome:
    """How somebody did in a quiz."""

    right: tuple[str, ...]
    """Slugs of the questions that were right."""
    passed: bool
    told: tuple[str, ...]
    """Rules that the quiz tells this learner to look at again."""


@dataclass(frozen=True)
class Habit:
    """Somebody who knows nothing."""

    name: str
    choose: Callable[[Sequence[str]], int]
    """Which of the texts that are shown."""
    leave: Callable[[Parts], tuple[int, ...]]
    """What is left of a vine."""


def outcome(quiz: Quiz, right: Sequence[str], told: Sequence[str]) -> Outcome:
    """Passed or not, by the quiz's own rule."""
    scored = sum(one.common.slug in right for one in quiz.scored)
    all_known = all(one.common.slug in right for one in quiz.must_know)
    passed = scored >= quiz.passes_needed and all_known
    return Outcome(tuple(right), passed, tuple(dict.fromkeys(told)))


def longest(texts: Sequence[str]) -> int:
    """The longest text; of equals the first."""
    return max(range(len(texts)), key=lambda number: (len(texts[number]), -number))


def shortest(texts: Sequence[str]) -> int:
    """The shortest text; of equals the first."""
    return min(range(len(texts)), key=lambda number: (len(texts[number]), number))


def _everything(parts: Parts) -> tuple[int, ...]:
    return tuple(part.most for part in parts.parts)


def _nothing(parts: Parts) -> tuple[int, ...]:
    return (0,) * len(parts.parts)


def _short(buds: int) -> Callable[[Parts], tuple[int, ...]]:
    return lambda parts: tuple(min(part.most, buds) for part in parts.parts)


HABITS = (
    Habit("first", lambda _: 0, _everything),
    Habit("second", lambda texts: min(1, len(texts) - 1), _short(_FIRST_BUDS)),
    Habit("third", lambda texts: min(2, len(texts) - 1), _short(_SECOND_BUDS)),
    Habit("last", lambda texts: len(texts) - 1, _nothing),
    Habit("longest", longest, _everything),
    Habit("shortest", shortest, _short(_FIRST_BUDS)),
)


def follow(habit: Habit, made: MadeQuiz, language: str, vines: Vines) -> Outcome:
    """A quiz answered by habit, through the real scoring."""
    right: list[str] = []
    told: list[str] = []
    for one in made.questions[language]:
        if _by_habit(habit, one, vines, made.pass_mark):
            right.append(one.slug)
        else:
            told += one.asked.common.rules
    return outcome(made.quiz, right, told)


def _by_habit(habit: Habit, one: MadeQuestion, vines: Vines, pass_mark: int) -> bool:
    body = one.body
    if isinstance(body, Choices):
        return habit.choose([option.text for option in body.options]) == body.right
    if isinstance(body, Tapping):
        picked = habit.choose([target.label for target in body.targets])
        return body.targets[picked].name in body.right
    if isinstance(body, Ordering):
        # Whoever always takes the first thing leaves the steps as they stand.
        shown = list(range(len(body.items)))
        order = sorted(shown, key=lambda n: len(body.items[n].text))
        return tuple({"longest": order[::-1], "shortest": order}.get(habit.name, shown)) == (
            body.order
        )
    vine = vines[body.vine]
    return _score(vine, habit.leave(vine.parts), pass_mark) >= pass_mark


def _score(vine: ProvedVine, states: tuple[int, ...], pass_mark: int) -> int:
    return LookUp(vine.sheet).score(states, vine.plan.lost, pass_mark)


def without(rule: str, made: MadeQuiz, language: str, vines: Vines) -> Outcome:
    """Somebody who knows everything but one rule: wrong wherever the rule decides."""
    right: list[str] = []
    told: list[str] = []
    for one in made.questions[language]:
        fails, tells = _unknowing(rule, one, vines, made.pass_mark)
        told += tells
        if not fails:
            right.append(one.slug)
    return outcome(made.quiz, right, told)


def _unknowing(
    rule: str, one: MadeQuestion, vines: Vines, pass_mark: int
) -> tuple[bool, Sequence[str]]:
    """Whether this question goes wrong without the rule, and the rules that it then names."""
    if not isinstance(one.body, Pruning):
        about = one.asked.common.rules
        return rule in about, about if rule in about else ()
    vine = vines[one.body.vine]
    if RULE_BY_NAME[rule].family == "cutting":
        cuts = _clumsy(rule, [cut.done for cut in vine.plan.cuts])
        return False, [charge.rule for charge in judge_cuts(vine.parts, cuts, vine.sheet.limits)]
    left = solve(vine.sheet, ignorant_of(rule))
    charges = LookUp(vine.sheet).charges(left.states)
    unavoidable = {charge.rule for charge in vine.plan.charges} - {rule}
    new = sorted({charge.rule for charge in charges} - unavoidable)
    return _score(vine, left.states, pass_mark) < pass_mark, new


def _clumsy(rule: str, cuts: Sequence[DoneCut]) -> list[DoneCut]:
    """The plan's cuts as somebody makes them who does not know a rule of cutting."""
    if rule == "wrong-tool":
        return [replace(cut, tool=Tool.SHEARS) for cut in cuts]
    if rule == "passes-out-of-order":
        return list(reversed(cuts))
    stub = Stub.CLOSE if rule == "cut-too-close" else Stub.LONG
    return [replace(cut, stub=stub) for cut in cuts]


def tells(outcomes: Mapping[str, Outcome]) -> tuple[str, ...]:
    """Rules whose ignorance the quiz does not point out."""
    return tuple(rule for rule, one in outcomes.items() if rule not in one.told)
