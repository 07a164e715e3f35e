"""How cuts are made: the three passes, the tool, and how far above the bud."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from pencilwood.vine.wood import Cut


class Pass(StrEnum):
    """The passes, in the trade's order."""

    ROUGH = "rough"
    THINNING_OUT = "thinning-out"
    FINE = "fine"


PASSES = tuple(Pass)


class Tool(StrEnum):
    """What the cut is made with."""

    SHEARS = "shears"
    LOPPERS = "loppers"
    SAW = "saw"


class Stub(StrEnum):
    """How much wood a shortening leaves beyond the last bud."""

    CLOSE = "close"
    RIGHT = "right"
    LONG = "long"


@dataclass(frozen=True)
class DoneCut:
    """One cut as somebody made it."""

    cut: Cut
    in_pass: Pass
    tool: Tool = Tool.SHEARS
    stub: Stub = Stub.RIGHT
