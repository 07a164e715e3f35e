"""What a browser needs to draw a vine in its own few strokes, in few bytes.

The full drawing of a vine takes a quarter of a megabyte. Hundreds of practice vines are drawn by
`site_assets/js/practice_drawing.mjs` instead, from the same geometry: whole millimetres, x to
the right of the trunk, y down from the ground; in a list of points the first is a place, every
further one the way from the point before.

    {"box": [x, y, width, height], "cordon", "trunk": thickness, "thicker": how many times too
     thick wood is drawn, "arms": [[x of the tip, thickness], ...], "wires": [height, ...],
     "trimming": height, "shapes": [[condition, lean, age, length, height of the lowest bud,
     internode, cut point x, y, [point, ...]], ...]}

`shapes` follow the order of the sheet's pieces. A cane has a point at its foot, at each bud and
at its tip; older wood at its foot, middle and end. Conditions and leans are numbers in the
order of `CONDITIONS` and `LEANS`.
"""

from __future__ import annotations

from itertools import pairwise

from pencilwood.drawing.ink.points import Point
from pencilwood.drawing.plate import Plate
from pencilwood.drawing.scene.cutpoints import cut_points
from pencilwood.drawing.wood.frame import outward
from pencilwood.drawing.wood.stems import THICKER, Stem
from pencilwood.vine.model import Condition, Lean
from pencilwood.vine.wood import STUB_WORTH_CUTTING_MM, Part, Parts

CONDITIONS = tuple(Condition)
LEANS = tuple(Lean)
_MARGIN_MM = 90


def compact_drawing(parts: Parts) -> dict[str, object]:
    """The geometry of a vine."""
    plate = Plate(parts)
    vine = parts.vine
    feet = {point.part: point.middle for point in cut_points(plate) if point.buds is None}
    shapes = [_shape(plate.stem(part), part, feet[part.name]) for part in parts.parts]
    return {
        "box": _box(plate),
        "cordon": vine.cordon_height_mm,
        "trunk": vine.trunk_thickness_mm,
        "thicker": THICKER,
        "arms": [[outward(arm.side) * arm.length_mm, arm.thickness_mm] for arm in vine.arms],
        "wires": [*vine.trellis.catch_wires_mm, vine.trellis.top_wire_mm],
        "trimming": vine.trellis.trimming_mm,
        "shapes": shapes,
    }


def _shape(stem: Stem, part: Part, foot: Point) -> list[object]:
    piece = part.piece
    along = _places_mm(part)
    points = [stem.curve.at(at) for at in along]
    return [
        CONDITIONS.index(piece.condition),
        LEANS.index(piece.lean),
        piece.age_years,
        part.end_mm - part.start_mm,
        part.bud_height_mm(1) if part.is_cane else part.base_height_mm,
        piece.internode_mm,
        round(foot.x),
        round(foot.y),
        _flat(points),
    ]


def _places_mm(part: Part) -> list[float]:
    piece = part.piece
    if part.is_cane:
        nodes = [float(bud * piece.internode_mm) for bud in range(piece.buds + 1)]
        return [*nodes, float(piece.length_mm)]
    rest = piece.length_mm - part.end_mm
    end = piece.length_mm if rest < STUB_WORTH_CUTTING_MM else part.end_mm
    return [float(part.start_mm), (part.start_mm + end) / 2, float(end)]


def _flat(points: list[Point]) -> list[int]:
    """Rounded points as steps, without letting the rounding add up."""
    whole = [(round(point.x), round(point.y)) for point in points]
    steps = [value for a, b in pairwise(whole) for value in (b[0] - a[0], b[1] - a[1])]
    return [*whole[0], *steps]


def _box(plate: Plate) -> list[int]:
    tips = [stem.curve.at(stem.piece.length_mm) for stem in plate.stems.values()]
    ends = [outward(arm.side) * arm.length_mm for arm in plate.vine.arms]
    left = min(0.0, *ends, *(tip.x for tip in tips)) - _MARGIN_MM
    right = max(0.0, *ends, *(tip.x for tip in tips)) + _MARGIN_MM
    top = max(plate.vine.trellis.trimming_mm, *(-tip.y for tip in tips)) + _MARGIN_MM
    return [round(left), round(-top), round(right - left), round(top + _MARGIN_MM)]
