"""Whether a vine teaches the rule it claims to teach.

Take the best pruning somebody could make who has never heard of the rule. If that pruning obeys
the rule by accident, the vine cannot teach it; if it breaks the rule and hardly loses by it,
nobody would notice.
"""

from __future__ import annotations

from dataclasses import dataclass

from pencilwood.plan.ignorance import ignorant_of
from pencilwood.plan.solver import Solver
from pencilwood.rules import RULE_BY_NAME
from pencilwood.rules.shapes import Shape
from pencilwood.score.judge import judge, score
from pencilwood.score.sheet import Sheet
from pencilwood.vine.passes import DoneCut, Pass, Tool

VISIBLE_POINTS = 3
"""A learner sees a loss of so many points; a smaller one teaches nothing."""


@dataclass(frozen=True)
class Lesson:
    """What happens to somebody who does not know one rule."""

    rule: str
    broken: bool
    score: int | None
    """Score of that pruning when the rule counts; None for a cutting rule."""
    teaches: bool


def lesson(
    solver: Solver, rule: str, cuts: tuple[DoneCut, ...], plan_lost: int, pass_mark: int
) -> Lesson:
    """Try a vine on somebody who does not know one rule; `cuts` are the plan's."""
    known, sheet = RULE_BY_NAME[rule], solver.sheet
    if known.family == "cutting":
        called_for = _calls_for(known.shape, cuts, sheet)
        return Lesson(rule, called_for, None, called_for)
    charges = judge(solver.best(ignorant_of(rule)), sheet.limits, sheet.target, solver.judged)
    broken = any(charge.rule == rule for charge in charges)
    reached = score(charges, plan_lost, pass_mark)
    visible = reached < pass_mark or reached <= 100 - VISIBLE_POINTS
    return Lesson(rule, broken, reached, broken and visible)


def _calls_for(shape: Shape, cuts: tuple[DoneCut, ...], sheet: Sheet) -> bool:
    """Whether the plan holds a cut at which a beginner can break a cutting rule of this shape."""
    if shape == "tool":
        return any(done.tool is not Tool.SHEARS for done in cuts)
    if shape == "order":
        return {done.in_pass for done in cuts} == set(sheet.parts.vine.form.passes)
    if shape == "tie":
        return any(done.in_pass is Pass.TIE for done in cuts)
    return any(done.in_pass is Pass.FINE for done in cuts)
