"""A cane: its stretches from bud to bud, each with the bud at its upper end."""

from __future__ import annotations

import math
from collections.abc import Callable

from pencilwood.drawing.ink.curves import Curve
from pencilwood.drawing.ink.light import shaded_side
from pencilwood.drawing.ink.looks import BUD, FACE, PAPER
from pencilwood.drawing.ink.points import XY, Point
from pencilwood.drawing.ink.shapes import Attributes, Dot, Group, Ink, Run, Thing
from pencilwood.drawing.wood.headings import first_bud_side
from pencilwood.drawing.wood.marks import condition_marks
from pencilwood.drawing.wood.stems import THICKER, Stem
from pencilwood.vine.model import Condition, Lean

StretchClass = Callable[[int], str]
"""Extra classes of the stretch that begins above a bud."""

_BUD_TURN_RAD = 0.42
SWELLS_TO_BUD = 1.22
"""How much farther wood stands out below a bud than on the side away from it."""
_SHADE_MM = 3.4
FACE_DEEP = 0.5
"""How deep the cut face of old wood is drawn, compared with its width."""
BUD_ROOM_MM = 9.0
"""How far a bud reaches around its middle."""


def cut_place_mm(stem: Stem, buds: int) -> float:
    """How far along a cane it is cut so that so many buds stay."""
    return buds * stem.piece.internode_mm + stem.stub_mm


def stretches(stem: Stem, extra_class: StretchClass) -> tuple[Group, ...]:
    """All stretches, lowest first; number k holds bud k + 1 and goes when k buds are left."""
    return tuple(_stretch(stem, bud, extra_class(bud)) for bud in range(stem.piece.buds))


def _stretch(stem: Stem, below: int, extra: str) -> Group:
    piece = stem.piece
    start = 0.0 if below == 0 else cut_place_mm(stem, below)
    last = below == piece.buds - 1
    end = float(piece.length_mm) if last else cut_place_mm(stem, below + 1)
    node = (below + 1) * piece.internode_mm
    things: list[Thing] = []
    if piece.lean in (Lean.OUT, Lean.IN):
        things.append(_halo(stem, start, end))
    along = _places(start, node, end, last)
    if last and not piece.is_alive:
        edge = _broken_end(stem, along)
    else:
        edge = _edge(stem, below + 1, along, node)
    run = Run(tuple(edge), closed=True, open_foot=below > 0)
    things.append(Ink((run,), {"class": "pw-wood"}))
    things.append(_shaded_edge(stem, start, node))
    if piece.condition is not Condition.INJURED or below % 3 == 0:
        things.extend(condition_marks(stem, start, node - 6, stem.half_mm))
    things.append(_bud(stem, below + 1))
    if below:
        things.append(cut_face(stem, start))
    classes = f"pw-stretch{extra}"
    return Group(tuple(things), {"class": classes, "data-from-bud": str(below)})


def _places(start: float, node: float, end: float, last: bool) -> list[float]:
    """Distances along the cane at which its edge bends."""
    foot = start - 1.5 if start else 0.0
    places = [foot, (start + node) / 2, node, *([(node + end) / 2] if last else []), end]
    kept = [places[0]]
    for place in places[1:]:
        if place > kept[-1] + 1:
            kept.append(place)
    return kept


def _edge(stem: Stem, bud: int, along: list[float], node: float) -> list[XY]:
    """Both edges; the wood swells most just under its bud, and a whole cane ends thin."""
    to_bud = bud_side(stem, bud)

    def beside(at: float, side: int) -> XY:
        half = stem.half_mm(at)
        if at == node:
            half *= SWELLS_TO_BUD if side == to_bud else 1.06
        elif at >= stem.piece.length_mm:
            half *= 1 - 0.6 * stem.taper
        return stem.curve.beside(at, side * half)

    left, right = [beside(at, -1) for at in along], [beside(at, 1) for at in along]
    if along[0] == 0:
        # A cane's foot is round, so that it seems to grow out of the wood that bears it.
        left[:1], right[:1] = _round_foot(stem, -1), _round_foot(stem, 1)
    return left + right[::-1]


def _round_foot(stem: Stem, side: int) -> list[XY]:
    half = stem.half_mm(0)
    return [
        stem.curve.beside(0, side * half * 0.45), stem.curve.beside(6, side * half * 1.05),
    ]  # fmt: skip


def _broken_end(stem: Stem, along: list[float]) -> list[XY]:
    """Dead canes end in splinters."""
    left = [stem.curve.beside(at, -stem.half_mm(at)) for at in along[:-1]]
    right = [stem.curve.beside(at, stem.half_mm(at)) for at in along[:-1]]
    return [*left, *splinters(stem, along[-1]), *right[::-1]]


def splinters(stem: Stem, tip_mm: float) -> list[XY]:
    """From the left edge to the right, across the end of a cane that broke."""
    half = stem.half_mm(tip_mm)
    return [
        stem.curve.beside(tip_mm + off, half * aside)
        for off, aside in ((5.0, -0.8), (-7.0, -0.3), (2.0, 0.1), (-9.0, 0.5), (-1.0, 1.0))
    ]


