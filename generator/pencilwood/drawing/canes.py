"""A cane: its stretches from bud to bud, each with the bud at its upper end."""

from __future__ import annotations

import math
from collections.abc import Callable

from pencilwood.drawing.curves import outline
from pencilwood.drawing.headings import first_bud_side
from pencilwood.drawing.looks import BUD, FACE, PAPER
from pencilwood.drawing.marks import condition_marks
from pencilwood.drawing.points import Point
from pencilwood.drawing.shapes import Attributes, Dot, Group, Ink, Run, Thing
from pencilwood.drawing.stems import Stem
from pencilwood.vine.model import Condition, Lean

StretchClass = Callable[[int], str]
"""Extra classes of the stretch that begins above a bud."""

_BUD_TURN_RAD = 0.5
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
    edge = (
        _broken_end(stem, along)
        if last and not piece.is_alive
        else outline(stem.curve, along, stem.half_mm)
    )
    things.append(Ink((Run(tuple(edge), closed=True),), {"class": "pw-wood"}))
    if below:
        things.append(joint(stem, start))
    things.append(_shaded_side(stem, start, end))
    if piece.condition is not Condition.INJURED or below % 3 == 0:
        things.extend(condition_marks(stem, start, node - 6, stem.half_mm))
    things.append(_bud(stem, below + 1))
    if below:
        things.append(cut_face(stem, start))
    classes = f"pw-stretch{extra}"
    return Group(tuple(things), {"class": classes, "data-from-bud": str(below)})


def _places(start: float, node: float, end: float, last: bool) -> list[float]:
    """Distances along the cane at which its edge bends."""
    foot = [start, 12.0] if start == 0 else [start - 1.5]
    places = [*foot, (start + node) / 2, node - 12, node, end]
    if last:
        places[-1:] = [(node + end) / 2, end]
    kept = [places[0]]
    for place in places[1:]:
        if place > kept[-1] + 1:
            kept.append(place)
    return kept


def _broken_end(stem: Stem, along: list[float]) -> list[Point]:
    """Dead canes end in splinters."""
    tip, half = along[-1], stem.half_mm(along[-1])
    left = [stem.curve.beside(at, -stem.half_mm(at)) for at in along[:-1]]
    right = [stem.curve.beside(at, stem.half_mm(at)) for at in along[:-1]]
    splinters = [
        stem.curve.beside(tip + off, half * aside)
        for off, aside in ((5.0, -0.8), (-7.0, -0.3), (2.0, 0.1), (-9.0, 0.5), (-1.0, 1.0))
    ]
    return [*left, *splinters, *right[::-1]]


def _halo(stem: Stem, start: float, end: float) -> Ink:
    """Bare paper around a leaning cane, so that crossing canes can be told apart."""
    points = (stem.curve.at(start), stem.curve.at((start + end) / 2), stem.curve.at(end))
    width = 2 * stem.half_mm(start) + 9
    look: Attributes = {"class": "pw-halo", "fill": "none", "stroke": PAPER, "stroke-width": width}
    return Ink((Run(points),), {**look, "stroke-linecap": "butt"})


def joint(stem: Stem, at_mm: float) -> Ink:
    """Paints over the end line of the stretch below, which shows only when this one is gone."""
    inner = stem.half_mm(at_mm) - 1.2
    run = Run((stem.curve.beside(at_mm - 0.8, -inner), stem.curve.beside(at_mm - 0.8, inner)))
    return Ink((run,), {"class": "pw-joint", "stroke": "currentColor"})


def _shaded_side(stem: Stem, start: float, end: float) -> Ink:
    middle = (start + end) / 2
    points = tuple(
        stem.curve.beside(at, stem.half_mm(middle) * 0.48) for at in (start, middle, end)
    )
    width = stem.half_mm(middle) * 0.7
    return Ink((Run(points),), {"class": "pw-shade", "stroke-width": width, "opacity": ".2"})


def bud_middle(stem: Stem, bud: int) -> Point:
    """About the middle of a bud."""
    at = float(bud * stem.piece.internode_mm)
    return stem.curve.beside(at + 5, _bud_side(stem, bud) * (stem.half_mm(at) + 3))


def _bud_side(stem: Stem, bud: int) -> int:
    return first_bud_side(stem.grain) * (1 if bud % 2 else -1)


def _bud(stem: Stem, bud: int) -> Thing:
    """A pointed bud on its swelling; the buds of a dead cane are empty sockets."""
    at = float(bud * stem.piece.internode_mm)
    side = _bud_side(stem, bud)
    half = stem.half_mm(at)
    if not stem.piece.is_alive:
        socket = {"class": "pw-bud pw-socket", "data-bud": str(bud), "fill": PAPER}
        return Dot(stem.curve.beside(at, side * half * 0.8), 4.2, socket)
    look: Attributes = {"class": "pw-bud", "data-bud": str(bud), "fill": BUD}
    long = 12.0 + min(stem.piece.thickness_mm, 14) * 0.6
    foot = stem.curve.beside(at, side * half * 0.72)
    heading = stem.curve.heading_rad(at) + side * _BUD_TURN_RAD
    return Ink((Run(_teardrop(foot, heading, long), closed=True),), look)


def _teardrop(foot: Point, heading: float, long: float) -> tuple[Point, ...]:
    across = heading + math.pi / 2
    tip = foot.go(heading, long)
    belly = foot.go(heading, long * 0.42)
    wide = long * 0.44
    low = wide * 0.62
    return (
        foot.go(across, -low),
        belly.go(across, -wide),
        tip,
        tip,
        belly.go(across, wide),
        foot.go(across, low),
    )


def cut_face(stem: Stem, at_mm: float) -> Ink:
    """The pale cut face that shows when the wood from here on is gone."""
    half = max(stem.half_mm(at_mm), 3.0)
    lens = [
        stem.curve.beside(at_mm + rise, half * aside)
        for rise, aside in ((0, -1), (half * 0.9, 0), (0, 1), (0, 1), (-half * 0.9, 0), (0, -1))
    ]
    look: Attributes = {"class": "pw-face", "fill": FACE, "display": "none"}
    return Ink((Run(tuple(lens), closed=True),), look)
