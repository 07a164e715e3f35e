"""Where wood points along its way."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property

from pencilwood.drawing.grain import Grain
from pencilwood.vine.model import Growth

TIED_FROM_MM = 200.0
"""From here on a leaning cane is held by the catch wires and turns upright, or bends and hangs."""
_TIED_WITHIN_MM = 150.0


@dataclass(frozen=True)
class Heading:
    """Where a piece points along its way: turns from its start, zigzags from bud to bud."""

    grain: Grain
    end_rad: float
    start_rad: float
    """What its start points aside of its end."""
    within_mm: float
    internode_mm: int
    trained: Growth | None = None
    """Which way a leaning cane goes further on; None for wood that goes on as it began."""

    def __call__(self, along_mm: float) -> float:
        """Heading in radians: 0 is up, positive is to the right."""
        turn = self.end_rad + self.start_rad * math.exp(-along_mm / self.within_mm)
        if self.trained is Growth.UP:
            turn *= _tied_up(along_mm)
        elif self.trained is Growth.DOWN:
            hanging = math.copysign(0.98 * math.pi, turn)
            turn = hanging + (turn - hanging) * _tied_up(along_mm)
        slow = math.sin(along_mm / 85 + self._phase) * 0.035
        if not self.internode_mm:
            return turn + 2 * slow
        zigzag = 0.06 if int(along_mm // self.internode_mm) % 2 else -0.06
        return turn + slow + zigzag * self._first_side

    @cached_property
    def _phase(self) -> float:
        return self.grain.share("phase") * 2 * math.pi

    @cached_property
    def _first_side(self) -> int:
        return first_bud_side(self.grain)


def _tied_up(along_mm: float) -> float:
    """How much of its lean a cane keeps: all of it as far up as a spur is ever cut."""
    beyond = max(0.0, along_mm - TIED_FROM_MM)
    return 0.12 + 0.88 * math.exp(-beyond / _TIED_WITHIN_MM)


def first_bud_side(grain: Grain) -> int:
    """The side of a cane's first bud, -1 for left; the buds above alternate."""
    return grain.sign("buds")
