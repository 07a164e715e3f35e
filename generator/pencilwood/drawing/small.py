"""A small drawing for lists: the same geometry in a few strokes, a few kilobytes a vine."""

from __future__ import annotations

from collections.abc import Iterator

from pencilwood.drawing.frame import outward
from pencilwood.drawing.looks import CANE, DEAD, FRAME, OLD, PAPER
from pencilwood.drawing.plate import Plate
from pencilwood.drawing.stems import THICKER, Stem
from pencilwood.drawing.writer import element, number
from pencilwood.vine.model import Condition
from pencilwood.vine.wood import Parts

_STROKES = 6
_MARGIN_MM = 60


def draw_small(parts: Parts) -> str:
    """A vine as a small SVG file with neither words nor ids; true to the same scale."""
    plate = Plate(parts)
    stems = list(plate.stems.values())
    tips = [stem.curve.at(stem.piece.length_mm) for stem in stems]
    sides = [outward(arm.side) * arm.length_mm for arm in plate.vine.arms]
    left = min(0, *sides, *(tip.x for tip in tips)) - _MARGIN_MM
    right = max(0, *sides, *(tip.x for tip in tips)) + _MARGIN_MM
    top = min(-plate.vine.cordon_height_mm, *(tip.y for tip in tips)) - _MARGIN_MM
    box = " ".join(number(value) for value in (left, top, right - left, _MARGIN_MM - top))
    root = {"xmlns": "http://www.w3.org/2000/svg", "viewBox": box, "fill": "none"}
    paper: dict[str, str | float] = {
        "x": left, "y": top, "width": right - left, "height": _MARGIN_MM - top, "fill": PAPER,
    }  # fmt: skip
    wood = [*_frame(plate, left, right), *(_stroke(stem) for stem in stems)]
    body = element("g", {"stroke-linecap": "round", "stroke-linejoin": "round"}, "".join(wood))
    return element("svg", root, element("rect", paper) + body)


def _frame(plate: Plate, left: float, right: float) -> Iterator[str]:
    vine = plate.vine
    for wire_mm in (*vine.trellis.catch_wires_mm, vine.trellis.top_wire_mm):
        yield _line(f"M{number(left)} {number(-wire_mm)}H{number(right)}", FRAME, 3)
    yield _line(f"M{number(left)} 0H{number(right)}", FRAME, 6)
    height = number(-vine.cordon_height_mm)
    yield _line(f"M0 0V{height}", FRAME, vine.trunk_thickness_mm * THICKER)
    for arm in vine.arms:
        path = f"M0 {height}H{number(outward(arm.side) * arm.length_mm)}"
        yield _line(path, FRAME, arm.thickness_mm * THICKER * 0.8)


def _stroke(stem: Stem) -> str:
    length_mm = stem.piece.length_mm
    points = [stem.curve.at(length_mm * step / _STROKES) for step in range(_STROKES + 1)]
    path = "M" + "L".join(f"{number(point.x)} {number(point.y)}" for point in points)
    living = CANE if stem.piece.is_cane else OLD
    colour = DEAD if stem.piece.condition is Condition.DEAD else living
    return _line(path, colour, stem.piece.thickness_mm * THICKER * 0.8)


def _line(path: str, colour: str, width_mm: float) -> str:
    return element("path", {"d": path, "stroke": colour, "stroke-width": width_mm})
