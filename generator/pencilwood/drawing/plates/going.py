"""What goes, on the plates that show wood from near: its dotted edge, and bars across the cut."""

from __future__ import annotations

from pencilwood.drawing.ink.curves import Curve, HalfWidth, outline, steps
from pencilwood.drawing.ink.looks import INK, PENCIL
from pencilwood.drawing.ink.shapes import Attributes, Group, Ink, Run
from pencilwood.drawing.plates.pen import swelling
from pencilwood.drawing.wood.canes import bud_outline, bud_side
from pencilwood.drawing.wood.stems import Stem

_PEN = 2.6
_BETWEEN_BARS = 17.0
"""From bar to bar, in units of the board."""


def _dotted(times: float) -> Attributes:
    return {
        "class": "pw-going", "fill": "none", "stroke": PENCIL, "stroke-width": _PEN / times,
        "stroke-dasharray": "7 6",
    }  # fmt: skip


def going_cane(stem: Stem, from_mm: float, times: float) -> Group:
    """A cane from that place to its tip, with the ring of each node and its buds."""
    piece = stem.piece
    along = [from_mm, *steps(from_mm + 8, piece.length_mm, 24.0)]
    runs = [Run((*outline(stem.curve, along, stem.half_mm),), closed=True)]
    for bud in range(1, piece.buds + 1):
        at = float(bud * piece.internode_mm)
        if at < from_mm:
            continue
        side, half = bud_side(stem, bud), stem.half_mm(at)
        runs.append(
            Run(tuple(stem.curve.beside(at - up, half * aside) for aside, up in (
                (-side * 0.9, 2.0), (0.0, 5.5), (side * 0.6, 4.0),
            )))
        )  # fmt: skip
        runs.append(bud_outline(stem, bud))
    return Group((Ink(tuple(runs), _dotted(times)),))


def going_old(curve: Curve, from_mm: float, to_mm: float, half_mm: HalfWidth, times: float) -> Ink:
    """Old wood above a cut."""
    edge = outline(curve, steps(from_mm, to_mm, 14.0), half_mm)
    return Ink((Run(tuple(edge), closed=True),), _dotted(times))


def bars_across(curve: Curve, at_mm: float, half_mm: HalfWidth, bars: int, times: float) -> Ink:
    """As many bars as the pass has in which the cut is made; drawn as a pen draws them."""
    runs = []
    for bar in range(bars):
        at = at_mm + bar * _BETWEEN_BARS / times
        left, right = curve.beside(at, -half_mm(at)), curve.beside(at, half_mm(at))
        middle = ((left[0] + right[0]) / 2, (left[1] + right[1]) / 2)
        runs.append(swelling([left, middle, right], 8.0 / times))
    return Ink(tuple(runs), {"class": "pw-pen", "fill": INK, "stroke": "none"})
