"""How far the head zone goes: two fine broken lines across the arms, with its name below them."""

from __future__ import annotations

from pencilwood.drawing.ink.looks import INK, PAPER, PENCIL
from pencilwood.drawing.ink.points import Point
from pencilwood.drawing.ink.shapes import Attributes, Group, Ink, Run, Words
from pencilwood.drawing.names.place_names import named, named_above
from pencilwood.drawing.plate import Frame, Heights, Plate
from pencilwood.drawing.wood.stems import THICKER
from pencilwood.words import say

_AHEAD_MM = 190.0
_BELOW_MM = 150.0
_PAST_ARM_MM, _FOOT_MM = 6.0, 26.0
_TICK_MM = 16.0
_NAME_MM = 40.0
"""Height of the letters of its name."""
_NAME_BELOW_MM = 42.0
_AROUND_NAME_MM = 30.0
_BELOW_PLACES_MM = 34.0
"""From the foot of a place's name to the end of the lines: clear of larger letters too."""
_NAME_HALF_WIDE_MM = 200.0
"""Room for it in the larger letters of a small screen, in the longest language."""


def _thickest_mm(plate: Plate) -> float:
    return max(arm.thickness_mm for arm in plate.vine.arms) * THICKER


def _heights(plate: Plate) -> Heights:
    """Upper and lower end of the lines; their name goes below those of places near the trunk."""
    top, low = plate.around_arm(_AHEAD_MM, _thickest_mm(plate) + _BELOW_MM)
    if named_above(plate):
        return top, low
    beside = (at.y for _, _, at in named(plate) if abs(at.x) < _NAME_HALF_WIDE_MM)
    return top, max((low, *(y + _BELOW_PLACES_MM for y in beside)))


def _clear_of_names(plate: Plate, top: float, low: float) -> tuple[Heights, ...]:
    """From where to where the lines go: names below the arms may stand on them."""
    if named_above(plate):
        return ((top, low),)
    under = -plate.vine.cordon_height_mm + _thickest_mm(plate) + _PAST_ARM_MM
    return (top, under), (low - _FOOT_MM, low)


def room_for_head_zone(plate: Plate) -> Frame:
    """The part of the plane that its lines and its name take."""
    top, low = _heights(plate)
    bottom = low + _NAME_BELOW_MM + _AROUND_NAME_MM
    return Frame(-_NAME_HALF_WIDE_MM, top, _NAME_HALF_WIDE_MM, bottom)


def draw_head_zone(plate: Plate, zone_mm: int, language: str) -> Group:
    """The lines, so far to each side of the middle as the zone goes along the arms."""
    top, low = _heights(plate)
    stretches = _clear_of_names(plate, top, low)
    lines = tuple(
        Run((Point(x, start), Point(x, end)))
        for x in (-zone_mm, zone_mm)
        for start, end in stretches
    )
    foot = tuple(
        Run((Point(side * zone_mm, low), Point(side * (zone_mm - _TICK_MM), low)))
        for side in (-1, 1)
    )
    pen: Attributes = {"fill": "none", "stroke": PENCIL, "stroke-width": 3.0}
    broken: Attributes = {**pen, "class": "pw-zone", "stroke-dasharray": "11 9"}
    name: Attributes = {
        "class": "pw-zone-name",
        "font-size": _NAME_MM,
        "fill": INK,
        "stroke": PAPER,
        "stroke-width": 16.0,
        "paint-order": "stroke",
        "text-anchor": "middle",
    }
    said = say(language, "drawing.head-zone")
    return Group((
        Ink(lines, broken),
        Ink(foot, {**pen, "class": "pw-zone"}),
        Words(Point(0.0, low + _NAME_BELOW_MM), said, name),
    ))  # fmt: skip