def _halo(stem: Stem, start: float, end: float) -> Ink:
    """Bare paper around a leaning cane, so that crossing canes can be told apart."""
    points = (stem.curve.at(start), stem.curve.at((start + end) / 2), stem.curve.at(end))
    width = round(stem.piece.thickness_mm * THICKER + 8)
    look: Attributes = {"class": "pw-halo", "fill": "none", "stroke": PAPER, "stroke-width": width}
    return Ink((Run(points),), {**look, "stroke-linecap": "butt"})


def _shaded_edge(stem: Stem, start: float, node: float) -> Ink:
    """One darker line along the edge away from the light; the swelling at the bud breaks it."""
    places = (start + (2.0 if start else 11.0), (start + node) / 2, node - 5.0)
    side = shaded_side(stem.curve.heading_rad(places[1]))
    points = tuple(
        stem.curve.beside(at, side * max(stem.half_mm(at) - _SHADE_MM / 2, 1.0)) for at in places
    )
    return Ink((Run(points),), {"class": "pw-shade", "stroke-width": _SHADE_MM, "opacity": ".4"})


def bud_middle(stem: Stem, bud: int) -> XY:
    """About the middle of a bud."""
    at = float(bud * stem.piece.internode_mm)
    return stem.curve.beside(at + 5, bud_side(stem, bud) * (stem.half_mm(at) + 3))


def bud_side(stem: Stem, bud: int) -> int:
    """On which side of its cane a bud sits: 1 is to the right of who walks along it."""
    return first_bud_side(stem.grain) * (1 if bud % 2 else -1)


def _bud(stem: Stem, bud: int) -> Thing:
    """A pointed bud on its swelling; the buds of a dead cane are empty sockets."""
    at = float(bud * stem.piece.internode_mm)
    side = bud_side(stem, bud)
    half = stem.half_mm(at)
    if not stem.piece.is_alive:
        socket = {"class": "pw-bud pw-socket", "data-bud": str(bud), "fill": PAPER}
        return Dot(Point(*stem.curve.beside(at, side * half * 0.8)), 4.2, socket)
    look: Attributes = {"class": "pw-bud", "data-bud": str(bud), "fill": BUD}
    return Ink((bud_outline(stem, bud),), look)


def bud_outline(stem: Stem, bud: int, share: float = 1.0) -> Run:
    """The edge of a living bud; a `share` below 1 is a bud that is drawn less enlarged."""
    at = float(bud * stem.piece.internode_mm)
    side = bud_side(stem, bud)
    long = (10.0 + min(stem.piece.thickness_mm, 14) * 0.7) * share
    foot = stem.curve.beside(at - 1, side * stem.half_mm(at) * 0.85)
    heading = stem.curve.heading_rad(at) + side * _BUD_TURN_RAD
    return Run(_pointed(foot, heading, long, side), closed=True, open_foot=True)


def _pointed(foot: XY, heading: float, long: float, side: int) -> tuple[XY, ...]:
    """A bud: bellied on its outer side, nearly straight along the cane, ending in a point."""
    across = heading + side * math.pi / 2
    ahead_x, ahead_y = math.sin(heading), -math.cos(heading)
    aside_x, aside_y = math.sin(across), -math.cos(across)

    def at(ahead: float, aside: float) -> XY:
        x, y = foot[0] + ahead_x * ahead, foot[1] + ahead_y * ahead
        return x + aside_x * aside, y + aside_y * aside

    tip = foot[0] + ahead_x * long, foot[1] + ahead_y * long
    low = long * 0.3
    feet = [(foot[0] + aside_x * away, foot[1] + aside_y * away) for away in (low, -low)]
    return (feet[0], at(long * 0.3, long * 0.52), tip, tip, at(long * 0.45, -long * 0.34), feet[1])


def cut_face(stem: Stem, at_mm: float) -> Ink:
    """The pale cut face with its pith, which shows when the wood from here on is gone."""
    half = max(stem.half_mm(at_mm), 3.0)
    pith = stem.curve.at(at_mm)
    edges = (_lens(stem.curve, at_mm, half),) if stem.piece.is_cane else _sawn(stem, at_mm, half)
    look: Attributes = {"class": "pw-face", "fill": FACE, "display": "none"}
    return Ink((*edges, Run((pith, pith))), look)


def _lens(curve: Curve, at_mm: float, half: float) -> Run:
    left, right = curve.beside(at_mm, -half), curve.beside(at_mm, half)
    upper, lower = curve.at(at_mm + half * 0.9), curve.at(at_mm - half * 0.9)
    return Run((left, upper, right, right, lower, left), closed=True)


def _sawn(stem: Stem, at_mm: float, half: float) -> tuple[Run, ...]:
    """Old wood cut through, seen a little from above: an oval with a ring of growth."""
    return tuple(
        _oval(stem.curve, at_mm, half * share, half * share * FACE_DEEP) for share in (1.0, 0.55)
    )


def _oval(curve: Curve, at_mm: float, half: float, deep: float) -> Run:
    left, right = curve.beside(at_mm, -half), curve.beside(at_mm, half)
    bends = [
        [curve.beside(at_mm + ahead * deep, side * half * 0.72) for side in (-ahead, ahead)]
        for ahead in (1, -1)
    ]
    return Run((left, *bends[0], right, right, *bends[1], left), closed=True)
