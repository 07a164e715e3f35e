"""Geometry of a vine around a head, common to both of its views."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace

from pencilwood.drawing.ink.curves import Curve, same_way_round, trace
from pencilwood.drawing.ink.grain import Grain
from pencilwood.drawing.ink.points import Point
from pencilwood.drawing.ink.shapes import Run
from pencilwood.drawing.wood.frame import Limb
from pencilwood.drawing.wood.stems import THICKER, Stem
from pencilwood.vine.model import Position, Vine

_KNOB_SHARE = 0.7


def turn_rad(vine: Vine, position: Position) -> float:
    """How far around the head a place is, clockwise from above, from the mark to the row."""
    return 2 * math.pi * position.at_mm / vine.line_length_mm


def radius_mm(vine: Vine) -> float:
    """From the middle of the head to where the tape lies."""
    return vine.line_length_mm / (2 * math.pi)


def roomier_turn_rad(vine: Vine, position: Position) -> float:
    """From the way outward to the side of a place where the next one is farther away."""
    around = [(one.at_mm - position.at_mm) % vine.line_length_mm for one in vine.arms[0].positions]
    ahead = sorted(far for far in around if far > 0) or [0]
    return math.pi / 2 if ahead[0] > vine.line_length_mm - ahead[-1] else -math.pi / 2


def nearness(position: Position, vine: Vine) -> float:
    """1 on the side to the row, -1 on the far side."""
    return math.cos(turn_rad(vine, position))


def moved(stem: Stem, to: Callable[[Point], Point]) -> Stem:
    """The stem with every point of its curve moved."""
    return replace(stem, curve=Curve([to(point) for point in stem.curve.points]))


def limb(vine: Vine, position: Position, start: Point, foot: Point) -> Limb:
    """The short arm from the head to a place."""
    half = vine.arms[0].thickness_mm * THICKER / 2
    length = max(start.away_from(foot), 1.0)
    heading = math.atan2(foot.x - start.x, start.y - foot.y)
    grain = Grain(f"arm {position.name}")

    def half_mm(along_mm: float) -> float:
        rough = grain.within(-0.05, 0.05, "rough", int(along_mm // 26))
        return half * (1 + rough) * (1 - 0.3 * min(max(along_mm / length, 0.0), 1.0))

    return Limb(f"arm {position.name}", trace(start, length, lambda _: heading), half_mm, 0, length)


def knob(vine: Vine, middle: Point) -> Run:
    """The outline of the head."""
    half = vine.trunk_thickness_mm * THICKER * _KNOB_SHARE
    grain = Grain("head")
    points = []
    for step in range(16):
        rough = 1 + grain.within(-0.05, 0.05, "knob", step)
        points.append(middle.go(2 * math.pi * step / 16, half * rough))
    return Run(tuple(same_way_round(points)), closed=True, smooth=False)


@dataclass(frozen=True)
class Reach:
    """How far wood lies from a middle, to all four sides, in millimetres."""

    left: float
    right: float
    up: float
    down: float


def reach_of(points: Iterable[Point], least: float) -> Reach:
    """How far points lie from the origin to each side, `least` at least."""
    reached = list(points)
    return Reach(
        max([least, *(-point.x for point in reached)]),
        max([least, *(point.x for point in reached)]),
        max([least, *(-point.y for point in reached)]),
        max([least, *(point.y for point in reached)]),
    )
