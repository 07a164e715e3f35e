"""The exact plan: the cheapest pruning of a measured vine, and why."""

from __future__ import annotations

from pencilwood.plan.explain import Plan, ReasonedCut, explain
from pencilwood.plan.solver import solve
from pencilwood.score.sheet import Sheet

__all__ = ["Plan", "ReasonedCut", "plan_for"]


def plan_for(sheet: Sheet) -> Plan:
    """The best pruning of a vine that breaks no must-rule, cut by cut, with reasons."""
    return explain(sheet, solve(sheet))
