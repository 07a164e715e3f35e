"""How far the head zone goes: two fine broken lines across the arms, its name beside the trunk."""

from __future__ import annotations

from collections.abc import Sequence

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
_NAME_BELOW_MM = 14.0
"""From the end of the lines to the foot of its name, which stands beside that end."""
_BESIDE_LINE_MM = 16.0
_AROUND_NAME_MM = 30.0
_BELOW_PLACES_MM = 60.0
"""From the foot of a place's name to the end of the lines: clear of larger letters too."""
_NAME_HIGH_MM, _LETTER_WIDE_MM, _LINE_MM = 60.0, 28.0, 88.0
"""Its first line, one letter and a second line have that room, in letters of a small screen."""
_LINE_EM = 1.1
_LONG = 12
"""A name of more letters stands on two lines: from near, canes hang on both sides of a trunk."""
_BARK = 1.15
"""How far bark stands out, compared with half the thickness of a trunk."""


def _thickest_mm(plate: Plate) -> float:
    return max(arm.thickness_mm for arm in plate.vine.arms) * THICKER


def _heights(plate: Plate, lines: Sequence[str]) -> Heights:
    """Upper and lower end of the lines; their name goes below those of places near the trunk."""
    top, low = plate.around_arm(_AHEAD_MM, _thickest_mm(plate) + _BELOW_MM)
    if named_above(plate):
        return top, low
    beside = (at.y for _, _, at in named(plate) if abs(at.x) < _BESIDE_LINE_MM + _wide_mm(lines))
    return top, max((low, *(y + _BELOW_PLACES_MM for y in beside)))


def _clear_of_names(plate: Plate, top: float, low: float) -> tuple[Heights, ...]:
    """From where to where the lines go: names below the arms may stand on them."""
    if named_above(plate):
        return ((top, low),)
    under = -plate.vine.cordon_height_mm + _thickest_mm(plate) + _PAST_ARM_MM
    return (top, under), (low - _FOOT_MM, low)


def room_for_head_zone(plate: Plate, zone_mm: int, language: str) -> Frame:
    """The part of the plane that its lines and its name take."""
    lines = _name_lines(language)
    top, low = _heights(plate, lines)
    foot, way = _name_foot(plate, zone_mm, low, lines)
    ends = foot.x, foot.x + way * _wide_mm(lines), way * -zone_mm
    return Frame(min(ends), top, max(ends), foot.y + _below_mm(lines) + _AROUND_NAME_MM)


def _name_lines(language: str) -> tuple[str, ...]:
    said = say(language, "drawing.head-zone")
    words = said.split()
    if len(said) <= _LONG or len(words) == 1:
        return (said,)
    parted = [(" ".join(words[:at]), " ".join(words[at:])) for at in range(1, len(words))]
    return min(parted, key=_wide_mm)


def _wide_mm(lines: Sequence[str]) -> float:
    return max(map(len, lines)) * _LETTER_WIDE_MM


def _below_mm(lines: Sequence[str]) -> float:
    """How far the last line is below the first."""
    return (len(lines) - 1) * _LINE_MM


def _name_foot(plate: Plate, zone_mm: int, low: float, lines: Sequence[str]) -> tuple[Point, int]:
    """Where its name begins, and which way it goes on: to the left where wood hangs on the right.

    The trunk would be in its way between the two lines.
    """
    trunk_mm = plate.vine.trunk_thickness_mm * THICKER / 2 * _BARK
    aside, y = max(zone_mm, trunk_mm) + _BESIDE_LINE_MM, low + _NAME_BELOW_MM
    in_the_way = dict.fromkeys((1, -1), 0)
    for stem in plate.stems.values():
        for at in stem.curve.points:
            way = 1 if at.x > 0 else -1
            across = aside < way * at.x < aside + _wide_mm(lines)
            in_the_way[way] += across and y - _NAME_HIGH_MM < at.y < y + _below_mm(lines)
    way = min(in_the_way, key=lambda one: in_the_way[one])
    return Point(way * aside, y), way


def draw_head_zone(plate: Plate, zone_mm: int, language: str) -> Group:
    """The lines, so far to each side of the middle as the zone goes along the arms."""
    lines_said = _name_lines(language)
    top, low = _heights(plate, lines_said)
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
    name_foot, way = _name_foot(plate, zone_mm, low, lines_said)
    pen: Attributes = {"fill": "none", "stroke": PENCIL, "stroke-width": 3.0}
    broken: Attributes = {**pen, "class": "pw-zone", "stroke-dasharray": "11 9"}
    name: Attributes = {
        "class": "pw-zone-name",
        "font-size": _NAME_MM,
        "fill": INK,
        "stroke": PAPER,
        "stroke-width": 16.0,
        "paint-order": "stroke",
        "text-anchor": "start" if way > 0 else "end",
    }
    return Group((
        Ink(lines, broken),
        Ink(foot, {**pen, "class": "pw-zone"}),
        *(
            Words(name_foot, said, {**name, "dy": f"{number * _LINE_EM}em"} if number else name)
            for number, said in enumerate(lines_said)
        ),
    ))  # fmt: skip
