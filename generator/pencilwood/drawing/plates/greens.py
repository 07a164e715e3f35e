"""Green growth of a vine: leaves with five lobes, shoots with their joints, tendrils, bunches."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from pencilwood.drawing.ink.curves import Curve, steps
from pencilwood.drawing.ink.grain import Grain
from pencilwood.drawing.ink.looks import INK, PAPER, PENCIL, SAP
from pencilwood.drawing.ink.points import XY, Point, between
from pencilwood.drawing.ink.shapes import Attributes, Dot, Group, Ink, Run, Thing
from pencilwood.drawing.ink.writer import number as written
from pencilwood.drawing.plates.pen import fine, penned, swelling, wash

# One half of a leaf that is 100 long, from its stalk to its tip: where lobes end and where the
# bays between them lie, how many teeth stand on the way to each, and whether it bulges.
_HALF_LEAF: Sequence[tuple[XY, int, float]] = (
    ((5, 12), 0, 0.0),
    ((12, 33), 0, 0.15),
    ((36, 36), 2, 0.16),
    ((62, 10), 3, 0.14),
    ((43, -14), 2, 0.1),
    ((70, -52), 4, 0.12),
    ((33, -56), 3, 0.12),
    ((0, -107), 5, 0.14),
)
_VEINS: Sequence[tuple[XY, Sequence[tuple[float, XY]]]] = (
    ((0, -94), ((0.33, (18, -58)), (0.58, (14, -80)))),
    ((62, -48), ((0.45, (50, -22)), (0.5, (34, -50)), (0.7, (62, -32)))),
    ((55, 9), ((0.45, (36, 29)), (0.55, (50, -5)))),
)
_TOOTH = 4.2
STALK = 34.0


def _half_edge() -> list[XY]:
    """From the stalk to the tip, down one side."""
    points: list[XY] = [(0.0, 0.0)]
    for (x, y), teeth, bulge in _HALF_LEAF:
        here_x, here_y = points[-1]
        way_x, way_y = x - here_x, y - here_y
        long = math.hypot(way_x, way_y)
        out_x, out_y = -way_y / long, way_x / long
        if out_x * (here_x + x) + out_y * (here_y + y + 60) < 0:
            out_x, out_y = -out_x, -out_y
        for tooth in range(teeth):
            for share, out in (((tooth + 0.72) / (teeth + 0.4), 1.0),
                               ((tooth + 0.9) / (teeth + 0.4), 0.0)):  # fmt: skip
                off = bulge * long * math.sin(math.pi * share) + _TOOTH * out
                points.append(
                    (here_x + way_x * share + out_x * off, here_y + way_y * share + out_y * off)
                )
        points.append((float(x), float(y)))
    return points


_RIGHT = _half_edge()
_EDGE = (*_RIGHT, *((-x, y) for x, y in _RIGHT[-2:0:-1]))


def leaf(*, gone: bool = False) -> Group:
    """A leaf that is 100 long, its stalk at 0, its tip upward; `gone` is only its dotted edge."""
    blade = Run(tuple(_EDGE), closed=True, smooth=False)
    if gone:
        ribs = tuple(Run(((0.0, 0.0), (side * x, y))) for side in (-1, 1) for (x, y), _ in _VEINS)
        edge = {**_DOTTED, "class": "pw-going pw-paper", "fill": PAPER, **_ON_LEAF}
        return Group((Ink((blade,), edge), Ink(ribs, {**_DOTTED, **_ON_LEAF, "stroke-width": 4.5})))
    veins: list[Run] = []
    small: list[Run] = []
    for side in (-1, 1):
        for (x, y), branches in _VEINS:
            if x or side > 0:
                bent = (side * x * 0.5 - side * y * 0.05, y * 0.5)
                veins.append(swelling([(0.0, 6.0), bent, (side * x, y)], 3.0))
            for share, (end_x, end_y) in branches:
                start = between((0, 0), (side * x, y), share)
                small.append(Run((start, (side * end_x, end_y))))
    half = Run((*((x, y) for x, y in _RIGHT),), closed=True, smooth=False)
    look: Attributes = {"class": "pw-leaf", "fill": SAP, "stroke": INK, "stroke-width": 2.0}
    return Group((
        Ink((blade,), look), wash(half, ".13"), fine(small, 1.1, on_wood=True),
        penned(veins, on_wood=True),
    ))  # fmt: skip


_DOTTED: Attributes = {
    "class": "pw-going", "fill": "none", "stroke": PENCIL, "stroke-width": 3.4,
    "stroke-dasharray": "0 8", "stroke-linecap": "round",
}  # fmt: skip


_ON_LEAF: Attributes = {"stroke-width": 6.0, "stroke-dasharray": "0 14"}
"""Leaves are drawn at about half their size, dots and gaps with them."""


@dataclass(frozen=True)
class Shoot:
    """A green shoot along a curve, from its foot to its tip or to where it was trimmed."""

    name: str
    curve: Curve
    length: float
    half: float
    """Half its thickness at the foot."""
    joint: float
    """From joint to joint."""
    leaf: float
    """Length of its largest leaves."""
    trimmed: bool = False
    bunches: int = 0
    gone: bool = False

    @property
    def joints(self) -> list[float]:
        """How far along it its leaves stand; nearer to each other at a growing tip."""
        found, at, step = [], self.joint * 0.6, self.joint
        while at < self.length - (self.leaf * 0.75 if self.trimmed else 4):
            found.append(at)
            share = at / self.length
            step = self.joint * (1 if self.trimmed else 1.1 - 0.75 * share)
            at += step
        return found

    def half_at(self, at: float) -> float:
        """Half its thickness; it swells at its joints."""
        swell = sum(0.28 * math.exp(-(((at - one) / 6) ** 2)) for one in self.joints)
        return self.half * (1 - (0.35 if self.trimmed else 0.65) * at / self.length) * (1 + swell)


def draw_shoot(one: Shoot) -> Group:
    """Stem, leaves from the tip down, tendrils and young bunches across from a leaf."""
    grain = Grain(one.name)
    things: list[Thing] = []
    first = grain.sign("first leaf")
    for number, at in reversed(list(enumerate(one.joints))):
        side = first * (1 if number % 2 else -1)
        if 2 <= number < 2 + one.bunches:
            things.append(_bunch(one, at, -side, grain))
        elif number % 3 == 1 and number > 1 and not one.gone:
            things.append(_tendril(one, at, -side, number))
        things.append(_leaf_on(one, number, at, side, grain))
    return Group((*_stem(one), *things), {"class": "pw-shoot pw-goes" if one.gone else "pw-shoot"})


def _stem(one: Shoot) -> Iterator[Thing]:
    along = sorted({*steps(0, one.length, 24), *one.joints})
    left, right = ([one.curve.beside(at, side * one.half_at(at)) for at in along]
                   for side in (-1, 1))  # fmt: skip
    edge = Run((*left, *right[::-1]), closed=True)
    if one.gone:
        yield Ink((edge,), _DOTTED)
        return
    look: Attributes = {"class": "pw-leaf", "fill": SAP, "stroke": INK, "stroke-width": 1.8}
    yield Ink((edge,), look)
    yield penned([swelling(right, 3.2)])


def _leaf_on(one: Shoot, number: int, at: float, side: int, grain: Grain) -> Group:
    """A leaf on its stalk, which leaves the shoot at an angle and lets the blade hang a little."""
    share = at / one.length
    full = 1.0 if one.trimmed else 1.0 - 0.75 * share**1.6
    young = min(1.0, 0.62 + 0.2 * number)
    size = one.leaf * full * young * grain.within(0.9, 1.08, "leaf", number)
    way = one.curve.heading_rad(at) + side * grain.within(0.85, 1.15, "stalk", number)
    joint = Point(*one.curve.beside(at, side * one.half_at(at) * 0.8))
    stalk = STALK / 100 * size
    end = joint.go(way, stalk)
    droop = way + side * grain.within(0.15, 0.6, "droop", number)
    move = _move(end, droop, size, mirrored=grain.share("side", number) < 0.5)
    blade = Group((leaf(gone=one.gone),), {"transform": move})
    bend = joint.go(way - side * 0.25, stalk * 0.55)
    if one.gone:
        return Group((Ink((Run((joint, bend, end)),), _DOTTED), blade))
    return Group((penned([swelling([joint, bend, end], 4.4)]), blade))


def _tendril(one: Shoot, at: float, side: int, number: int) -> Ink:
    """A tendril that ends in a curl."""
    way = one.curve.heading_rad(at) + side * 0.7
    here = Point(*one.curve.beside(at, side * one.half_at(at) * 0.8))
    points = [here]
    for step in range(11):
        points.append(points[-1].go(way, one.leaf * (0.17 - 0.011 * step)))
        way += side * (0.05 + 0.011 * step * step) * (1 if number % 2 else -1)
    return fine([Run(tuple(points))], 1.8)


def _bunch(one: Shoot, at: float, side: int, grain: Grain) -> Group:
    """A bunch before bloom on its stalk."""
    heading = one.curve.heading_rad(at) + side * grain.within(0.9, 1.2, "bunch", round(at))
    foot = Point(*one.curve.beside(at, side * one.half_at(at) * 0.8))
    return Group((bunch(),), {"transform": _move(foot, heading, one.leaf * 0.78, mirrored=False)})


def bunch() -> Group:
    """A bunch that is 100 long, its stalk at 0, its tip upward: tight green beads."""
    look: Attributes = {"class": "pw-leaf", "fill": SAP, "stroke": INK, "stroke-width": 2.0}
    rows = ((34, 2), (43, 3), (53, 4), (63, 3), (73, 2), (83, 1))
    beads = tuple(
        Dot(Point(13.5 * (bead - (count - 1) / 2), -float(up)), 7.6, look)
        for up, count in rows
        for bead in range(count)
    )
    return Group((penned([swelling([(0, 0), (4, -22), (0, -50)], 6.0)]), *beads))


def _move(to: Point, turn_rad: float, long: float, *, mirrored: bool) -> str:
    """Brings what is 100 long to its place: all leaves are one text, which packs into few bytes."""
    size = f"{long / 100:.2f}"
    return (
        f"translate({written(to.x)} {written(to.y)}) rotate({math.degrees(turn_rad):.0f}) "
        f"scale({'-' if mirrored else ''}{size} {size})"
    )
