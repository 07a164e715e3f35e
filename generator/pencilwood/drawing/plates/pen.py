"""The pen of the plates: lines that swell and end in points, hatching, and things put in place."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from pencilwood.drawing.ink.curves import Curve, HalfWidth, steps
from pencilwood.drawing.ink.looks import INK
from pencilwood.drawing.ink.points import XY, Point
from pencilwood.drawing.ink.shapes import Attributes, Dot, Group, Ink, Run, Thing

_FULLEST = 0.6
"""Below 1 a line is nearly as wide as its pen along most of its way."""
_SLANT = 0.5
"""How much farther along the wood a stroke of hatching ends than it begins, by its length."""


def swelling(points: Sequence[XY], width: float) -> Run:
    """A pen line as the outline of its ink: it grows to `width` and ends in points."""
    last = len(points) - 1
    left: list[XY] = []
    right: list[XY] = []
    for number, (x, y) in enumerate(points):
        before, after = points[max(number - 1, 0)], points[min(number + 1, last)]
        way_x, way_y = after[0] - before[0], after[1] - before[1]
        long = math.hypot(way_x, way_y) or 1.0
        half = width / 2 * max(math.sin(math.pi * number / last), 0.0) ** _FULLEST
        left.append((x - way_y / long * half, y + way_x / long * half))
        right.append((x + way_y / long * half, y - way_x / long * half))
    return Run((*left, *right[::-1]), closed=True)


def penned(runs: Iterable[Run], *, on_wood: bool = False) -> Ink:
    """Swelling lines in ink; on wood they stay dark on a dark page."""
    css_class = "pw-pen-mark" if on_wood else "pw-pen"
    return Ink(tuple(runs), {"class": css_class, "fill": INK, "stroke": "none"})


def fine(runs: Iterable[Run], width: float, *, on_wood: bool = False) -> Ink:
    """Thin lines of one width, as hatching is made of."""
    look: Attributes = {
        "class": "pw-bark" if on_wood else "pw-plate-line",
        "fill": "none",
        "stroke": INK,
        "stroke-width": width,
    }
    return Ink(tuple(runs), look)


def wash(run: Run, opacity: str = ".2") -> Ink:
    """A thin wash of shade."""
    look = {"class": "pw-wash", "fill": "#000", "fill-opacity": opacity, "stroke": "none"}
    return Ink((run,), look)


def hatching(
    curve: Curve,
    start_mm: float,
    end_mm: float,
    half_mm: HalfWidth,
    side: int,
    every_mm: float,
    reach: float = 0.45,
) -> Iterator[Run]:
    """Strokes from one edge of wood inward, which follow its roundness; every second is short."""
    for number, at in enumerate(steps(start_mm, end_mm, every_mm)):
        half = half_mm(at)
        inward = half * (reach if number % 2 else reach * 0.6)
        yield Run((
            curve.beside(at, side * half * 0.98),
            curve.beside(at - inward * _SLANT * 0.8, side * (half - inward * 0.5)),
            curve.beside(at - inward * _SLANT, side * (half - inward)),
        ))  # fmt: skip


def placed(
    things: Iterable[Thing],
    x: float,
    y: float,
    times: float = 1.0,
    *,
    turn_rad: float = 0.0,
    mirrored: bool = False,
) -> Group:
    """Things brought to a place of the board, larger or smaller, turned or seen in a mirror."""
    sin, cos, side = math.sin(turn_rad), math.cos(turn_rad), -1 if mirrored else 1

    def at(point: XY) -> Point:
        right, down = point[0] * times * side, point[1] * times
        return Point(x + right * cos - down * sin, y + right * sin + down * cos)

    def look(attributes: Attributes) -> Attributes:
        if "stroke-width" not in attributes:
            return attributes
        return {**attributes, "stroke-width": float(attributes["stroke-width"]) * times}

    def moved(thing: Thing) -> Thing:
        match thing:
            case Group():
                inside = tuple(moved(one) for one in thing.things)
                return replace(thing, things=inside, attributes=look(thing.attributes))
            case Ink():
                runs = tuple(replace(run, points=tuple(map(at, run.points))) for run in thing.runs)
                return Ink(runs, look(thing.attributes))
            case Dot():
                return replace(
                    thing,
                    middle=at(thing.middle),
                    radius_mm=thing.radius_mm * times,
                    turn_deg=side * thing.turn_deg + math.degrees(turn_rad),
                    attributes=look(thing.attributes),
                )
        return thing

    return Group(tuple(moved(thing) for thing in things))
