"""The window that shows the same vine in every winter, near its arms and all to one scale."""

from __future__ import annotations

from collections.abc import Sequence

from pencilwood.drawing.names.place_names import boxes_of_names
from pencilwood.drawing.plate import Frame, Plate

_MARGIN_MM = 60.0
_BESIDE_MM = 90.0
_BESIDE_NAME_MM = 20.0


def arm_window(plates: Sequence[Plate], below_arm_mm: float, beside_head_mm: float = 0.0) -> Frame:
    """Room for the wood and the names of all these drawings, below the arms and beside the head."""
    stems = [
        point for plate in plates for stem in plate.stems.values() for point in stem.curve.points
    ]
    feet = [plate.foot(one) for plate in plates for one in plate.parts.positions]
    xs = [-beside_head_mm, beside_head_mm, *(point.x for point in (*stems, *feet))]
    level = max(foot.y for foot in feet)
    names = [name for plate in plates for name in boxes_of_names(plate)]
    bottoms = [name.bottom for name in names]
    left = min(min(xs) - _BESIDE_MM, *(name.left - _BESIDE_NAME_MM for name in names))
    right = max(max(xs) + _BESIDE_MM, *(name.right + _BESIDE_NAME_MM for name in names))
    bottom = max(level + below_arm_mm, *bottoms, *(point.y + _MARGIN_MM for point in stems))
    top = min(point.y for point in stems) - _MARGIN_MM
    return Frame(left, top, right, bottom)
