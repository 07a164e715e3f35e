"""Curves that wood follows, and the outline of wood around such a curve."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cached_property

from pencilwood.drawing.ink.points import XY, Point

STEP_MM = 6.0


@dataclass(frozen=True)
class Curve:
    """The middle line of a piece of wood, `STEP_MM` of wood between two points."""

    bends: Sequence[XY]

    @cached_property
    def points(self) -> tuple[Point, ...]:
        """The same as places."""
        return tuple(Point(x, y) for x, y in self.bends)

    @cached_property
    def corners(self) -> tuple[XY, XY]:
        """Upper left and lower right corner of the room that it takes."""
        xs, ys = zip(*self.bends, strict=True)
        return (min(xs), min(ys)), (max(xs), max(ys))

    @property
    def length_mm(self) -> float:
        """How long the wood is."""
        return (len(self.bends) - 1) * STEP_MM

    def at(self, along_mm: float) -> Point:
        """The place so far along; before the foot and beyond the tip it goes straight on."""
        return Point(*self._at(along_mm))

    def _at(self, along_mm: float) -> XY:
        # A drawing asks for tens of thousands of places, so they are worked out in one go.
        bends = self.bends
        steps = along_mm / STEP_MM
        number = int(steps)
        if number < 0:
            number = 0
        elif number > len(bends) - 2:
            number = len(bends) - 2
        x, y = bends[number]
        end_x, end_y = bends[number + 1]
        share = steps - number
        return x + (end_x - x) * share, y + (end_y - y) * share

    def heading_rad(self, along_mm: float) -> float:
        """Where the wood points at that place: 0 is up, positive is to the right."""
        before_x, before_y = self._at(along_mm - STEP_MM / 2)
        after_x, after_y = self._at(along_mm + STEP_MM / 2)
        return math.atan2(after_x - before_x, before_y - after_y)

    def beside(self, along_mm: float, aside_mm: float) -> XY:
        """The place beside the middle line; positive is to the right of who walks along it."""
        across = self._across.get(along_mm)
        if across is None:
            heading_rad = self.heading_rad(along_mm) + math.pi / 2
            x, y = self._at(along_mm)
            across = x, y, math.sin(heading_rad), math.cos(heading_rad)
            self._across[along_mm] = across
        x, y, right, up = across
        return x + right * aside_mm, y - up * aside_mm

    @cached_property
    def _across(self) -> dict[float, tuple[float, float, float, float]]:
        """Place and direction across the wood by distance: both edges and the buds ask for them."""
        return {}


def trace(start: Point, length_mm: float, heading_rad: Callable[[float], float]) -> Curve:
    """Walk from a place along a heading that may change with the distance walked."""
    x, y = start
    bends = [(x, y)]
    sin, cos = math.sin, math.cos
    for step in range(max(1, math.ceil(length_mm / STEP_MM))):
        heading = heading_rad((step + 0.5) * STEP_MM)
        x += sin(heading) * STEP_MM
        y -= cos(heading) * STEP_MM
        bends.append((x, y))
    return Curve(bends)


HalfWidth = Callable[[float], float]
"""Half the drawn thickness, by the distance along the wood."""


def outline(curve: Curve, along_mm: Sequence[float], half_mm: HalfWidth) -> list[XY]:
    """The edge of the wood: up one side and down the other, through the given distances."""
    left = [curve.beside(at, -half_mm(at)) for at in along_mm]
    right = [curve.beside(at, half_mm(at)) for at in along_mm]
    return left + right[::-1]


def same_way_round(points: Sequence[XY]) -> list[XY]:
    """The outline in one sense of rotation, so that overlapping outlines fill as one body."""
    area = sum(
        x * after_y - after_x * y
        for (x, y), (after_x, after_y) in zip(points, [*points[1:], points[0]], strict=True)
    )
    return list(points) if area > 0 else list(reversed(points))


def steps(start_mm: float, end_mm: float, about_mm: float) -> list[float]:
    """Distances from start to end, both included, about `about_mm` apart."""
    count = max(1, round((end_mm - start_mm) / about_mm))
    return [start_mm + (end_mm - start_mm) * number / count for number in range(count + 1)]
