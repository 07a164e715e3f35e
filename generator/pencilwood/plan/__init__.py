"""The exact plan: the cheapest pruning of a measured vine, and why."""

from __future__ import annotations

from pencilwood.plan.explain import Plan, ReasonedCut, explain
from pencilwood.plan.solver import Solver
from pencilwood.score.sheet import Sheet

__all__ = ["Plan", "ReasonedCut", "Solver", "plan_by", "plan_for"]


def plan_for(sheet: Sheet) -> Plan:
    """The best pruning of a vine that breaks no must-rule, cut by cut, with reasons."""
    return plan_by(Solver(sheet))


def plan_by(solver: Solver) -> Plan:
    """The same, by one who prunes the vine by other weighings as well."""
    return explain(solver.sheet, solver.best(), solver.judged)
