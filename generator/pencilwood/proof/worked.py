"""What takes long in the proofs of a case: the plan, its lessons, the habits and the luck.

All of it follows from the vine, the profile's figures and the rules taught, so it is kept from
one build to the next; see `pencilwood.kept`.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from pencilwood.cases.case import Case, Profile
from pencilwood.kept import kept_json
from pencilwood.plan import Plan, plan_for
from pencilwood.plan.explain import explain
from pencilwood.proof.luck import TRIES, Luck, habits, try_luck
from pencilwood.proof.teaching import Lesson, lesson
from pencilwood.score.lookup import LookUp
from pencilwood.score.sheet import Sheet
from pencilwood.vine.wood import WoodLeft


@dataclass(frozen=True)
class Worked:
    """The plan of a case, and what becomes of those who do not follow it."""

    plan: Plan
    lessons: tuple[Lesson, ...]
    """One for each rule that the case says it teaches."""
    habit_scores: Mapping[str, int]
    luck: Luck


def work_out(case: Case, sheet: Sheet, profile: Profile) -> Worked:
    """Plan a case, and try it on all who have not learned what it teaches."""
    rules = [rule for rule, _ in case.teaches]
    limits = sorted(sheet.limits.items())
    facts = [case.slug, case.vine, limits, profile.pass_mark, sheet.target, rules]
    read: list[Worked] = []

    def made() -> list[object]:
        read.append(_worked(case.slug, rules, sheet, profile.pass_mark))
        return _row(read[-1])

    def fits(value: object) -> bool:
        worked = _from_row(value, sheet, rules)
        read.extend([] if worked is None else [worked])
        return worked is not None

    # Either of them has the answer at hand; to read the row again would explain the plan twice.
    kept_json("case", facts, made, fits)
    return read[-1]


def _worked(slug: str, rules: list[str], sheet: Sheet, pass_mark: int) -> Worked:
    plan = plan_for(sheet)
    cuts = tuple(cut.done for cut in plan.cuts)
    look_up = LookUp(sheet)
    return Worked(
        plan,
        tuple(lesson(sheet, rule, cuts, plan.lost, pass_mark) for rule in rules),
        {
            habit: look_up.score(states, plan.lost, pass_mark)
            for habit, states in habits(sheet.parts).items()
        },
        try_luck(look_up, sheet.parts, plan.lost, pass_mark, seed=slug),
    )


def _row(worked: Worked) -> list[object]:
    """All of it in plain values."""
    return [
        list(worked.plan.left.states),
        [[one.broken, one.score, one.teaches] for one in worked.lessons],
        dict(worked.habit_scores),
        worked.luck.passes,
    ]


def _from_row(row: object, sheet: Sheet, rules: list[str]) -> Worked | None:
    """The same read back; None for a row that is none of this vine."""
    match row:
        case [list(states), list(told), dict(scores), int(passes)] if (
            _are_states(states, sheet)
            and len(told) == len(rules)
            and list(scores) == list(habits(sheet.parts))
            and all(isinstance(score, int) for score in scores.values())
            and 0 <= passes <= TRIES
        ):
            lessons = [_lesson(rule, one) for rule, one in zip(rules, told, strict=True)]
            plan = explain(sheet, WoodLeft(sheet.parts, tuple(states)))
            found = tuple(one for one in lessons if one is not None)
            if len(found) == len(rules):
                return Worked(plan, found, scores, Luck(TRIES, passes))
    return None


def _are_states(states: list[object], sheet: Sheet) -> bool:
    parts = sheet.parts.parts
    return len(states) == len(parts) and all(
        isinstance(state, int) and 0 <= state <= part.most
        for state, part in zip(states, parts, strict=True)
    )


def _lesson(rule: str, told: object) -> Lesson | None:
    match told:
        case [bool(broken), int() | None as score, bool(teaches)]:
            return Lesson(rule, broken, score, teaches)
    return None
