"""The best pruning of somebody who has never heard of one rule."""

from __future__ import annotations

from pencilwood.plan.solver import POINT
from pencilwood.score.judge import Charge
from pencilwood.score.sheet import Weigh

_BREAKING = 100_000
"""Among prunings that are equal without the rule, the one that breaks it more comes first."""


def ignorant_of(rule: str) -> Weigh:
    """Weighs charges as if the rule did not exist; ties go to the pruning that breaks it."""

    def weigh(charges: tuple[Charge, ...]) -> int | None:
        known = [charge for charge in charges if charge.rule != rule]
        if any(charge.must for charge in known):
            return None
        breaking = len(charges) - len(known)
        return POINT * sum(charge.points for charge in known) - _BREAKING * breaking

    return weigh
