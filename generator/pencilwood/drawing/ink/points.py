"""Points and directions on the drawing: 1 unit is 1 mm, x to the right, y down."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import NamedTuple

XY = tuple[float, float]
"""A place where only its two figures are asked for: a plain pair is made in a fifth of the time,
and a vine has tens of thousands of them."""


class Point(NamedTuple):
    """A place on the drawing."""

    x: float
    y: float

    def go(self, heading_rad: float, distance_mm: float) -> Point:
        """The place so far away; a heading of 0 is straight up, positive turns right."""
        return Point(
            self.x + math.sin(heading_rad) * distance_mm,
            self.y - math.cos(heading_rad) * distance_mm,
        )

    def away_from(self, other: Point) -> float:
        """Distance between two places."""
        return math.hypot(self.x - other.x, self.y - other.y)


def between(start: XY, end: XY, share: float) -> Point:
    """The place at a share (0 to 1) of the way."""
    (x, y), (end_x, end_y) = start, end
    return Point(x + (end_x - x) * share, y + (end_y - y) * share)


def is_inside(place: XY, edge: Sequence[XY]) -> bool:
    """Whether a place is inside of a closed edge: a ray crosses that an odd number of times."""
    x, y = place
    inside = False
    for (ax, ay), (bx, by) in zip(edge, [*edge[1:], edge[0]], strict=True):
        if (ay > y) != (by > y) and x < (bx - ax) * (y - ay) / (by - ay) + ax:
            inside = not inside
    return inside
