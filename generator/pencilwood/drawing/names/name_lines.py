"""The box around a name of wood, and the line from it to its wood."""

from __future__ import annotations

import math
from collections.abc import Iterator

from pencilwood.drawing.ink.points import XY, Point, between
from pencilwood.drawing.names.letter_places import LetterPlace

SIGN_WIDE = 0.58
"""How wide a letter or digit is, compared with the height of a letter."""
_LINE_STEP_MM = 5.0


def signs_of(place: XY, name: str, letter_mm: float) -> list[XY]:
    """The middle of each letter and digit of a name."""
    x, y = place
    wide_mm = letter_mm * SIGN_WIDE
    first = x - wide_mm * (len(name) - 1) / 2
    return [(first + wide_mm * number, y) for number in range(len(name))]


def line_end(place: LetterPlace, name: str, letter_mm: float) -> Point:
    """Where the line to a name ends, at the edge of the box around it."""
    foot = place.foot or place.middle
    x, y = place.middle
    wide_mm = letter_mm * (SIGN_WIDE * len(name) / 2 + 0.1)
    high_mm = letter_mm * 0.45
    over_x = wide_mm / abs(foot[0] - x) if foot[0] != x else math.inf
    over_y = high_mm / abs(foot[1] - y) if foot[1] != y else math.inf
    return between(place.middle, foot, min(1.0, over_x, over_y))


def along_line(place: LetterPlace) -> Iterator[Point]:
    """Places along the line to a name, from its foot on."""
    foot = place.foot or place.middle
    steps = max(2, int(math.dist(foot, place.middle) / _LINE_STEP_MM))
    for step in range(steps):
        yield between(foot, place.middle, step / steps)


def cross(start: XY, end: XY, other: XY, other_end: XY) -> bool:
    """Whether two lines cross."""
    return _side(start, end, other) != _side(start, end, other_end) and _side(
        other, other_end, start
    ) != _side(other, other_end, end)


def _side(start: XY, end: XY, at: XY) -> bool:
    (x, y), (end_x, end_y) = start, end
    return (end_x - x) * (at[1] - y) > (end_y - y) * (at[0] - x)
