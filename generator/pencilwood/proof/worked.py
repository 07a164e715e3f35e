"""What takes long in the proofs of a case: plan, scoring sheet, lessons, habits and luck.

All of it follows from the vine, the profile's figures and the rules taught, so it is kept from
one build to the next (see `pencilwood.kept`), and from the proof of a case to its page.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass

from pencilwood.cases.case import Case, Profile
from pencilwood.kept import kept_json, name_of
from pencilwood.plan import Plan, Solver, plan_by
from pencilwood.plan.explain import explained
from pencilwood.proof.luck import TRIES, Luck, habits, try_luck
from pencilwood.proof.teaching import Lesson, lesson
from pencilwood.score.judge import Charge, Target
from pencilwood.score.lookup import LookUp
from pencilwood.score.sheet import Sheet, as_text, rules_charged
from pencilwood.vine.bands import Limits
from pencilwood.vine.wood import Parts, WoodLeft


@dataclass(frozen=True)
class Worked:
    """The plan of a case, and what becomes of those who do not follow it."""

    plan: Plan
    lessons: tuple[Lesson, ...]
    """One for each rule that the case says it teaches."""
    habit_scores: Mapping[str, int]
    luck: Luck
    sheet_text: str
    """Its scoring sheet as JSON, as pages carry it."""
    rules_charged: tuple[str, ...]
    """Every rule that can cost points on its vine."""


@dataclass(frozen=True)
class ToWorkOut:
    """What of a case it follows from."""

    case: Case
    profile: Profile
    parts: Parts
    limits: Limits
    target: Target
    sheet: Callable[[], Sheet]
    """Asked for only where nothing is kept."""

    @property
    def rules(self) -> list[str]:
        """The rules taught."""
        return [rule for rule, _ in self.case.teaches]


def work_out(given: ToWorkOut) -> Worked:
    """Plan a case, and try it on all who have not learned what it teaches."""
    case, pass_mark = given.case, given.profile.pass_mark
    limits = sorted(given.limits.items())
    facts = [case.slug, name_of(case.vine), limits, pass_mark, given.target, given.rules]
    read: list[Worked] = []

    def made() -> list[object]:
        read.append(_worked(case.slug, given.rules, given.sheet(), pass_mark))
        return _row(read[-1])

    def fits(value: object) -> bool:
        worked = _from_row(value, given)
        read.extend([] if worked is None else [worked])
        return worked is not None

    # Either of them has the answer at hand; to read the row again would take as long once more.
    kept_json("case", facts, made, fits)
    return read[-1]


def _worked(slug: str, rules: list[str], sheet: Sheet, pass_mark: int) -> Worked:
    solver = Solver(sheet)
    plan = plan_by(solver)
    cuts = tuple(cut.done for cut in plan.cuts)
    look_up = LookUp(sheet)
    return Worked(
        plan,
        tuple(lesson(solver, rule, cuts, plan.lost, pass_mark) for rule in rules),
        {
            habit: look_up.score(states, plan.lost, pass_mark)
            for habit, states in habits(sheet.parts).items()
        },
        try_luck(look_up, sheet.parts, plan.lost, pass_mark, seed=slug),
        as_text(sheet, slug, plan.lost, pass_mark),
        tuple(rules_charged(sheet)),
    )


def _row(worked: Worked) -> list[object]:
    """All of it in plain values."""
    return [
        list(worked.plan.left.states),
        _charges_row(worked.plan.charges),
        [_charges_row(cut.reasons) for cut in worked.plan.cuts],
        [[one.broken, one.score, one.teaches] for one in worked.lessons],
        dict(worked.habit_scores),
        worked.luck.passes,
        worked.sheet_text,
        list(worked.rules_charged),
    ]


def _charges_row(charges: Iterable[Charge]) -> list[object]:
    return [
        [one.rule, one.message, one.points, one.must, dict(one.facts), list(one.where)]
        for one in charges
    ]


def _from_row(row: object, given: ToWorkOut) -> Worked | None:
    """The same read back; None for a row that is none of this vine."""
    match row:
        case [list(states), list(lost), list(whys), list(told), dict(scores), int(passes),
              str(sheet_text), list(charged)] if (
            _are_states(states, given.parts)
            and len(told) == len(given.rules)
            and list(scores) == list(habits(given.parts))
            and all(isinstance(score, int) for score in scores.values())
            and 0 <= passes <= TRIES
        ):  # fmt: skip
            lessons = [_lesson(rule, one) for rule, one in zip(given.rules, told, strict=True)]
            found = tuple(one for one in lessons if one is not None)
            plan = _plan(given, states, lost, whys)
            if plan is not None and len(found) == len(given.rules):
                luck, names = Luck(TRIES, passes), tuple(map(str, charged))
                return Worked(plan, found, scores, luck, sheet_text, names)
    return None


def _are_states(states: list[object], parts: Parts) -> bool:
    return len(states) == len(parts.parts) and all(
        isinstance(state, int) and 0 <= state <= part.most
        for state, part in zip(states, parts.parts, strict=True)
    )


def _plan(
    given: ToWorkOut, states: list[int], lost: list[object], whys: list[object]
) -> Plan | None:
    try:
        reasons = [[_charge(row) for row in why] for why in whys if isinstance(why, list)]
        charges = [_charge(row) for row in lost]
        return explained(given.limits, WoodLeft(given.parts, tuple(states)), charges, reasons)
    except ValueError:
        return None


def _charge(row: object) -> Charge:
    match row:
        case [str(rule), str(message), int(points), bool(must), dict(facts), list(where)]:
            return Charge(rule, message, points, must, facts, tuple(where))
    raise ValueError("no charge")


def _lesson(rule: str, told: object) -> Lesson | None:
    match told:
        case [bool(broken), int() | None as score, bool(teaches)]:
            return Lesson(rule, broken, score, teaches)
    return None
