"""Cuts shown as bars across the wood: one bar in the rough pass, two, then three."""

from __future__ import annotations

from collections.abc import Sequence

from pencilwood.drawing.ink.looks import INK
from pencilwood.drawing.ink.points import XY, Point, between
from pencilwood.drawing.ink.shapes import Attributes, Group, Ink, Run
from pencilwood.drawing.plate import Plate
from pencilwood.drawing.wood.canes import FACE_DEEP, cut_place_mm
from pencilwood.vine.passes import PASSES, DoneCut
from pencilwood.vine.wood import Shortening, Tie

_BETWEEN_MM = 8.0
"""From bar to bar; the lowest is the cut, so that none lies on the bud below it."""
_BEYOND_EDGE_MM = 11.0
_ABOVE_FOOT_MM = 14.0
_STEPS = 4


def draw_cut_marks(plate: Plate, cuts: Sequence[DoneCut]) -> Group:
    """A mark for every cut, with the class `pw-cut-rough`, `pw-cut-thinning-out` or `-fine`."""
    marks = tuple(_mark(plate, done) for done in cuts if not isinstance(done.cut, Tie))
    return Group(marks, {"class": "pw-cut-marks"})


def along_marks(marks: Group) -> tuple[XY, ...]:
    """Places along all bars, so near to each other that no letter stands between."""
    bars = [run.points for one in marks.things if isinstance(one, Ink) for run in one.runs]
    return tuple(
        between(Point(*bar[0]), Point(*bar[1]), step / _STEPS)
        for bar in bars
        for step in range(_STEPS + 1)
    )


def _mark(plate: Plate, done: DoneCut) -> Ink:
    part = plate.parts.parts[plate.parts.index[done.cut.part]]
    stem = plate.stem(part)
    bars = PASSES.index(done.in_pass) + 1
    if isinstance(done.cut, Shortening):
        place = cut_place_mm(stem, done.cut.buds)
    else:
        place = part.start_mm + min(_ABOVE_FOOT_MM, (part.end_mm - part.start_mm) / 2)
        place -= (bars - 1) * _BETWEEN_MM / 2
        if not part.is_cane:
            # The face of the cut shows below them.
            place = max(place, part.start_mm + stem.half_mm(part.start_mm) * FACE_DEEP + 11.0)
    # Spurs stand close beside old wood: a bar that went farther would seem to cut them off too.
    beyond_mm = _BEYOND_EDGE_MM if part.is_cane else 0.0
    runs: list[Run] = []
    for bar in range(bars):
        at = place + bar * _BETWEEN_MM
        aside = stem.half_mm(at) + beyond_mm
        runs.append(Run((stem.curve.beside(at, -aside), stem.curve.beside(at, aside))))
    look: Attributes = {
        "class": f"pw-cut-mark pw-cut-{done.in_pass}",
        "data-cut-mark": done.cut.part,
    }
    return Ink(tuple(runs), {**look, "fill": "none", "stroke": INK, "stroke-width": 3.6})
