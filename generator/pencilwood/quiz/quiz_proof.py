"""Proves that a quiz cannot be passed by luck or by habit, and tells what it covers."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from pencilwood.cases.quiz import Prune, Quiz
from pencilwood.findings import Finding, in_order, worded
from pencilwood.quiz.chance import passing, with_tries
from pencilwood.quiz.learners import HABITS, Outcome, follow, tells, without
from pencilwood.quiz.made import Choices, MadeQuiz, Pruning
from pencilwood.quiz.making import vines_of
from pencilwood.quiz.minutes import minutes_of
from pencilwood.quiz.vines import Vines
from pencilwood.rules import RULES, rules_of
from pencilwood.words import say

HIGHEST_CHANCE = Fraction(1, 100)
"""The most that somebody who guesses may pass the quiz, all tries taken together."""

MOST_LONGEST = Fraction(1, 2)
"""In at most half of the trainer's own choices may the right one be the longest."""
FEWEST_TO_JUDGE = 4
"""Fewer choices than this show no habit of their writer."""


@dataclass(frozen=True)
class QuizProof:
    """What was computed for a quiz."""

    made: MadeQuiz
    chance_of_one_try: Fraction
    chance: Fraction
    """Of all tries together."""
    minutes: int
    """About how long it takes."""
    covers: tuple[str, ...]
    leaves_out: tuple[str, ...]
    """Rules that its vines go by and no question is about."""
    longest: Mapping[str, tuple[int, int]]
    """Language -> own choices in which the right one is the longest, of how many."""
    places: tuple[int, ...]
    """How often the right choice stands first, second, third..."""
    habits: Mapping[str, Mapping[str, Outcome]]
    """Language -> habit -> how it did."""
    ignorant: Mapping[str, Outcome]
    """Rule -> how somebody did who does not know it."""
    findings: tuple[Finding, ...]

    @property
    def quiz(self) -> Quiz:
        """The quiz itself."""
        return self.made.quiz


def place_in_list(proof: QuizProof) -> tuple[bool, int, Fraction]:
    """What quizzes are sorted by: as the trainer says, then the least time a question first."""
    order = proof.quiz.order
    return order is None, order or 0, Fraction(proof.minutes, len(proof.quiz.questions))


def prove_quiz(made: MadeQuiz, vines: Vines, language: str = "en") -> QuizProof:
    """Run every proof of a quiz; findings are worded in `language`."""
    first, *_ = made.questions
    one_try = _one_try(made)
    covered = _covered(made, vines)
    ignorant = {rule: without(rule, made, first, vines) for rule in covered}
    proof = QuizProof(
        made=made,
        chance_of_one_try=one_try,
        chance=with_tries(one_try, made.quiz.tries),
        minutes=minutes_of(made),
        covers=covered,
        leaves_out=tuple(name for name in _going_by(made, vines) if name not in covered),
        longest={spoken: _longest(made, spoken) for spoken in made.questions},
        places=_places(made, first),
        habits={
            spoken: {habit.name: follow(habit, made, spoken, vines) for habit in HABITS}
            for spoken in made.questions
        },
        ignorant=ignorant,
        findings=(),
    )
    found = tuple(in_order(_findings(proof, language)))
    return replace(proof, findings=found)


def _one_try(made: MadeQuiz) -> Fraction:
    questions = next(iter(made.questions.values()))
    scored = [one.body.guess for one in questions if not one.asked.common.must_know]
    must_know = [one.body.guess for one in questions if one.asked.common.must_know]
    return passing(made.quiz.passes_needed, scored, must_know)


def _covered(made: MadeQuiz, vines: Vines) -> tuple[str, ...]:
    named = set(made.rules)
    for one in made.quiz.questions:
        if isinstance(one, Prune):
            named |= {rule for rule, _ in vines[one.common.slug].case.teaches}
    return tuple(rule.name for rule in RULES if rule.name in named)


def _going_by(made: MadeQuiz, vines: Vines) -> tuple[str, ...]:
    """The rules of every form of vine that the quiz shows; of all forms when it shows none."""
    forms = {vines[slug].case.vine.form for slug in vines_of(made.quiz) or vines}
    names = {rule.name for form in forms for rule in rules_of(form)}
    return tuple(rule.name for rule in RULES if rule.name in names)


def _longest(made: MadeQuiz, language: str) -> tuple[int, int]:
    own = [
        one.body
        for one in made.questions[language]
        if one.about == "choose" and isinstance(one.body, Choices)
    ]
    longest = 0
    for body in own:
        right = len(body.options[body.right].text)
        longest += all(len(option.text) < right for option in body.options if not option.right)
    return longest, len(own)


def _places(made: MadeQuiz, language: str) -> tuple[int, ...]:
    bodies = (one.body for one in made.questions[language])
    used = Counter(body.right for body in bodies if isinstance(body, Choices))
    return tuple(used[place] for place in range(max(used, default=-1) + 1))


def _findings(proof: QuizProof, language: str) -> Iterator[Finding]:
    def finding(name: str, **facts: str | int) -> Finding:
        return worded(proof.quiz.place, f"asking.proof.{name}", language, facts)

    if proof.chance > HIGHEST_CHANCE:
        percent = f"{float(proof.chance) * 100:.2f}"
        yield finding("quiz-passed-by-luck", percent=percent, tries=proof.quiz.tries)
    for spoken, habits in proof.habits.items():
        for name, outcome in habits.items():
            if outcome.passed:
                habit = say(language, f"asking.habit.{name}")
                yield finding("quiz-passed-by-habit", habit=habit, language=spoken)
    for spoken, (longest, of) in proof.longest.items():
        if of >= FEWEST_TO_JUDGE and longest > MOST_LONGEST * of:
            yield finding("right-choice-longest", language=spoken, longest=longest, of=of)
    for rule in tells(proof.ignorant):
        yield finding("quiz-does-not-tell", rule=rule)


def pruned(made: MadeQuiz) -> tuple[str, ...]:
    """Slugs of the vines that are pruned on the quiz's own page."""
    questions = next(iter(made.questions.values()))
    return tuple(one.body.vine for one in questions if isinstance(one.body, Pruning))
