"""Beams of ladders and the stones of a wall, drawn by the pen of the plates."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from pencilwood.drawing.ink.curves import Curve, steps, trace
from pencilwood.drawing.ink.grain import Grain
from pencilwood.drawing.ink.light import shaded_side
from pencilwood.drawing.ink.looks import FACE, INK, PENCIL
from pencilwood.drawing.ink.points import XY, Point
from pencilwood.drawing.ink.shapes import Attributes, Dot, Group, Ink, Run, Thing
from pencilwood.drawing.plates.board import shape
from pencilwood.drawing.plates.pen import fine, hatching, penned, swelling, wash

_PEN = 2.4
_COURSE = 44.0
"""How high a row of stones is, about."""


def straight(start: Point, end: Point) -> Curve:
    """The middle line of a beam."""
    heading = math.atan2(end.x - start.x, start.y - end.y)
    return trace(start, start.away_from(end), lambda _: heading)


def beam(start: Point, end: Point, half: float, name: str) -> Group:
    """A sawn beam: pale wood with long grain, the side away from the light in hatched shade."""
    curve, long = straight(start, end), start.away_from(end)
    heading = curve.heading_rad(long / 2)
    # A level beam is dark below.
    shaded = shaded_side(heading)
    left, right = ([curve.beside(at, side * half) for at in (0, long)] for side in (-1, 1))
    far = right if shaded > 0 else left
    near = [curve.beside(at, shaded * half * 0.3) for at in (0, long)]
    dark = [curve.beside(at, shaded * half) for at in steps(0, long, 80.0)]
    return Group((
        shape(*_corners(left, right), fill=FACE, width=_PEN),
        wash(Run((*far, *near[::-1]), closed=True, smooth=False), ".16"),
        fine(_grain(curve, long, half, Grain(name), shaded), 1.0, on_wood=True),
        fine(hatching(curve, 6, long - 4, lambda _: half, shaded, 14.0, 0.6), 0.8, on_wood=True),
        penned([swelling(dark, _PEN * 2)]),
    ))  # fmt: skip


def _corners(left: Sequence[XY], right: Sequence[XY]) -> list[Point]:
    return [Point(*one) for one in (*left, *right[::-1])]


def _grain(curve: Curve, long: float, half: float, grain: Grain, shaded: int) -> Iterator[Run]:
    """Long strokes along the beam, none as long as the one beside it."""
    for lane, aside in enumerate((-0.6, -0.2)):
        at, number = 120 * grain.share("from", lane), lane * 40
        while at < long - 24:
            stop = min(at + grain.within(60, 190, "long", number), long - 5)
            bend = aside + grain.within(-0.18, 0.18, "bend", number)
            yield Run(tuple(
                curve.beside(place, shaded * half * share)
                for place, share in ((at, aside), ((at + stop) / 2, bend), (stop, aside))
            ))  # fmt: skip
            at = stop + grain.within(30, 130, "gap", number)
            number += 1


def bolt(at: Point, radius: float = 3.6) -> Dot:
    """The head of a bolt."""
    look: Attributes = {"class": "pw-plate-face", "fill": FACE, "stroke": INK, "stroke-width": 1.6}
    return Dot(at, radius, look)


def tread(left: Point, right: Point, deep: float, thick: float, name: str) -> Group:
    """A flat step seen a little from above: its top, and its front edge in shade."""
    top = (left.y - thick / 2 - deep, left.y - thick / 2)
    upper = shape(
        Point(left.x + deep * 0.4, top[0]), Point(right.x - deep * 0.4, top[0]),
        Point(right.x, top[1]), Point(left.x, top[1]), fill=FACE, width=_PEN * 0.8,
    )  # fmt: skip
    return Group((upper, beam(Point(left.x, left.y), Point(right.x, right.y), thick / 2, name)))


def shadow_on_ground(at: Point, long: float) -> Ink:
    """Strokes of shade on the ground, to the right of what stands there."""
    runs = [
        Run((Point(at.x + 5 * row, at.y + 7 * row), Point(at.x + long * share, at.y + 7 * row + 3)))
        for row, share in enumerate((1.0, 0.8, 0.5))
    ]
    look: Attributes = {"class": "pw-ground", "fill": "none", "stroke": PENCIL, "stroke-width": 2.4}
    return Ink(tuple(runs), look)


def stones(left: float, top: float, right: float, low: float, name: str) -> Iterator[Thing]:
    """The face of a dry wall: courses of stones of uneven length, the right edge in shade."""
    grain = Grain(name)
    rows = max(1, round((low - top) / _COURSE))
    joints: list[Run] = []
    texture: list[Run] = []
    for row in range(rows):
        above, below = (top + (low - top) * (row + more) / rows for more in (0, 1))
        if row:
            bends = [
                (x, above + grain.within(-3, 3, "course", row * 9 + bend))
                for bend, x in enumerate(steps(left, right, 45.0))
            ]
            joints.append(swelling([(x, y) for x, y in bends], 3.4))
        x = left + (right - left) * grain.within(0.28, 0.72, "joint", row)
        foot = (x + grain.within(-5, 5, "leans", row), below)
        joints.append(
            swelling([(x, above), ((x + foot[0]) / 2 + 1.5, (above + below) / 2), foot], 3.0)
        )
        for stroke in range(3):
            at = Point(
                left + 8 + (right - left - 34) * grain.share("mark x", row * 5 + stroke),
                above + 9 + (below - above - 18) * grain.share("mark y", row * 5 + stroke),
            )
            texture.append(
                Run((at, Point(at.x + grain.within(6, 16, "mark", row + stroke), at.y + 1)))
            )
    shade = [
        Run((Point(right, y), Point(right - (15 if number % 2 else 9), y + 5)))
        for number, y in enumerate(steps(top + 4, low - 8, 9.0))
    ]
    yield fine(texture, 1.2)
    yield penned(joints)
    yield fine(shade, 1.0)
