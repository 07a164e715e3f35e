"""Leaving one spur at a position: which of its canes stays, the one near the arm or the far one."""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum

from pencilwood.vine.bands import Limits
from pencilwood.vine.measures import away_mm
from pencilwood.vine.model import Condition
from pencilwood.vine.wood import Part, Parts


class Stays(StrEnum):
    """Which good cane stays."""

    NEAR = "near"
    FAR = "far"


def cane_that_stays(parts: Parts, position: str, stays: Stays, limits: Limits) -> Part | None:
    """The cane of a choice; None where no cane lives.

    It is sound and thick enough where there is such a cane, else any that lives.
    """
    here = (parts.parts[number] for number in parts.of_position(position))
    living = [part for part in here if part.is_cane and part.piece.is_alive]
    least_mm = limits["cane thickness at least"]
    good = [
        part
        for part in living
        if part.piece.condition is Condition.SOUND and part.piece.thickness_mm >= least_mm
    ]
    in_order = sorted(good or living, key=lambda part: away_mm(parts.vine, part))
    if not in_order:
        return None
    return in_order[0] if stays is Stays.NEAR else in_order[-1]


def states_with_spur(
    parts: Parts, position: str, stays: Stays, limits: Limits
) -> Mapping[int, int]:
    """What is left of each part of a position: a spur and the wood that carries it.

    Where no cane lives nothing is cut.
    """
    cane = cane_that_stays(parts, position, stays, limits)
    numbers = parts.of_position(position)
    if cane is None:
        return {number: parts.parts[number].most for number in numbers}
    states = dict.fromkeys(numbers, 0)
    number = parts.index[cane.name]
    states[number] = min(limits["buds on a spur at most"], cane.piece.buds)
    return states | dict.fromkeys(parts.below(number), 1)
