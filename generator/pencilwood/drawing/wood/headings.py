"""Where wood points along its way."""

from __future__ import annotations

import math
from collections.abc import Callable

from pencilwood.drawing.ink.grain import Grain
from pencilwood.vine.model import Growth

TIED_FROM_MM = 200.0
"""From here on a leaning cane is held by the catch wires and turns upright, or bends and hangs."""
_TIED_WITHIN_MM = 150.0


Heading = Callable[[float], float]
"""Distance along the wood -> where it points, in radians: 0 is up, positive is to the right."""


def heading(
    grain: Grain,
    end_rad: float,
    start_rad: float,
    within_mm: float,
    internode_mm: int,
    trained: Growth | None = None,
) -> Heading:
    """Where a piece points along its way: turns from its start, zigzags from bud to bud.

    `start_rad` is what its start points aside of its end; `trained` says which way a leaning cane
    goes further on, None that it goes on as it began. It is asked for thousands of times a vine.
    """
    turned = _turned(end_rad, start_rad, within_mm)
    if trained is not None:
        turned = _trained(turned, trained)
    phase = grain.share("phase") * 2 * math.pi
    sin = math.sin
    if not internode_mm:
        return lambda along_mm: turned(along_mm) + 2 * (sin(along_mm / 85 + phase) * 0.035)
    first_side = first_bud_side(grain)
    even, odd = -0.06 * first_side, 0.06 * first_side

    def zigzag(along_mm: float) -> float:
        slow = sin(along_mm / 85 + phase) * 0.035
        return turned(along_mm) + slow + (odd if int(along_mm // internode_mm) % 2 else even)

    return zigzag


def _turned(end_rad: float, start_rad: float, within_mm: float) -> Heading:
    exp = math.exp
    return lambda along_mm: end_rad + start_rad * exp(-along_mm / within_mm)


def _trained(turned: Heading, growth: Growth) -> Heading:
    """The same for a cane that is held by the catch wires, or that bends over and hangs."""
    if growth is Growth.UP:
        return lambda along_mm: turned(along_mm) * _tied_up(along_mm)

    def hanging(along_mm: float) -> float:
        turn = turned(along_mm)
        down = math.copysign(0.98 * math.pi, turn)
        return down + (turn - down) * _tied_up(along_mm)

    return hanging


def _tied_up(along_mm: float) -> float:
    """How much of its lean a cane keeps: all of it as far up as a spur is ever cut."""
    beyond = max(0.0, along_mm - TIED_FROM_MM)
    return 0.12 + 0.88 * math.exp(-beyond / _TIED_WITHIN_MM)


def first_bud_side(grain: Grain) -> int:
    """The side of a cane's first bud, -1 for left; the buds above alternate."""
    return grain.sign("buds")
