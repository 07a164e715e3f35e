"""Curves that wood follows, and the outline of wood around such a curve."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cached_property

from pencilwood.drawing.points import Point

STEP_MM = 6.0


@dataclass(frozen=True)
class Curve:
    """The middle line of a piece of wood, `STEP_MM` of wood between two points."""

    points: tuple[Point, ...]

    @property
    def length_mm(self) -> float:
        """How long the wood is."""
        return (len(self.points) - 1) * STEP_MM

    def at(self, along_mm: float) -> Point:
        """The place so far along; before the foot and beyond the tip it goes straight on."""
        return Point(*self._at(along_mm))

    def _at(self, along_mm: float) -> tuple[float, float]:
        # A drawing asks for tens of thousands of places, so they are worked out in one go.
        steps = along_mm / STEP_MM
        number = int(steps)
        if number < 0:
            number = 0
        elif number > len(self.points) - 2:
            number = len(self.points) - 2
        (x, y), (end_x, end_y) = self.points[number], self.points[number + 1]
        share = steps - number
        return x + (end_x - x) * share, y + (end_y - y) * share

    def heading_rad(self, along_mm: float) -> float:
        """Where the wood points at that place: 0 is up, positive is to the right."""
        before_x, before_y = self._at(along_mm - STEP_MM / 2)
        after_x, after_y = self._at(along_mm + STEP_MM / 2)
        return math.atan2(after_x - before_x, before_y - after_y)

    def beside(self, along_mm: float, aside_mm: float) -> Point:
        """The place beside the middle line; positive is to the right of who walks along it."""
        across = self._across.get(along_mm)
        if across is None:
            heading_rad = self.heading_rad(along_mm) + math.pi / 2
            across = (*self._at(along_mm), math.sin(heading_rad), math.cos(heading_rad))
            self._across[along_mm] = across
        x, y, right, up = across
        return Point(x + right * aside_mm, y - up * aside_mm)

    @cached_property
    def _across(self) -> dict[float, tuple[float, float, float, float]]:
        """Place and direction across the wood by distance: both edges and the buds ask for them."""
        return {}


def trace(start: Point, length_mm: float, heading_rad: Callable[[float], float]) -> Curve:
    """Walk from a place along a heading that may change with the distance walked."""
    points = [start]
    x, y = start
    for step in range(max(1, math.ceil(length_mm / STEP_MM))):
        # As `Point.go`, which would take half as long again for the thousands of steps of a vine.
        heading = heading_rad((step + 0.5) * STEP_MM)
        x += math.sin(heading) * STEP_MM
        y -= math.cos(heading) * STEP_MM
        points.append(Point(x, y))
    return Curve(tuple(points))


HalfWidth = Callable[[float], float]
"""Half the drawn thickness, by the distance along the wood."""


def outline(curve: Curve, along_mm: Sequence[float], half_mm: HalfWidth) -> list[Point]:
    """The edge of the wood: up one side and down the other, through the given distances."""
    left = [curve.beside(at, -half_mm(at)) for at in along_mm]
    right = [curve.beside(at, half_mm(at)) for at in along_mm]
    return left + right[::-1]


def same_way_round(points: Sequence[Point]) -> list[Point]:
    """The outline in one sense of rotation, so that overlapping outlines fill as one body."""
    area = sum(
        here.x * after.y - after.x * here.y
        for here, after in zip(points, [*points[1:], points[0]], strict=True)
    )
    return list(points) if area > 0 else list(reversed(points))


def steps(start_mm: float, end_mm: float, about_mm: float) -> list[float]:
    """Distances from start to end, both included, about `about_mm` apart."""
    count = max(1, round((end_mm - start_mm) / about_mm))
    return [start_mm + (end_mm - start_mm) * number / count for number in range(count + 1)]
