"""Proves a vine that nobody wrote an answer for: what a practice vine must pass to be given out."""

from __future__ import annotations

from dataclasses import dataclass

from pencilwood.cases.case import Profile
from pencilwood.plan import Plan, Solver, plan_by
from pencilwood.proof.luck import habits, try_luck
from pencilwood.proof.teaching import lesson
from pencilwood.rules import rules_of
from pencilwood.score.judge import Target, target_for
from pencilwood.score.lookup import LookUp
from pencilwood.score.sheet import Sheet, compile_sheet
from pencilwood.vine.model import Vine
from pencilwood.vine.wood import Parts, divide

TRIES = 400
"""Random prunings of each vine. None of them may pass: the upper end of the 95 % interval is
then below one percent."""

MOST_UNAVOIDABLE_POINTS = 40
"""A vine on which even the best pruning loses more is a renovation, not a practice."""


@dataclass(frozen=True)
class PracticeProof:
    """A practice vine that passed every proof."""

    parts: Parts
    sheet: Sheet
    target: Target
    plan: Plan
    teaches: tuple[str, ...]
    """Vine rules that nobody prunes it well without."""


def prove_practice(vine: Vine, profile: Profile, seed: str) -> PracticeProof | None:
    """The vine with its plan and its lessons; None when it is too easy, too lucky or too poor."""
    parts = divide(vine)
    limits = profile.limits_of(vine.form)
    target = target_for(vine, limits)
    sheet = compile_sheet(parts, limits, target)
    solver = Solver(sheet)
    plan = plan_by(solver)
    if plan.lost > MOST_UNAVOIDABLE_POINTS or not any(plan.left.states):
        return None
    if _passed_unlearned(sheet, plan, profile, seed):
        return None
    teaches = _lessons(solver, plan, profile)
    return PracticeProof(parts, sheet, target, plan, teaches) if teaches else None


def _passed_unlearned(sheet: Sheet, plan: Plan, profile: Profile, seed: str) -> bool:
    look_up, pass_mark = LookUp(sheet), profile.pass_mark
    for states in habits(sheet.parts).values():
        if look_up.score(states, plan.lost, pass_mark) >= pass_mark:
            return True
    return try_luck(look_up, sheet.parts, plan.lost, pass_mark, seed, TRIES).passes > 0


def _lessons(solver: Solver, plan: Plan, profile: Profile) -> tuple[str, ...]:
    """Only rules that some pruning of the vine can break are worth trying."""
    sheet = solver.sheet
    met = {str(message["rule"]) for message in sheet.ledger.messages()}
    return tuple(
        rule.name
        for rule in rules_of(sheet.parts.vine.form)
        if rule.family == "vine"
        and rule.name in met
        and lesson(solver, rule.name, (), plan.lost, profile.pass_mark).teaches
    )
