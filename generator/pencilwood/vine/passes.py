"""How cuts are made: the three passes, the tool, and how far above the bud."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from pencilwood.vine.wood import Cut, Parts, WoodLeft, uncut


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


def after_cuts(left: WoodLeft, cuts: Iterable[DoneCut]) -> WoodLeft:
    """The wood left after some more cuts, in the order given.

    Raises CutError where a cut cannot be made.
    """
    for done in cuts:
        left = left.cut(done.cut)
    return left


def after_each_pass(parts: Parts, cuts: Iterable[DoneCut]) -> dict[Pass, WoodLeft]:
    """The wood left after the rough, the thinning-out and the fine pass, starting uncut.

    Within a pass cuts are made in the order given; one that cannot be made raises CutError.
    """
    made = tuple(cuts)
    left = uncut(parts)
    after: dict[Pass, WoodLeft] = {}
    for in_pass in PASSES:
        left = after_cuts(left, (done for done in made if done.in_pass is in_pass))
        after[in_pass] = left
    return after
