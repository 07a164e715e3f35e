"""Points and directions on the drawing: 1 unit is 1 mm, x to the right, y down."""

from __future__ import annotations

import math
from typing import NamedTuple


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


def between(start: Point, end: Point, share: float) -> Point:
    """The place at a share (0 to 1) of the way."""
    return Point(start.x + (end.x - start.x) * share, start.y + (end.y - start.y) * share)
