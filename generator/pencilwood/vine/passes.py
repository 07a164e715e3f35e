"""How cuts are made: the three passes, the tool, and how far above the bud."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from enum import StrEnum

from pencilwood.vine.model import CUTTING_PASSES, PASSES, Pass
from pencilwood.vine.wood import Cut, Parts, WoodLeft, uncut

__all__ = [
    "CUTTING_PASSES",
    "PASSES",
    "DoneCut",
    "Pass",
    "Stub",
    "Tool",
    "after_cuts",
    "after_each_pass",
    "after_pass",
]


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


@dataclass(frozen=True, slots=True)
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


def after_pass(parts: Parts, cuts: Iterable[DoneCut], last: Pass) -> WoodLeft:
    """The wood left after one pass and all those before it, starting uncut."""
    return next(left for in_pass, left in _pass_by_pass(parts, cuts) if in_pass is last)


def after_each_pass(parts: Parts, cuts: Iterable[DoneCut]) -> dict[Pass, WoodLeft]:
    """The wood left after each pass of the vine's form, starting uncut.

    Within a pass cuts are made in the order given; one that cannot be made raises CutError.
    """
    form = parts.vine.form
    return {in_pass: left for in_pass, left in _pass_by_pass(parts, cuts) if in_pass in form.passes}


def _pass_by_pass(parts: Parts, cuts: Iterable[DoneCut]) -> Iterator[tuple[Pass, WoodLeft]]:
    made = tuple(cuts)
    left = uncut(parts)
    for in_pass in PASSES:
        left = after_cuts(left, (done for done in made if done.in_pass is in_pass))
        yield in_pass, left
