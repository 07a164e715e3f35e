"""Wood of the vines as it is seen from near: the same outlines, with more of their grain."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise

from pencilwood.drawing.ink.curves import Curve, HalfWidth, steps, trace
from pencilwood.drawing.ink.grain import Grain
from pencilwood.drawing.ink.light import shaded_side
from pencilwood.drawing.ink.looks import (
    BUD,
    CANE,
    FACE,
    INK,
    OLD,
    PAPER,
)
from pencilwood.drawing.ink.points import XY, Point
from pencilwood.drawing.ink.shapes import Attributes, Dot, Group, Ink, Run, Thing
from pencilwood.drawing.plates.pen import fine, hatching, penned, swelling, wash
from pencilwood.drawing.scene.wood_drawing import CANE_COLOURS
from pencilwood.drawing.wood.bark import bark
from pencilwood.drawing.wood.canes import SWELLS_TO_BUD, bud_outline, bud_side, splinters
from pencilwood.drawing.wood.marks import condition_marks
from pencilwood.drawing.wood.stems import THICKER, Stem
from pencilwood.vine.model import Condition, Piece

_PEN = 2.2
"""The pen, in units of the board."""
_FACE_FLAT = 0.4
"""How deep the face of a cut is drawn, compared with its width: seen a little from above."""
_SLOPE = 0.42
"""How far a sloped cut rises on the bud's side, compared with half the thickness."""
_STRIAE = (-0.66, -0.3, 0.05, 0.34, 0.56, 0.74, 0.88)
"""Lines along a cane, from the light to the shade, where they stand closer."""


def cane(name: str, piece: Piece, foot: Point, heading_rad: float = 0.0) -> Stem:
    """A straight cane that grows at a place."""
    return Stem(name, piece, trace(foot, piece.length_mm, lambda _: heading_rad))


def draw_cane(stem: Stem, times: float, *, buds_share: float = 1.0, sloped: bool = True) -> Group:
    """A cane that is enlarged so many times: cut above its last bud, or broken off if dead.

    `buds_share` is how large its buds are, compared with those of a vine; 0 where they have pushed.
    """
    piece, pen = stem.piece, _PEN / times
    end = float(piece.length_mm)
    side = shaded_side(stem.curve.heading_rad(end / 2))
    rise = _SLOPE * bud_side(stem, piece.buds) * stem.half_mm(end) if sloped else 0.0
    left, right = _edges(stem, rise)
    shaded = right if side > 0 else left
    top = splinters(stem, end) if not piece.is_alive else [left[-1], left[-1], right[-1], right[-1]]
    body = Run((*_round_end(stem.curve, 0.0, stem.half_mm(0)), *left[1:-1], *top,
                *right[-2:0:-1]), closed=True)  # fmt: skip
    things: list[Thing] = [
        Ink((body,), {"class": "pw-wood"}),
        wash(_shade(stem.curve, 1.0, end, stem.half_mm, side)),
        fine(_striae(stem, side, end), pen * 0.5, on_wood=True),
        penned([swelling(shaded[1:], pen * 2.2)]),
    ]
    nodes = [0.0, *(float(bud * piece.internode_mm) for bud in range(1, piece.buds + 1))]
    for number, (below, node) in enumerate(pairwise(nodes)):
        if piece.condition is not Condition.INJURED or number % 3 == 0:
            things.extend(condition_marks(stem, below, node - 6, stem.half_mm))
        things.extend(_node(stem, number + 1, pen, buds_share))
    if piece.is_alive:
        things.extend(cut_end(stem.curve, end, stem.half_mm(end), pen, rise_mm=rise))
    look: dict[str, str | float] = {
        "class": f"pw-part pw-cane pw-{piece.condition}",
        "color": CANE_COLOURS[piece.condition],
        "fill": "currentColor",
        "stroke": INK,
        "stroke-width": pen * (0.7 if piece.condition is Condition.SPINDLY else 1.0),
    }
    return Group(tuple(things), look)


def _edges(stem: Stem, rise_mm: float) -> tuple[list[XY], list[XY]]:
    """Both edges from foot to end; the wood swells most just under each bud, on its side."""
    piece = stem.piece
    end = float(piece.length_mm)
    places = {0.0, 7.0}
    for bud in range(1, piece.buds + 1):
        node = float(bud * piece.internode_mm)
        places |= {node - piece.internode_mm / 2, node - 13, node - 5, node, node + 6, node + 14}
    along = [at for at in sorted(places) if at < end - 2]
    edges: list[list[XY]] = []
    for side in (-1, 1):
        edge = [stem.curve.beside(at, side * _half_mm(stem, at, side)) for at in along]
        edges.append([*edge, stem.curve.beside(end + side * rise_mm, side * stem.half_mm(end))])
    return edges[0], edges[1]


def _half_mm(stem: Stem, at: float, side: int) -> float:
    half = stem.half_mm(at)
    for bud in range(1, stem.piece.buds + 1):
        if bud_side(stem, bud) == side:
            off = (at - bud * stem.piece.internode_mm + 2) / 6
            half *= 1 + (SWELLS_TO_BUD - 1) * math.exp(-off * off)
    return half


def _round_end(curve: Curve, at_mm: float, half: float) -> list[XY]:
    """The lower end of a piece that is seen a little from above, from the right to the left."""
    deep = half * _FACE_FLAT
    return [
        curve.beside(at_mm - deep * down, half * aside)
        for down, aside in ((0.0, 1.0), (0.8, 0.7), (1.0, 0.0), (0.8, -0.7), (0.0, -1.0))
    ]


def _shade(curve: Curve, start: float, end: float, half_mm: HalfWidth, side: int) -> Run:
    """The part of wood that lies in shade, from its edge inward; it ends in points."""
    along = steps(start, end, 26.0)
    outer = [curve.beside(at, side * half_mm(at) * 0.98) for at in along]
    inner = [
        curve.beside(
            at, side * half_mm(at) * (0.98 - 0.66 * max(math.sin(math.pi * share), 0.0) ** 0.35)
        )
        for number, at in enumerate(along)
        for share in (number / (len(along) - 1),)
    ]
    return Run((*outer, *inner[::-1]), closed=True)


def _striae(stem: Stem, side: int, end: float) -> Iterator[Run]:
    """Fine lines along the wood between its nodes; fewer where the light falls."""
    piece, grain = stem.piece, stem.grain
    nodes = [-6.0, *(float(bud * piece.internode_mm) for bud in range(1, piece.buds + 1)), end + 6]
    for number, (below, above) in enumerate(pairwise(nodes)):
        room = above - below - 18
        if room < 8:
            continue
        for lane, aside in enumerate(_STRIAE):
            seed = number * 10 + lane
            if aside < 0 and grain.share("bare", seed) < 0.35:
                continue
            start = below + 11 + room * grain.within(0, 0.3 if aside > 0 else 0.5, "from", seed)
            stop = above - 8 - room * grain.within(0, 0.3 if aside > 0 else 0.45, "to", seed)
            if stop - start < 6:
                continue
            lean = aside + grain.within(-0.06, 0.06, "lean", seed)
            yield Run(tuple(
                stem.curve.beside(at, side * stem.half_mm(at) * share)
                for at, share in (
                    (start, aside), ((start + stop) / 2, lean), (stop, aside),
                )
            ))  # fmt: skip


def _node(stem: Stem, bud: int, pen: float, buds_share: float) -> Iterator[Thing]:
    """The ridge of a node, the scar of last summer's leaf and the bud above it."""
    at = float(bud * stem.piece.internode_mm)
    side, half = bud_side(stem, bud), stem.half_mm(at)
    rings = [
        swelling([stem.curve.beside(at + up, half * aside) for aside, up in ring], pen * 1.3)
        for ring in (
            ((-0.98, -2.0), (-0.4, -5.5), (0.4, -5.5), (0.98, -2.0)),
            ((-side * 0.95, 6.0), (-side * 0.55, 3.5), (-side * 0.1, 3.0), (side * 0.2, 3.4)),
        )
        if at + ring[0][1] + half * _FACE_FLAT < stem.piece.length_mm
    ]
    if rings:
        yield penned(rings, on_wood=True)
    if not stem.piece.is_alive:
        socket = {"class": "pw-bud pw-socket", "data-bud": str(bud), "fill": PAPER}
        yield Dot(Point(*stem.curve.beside(at, side * half * 0.8)), 4.2 * buds_share, socket)
        return
    if not buds_share:
        return
    edge = bud_outline(stem, bud, buds_share)
    yield Ink((edge,), {"class": "pw-bud", "data-bud": str(bud), "fill": BUD})
    foot_out, belly, tip, _, inner, foot_in = edge.points
    middle = _mean(foot_out, foot_in)
    scales = [
        swelling([_mean(foot_out, belly), _mean(middle, inner), inner], pen * 0.9),
        swelling([_mean(foot_in, middle), _mean(middle, inner, 0.7), _mean(inner, tip, 0.6)],
                 pen * 0.9),
    ]  # fmt: skip
    gleam = {"class": "pw-pen-gleam", "fill": FACE, "stroke": "none", "opacity": ".7"}
    yield Ink(tuple(scales), gleam)


def _mean(one: XY, other: XY, share: float = 0.5) -> XY:
    return one[0] + (other[0] - one[0]) * share, one[1] + (other[1] - one[1]) * share


def cut_end(
    curve: Curve, at_mm: float, half: float, pen: float, *, rise_mm: float = 0.0, rings: int = 0
) -> list[Thing]:
    """The pale face of a cut: pith in its middle, and a ring for every year but the last."""
    middle = curve.at(at_mm)
    turn = math.degrees(curve.heading_rad(at_mm)) - math.degrees(math.atan2(rise_mm, half))
    wide = math.hypot(half, rise_mm)
    flat = _FACE_FLAT

    def oval(share: float, look: Attributes) -> Dot:
        return Dot(middle, wide * share, look, flattening=flat, turn_deg=turn)

    edge: Attributes = {"class": "pw-plate-cut", "fill": FACE, "stroke": INK, "stroke-width": pen}
    thin: Attributes = {
        "class": "pw-plate-ring", "fill": "none", "stroke": INK, "stroke-width": pen * 0.45,
    }  # fmt: skip
    pith: Attributes = {"class": "pw-plate-pith", "fill": CANE, "stroke": INK,
                        "stroke-width": pen * 0.45}  # fmt: skip
    shares = [0.24 + 0.62 * (number + 1) / (rings + 1) for number in range(rings)]
    return [
        oval(1.0, edge), oval(0.86, thin), *(oval(share, thin) for share in shares),
        oval(0.24 if not rings else 0.12, pith),
    ]  # fmt: skip


def old_half_mm(thickness_mm: float, grain: Grain) -> HalfWidth:
    """Half the drawn thickness of older wood that is rough and a little knobbly."""
    half = thickness_mm * THICKER / 2
    first, second = grain.within(0, 6.3, "rough", 1), grain.within(0, 6.3, "rough", 2)
    return lambda at: (
        half * (1 + 0.04 * math.sin(at / 9 + first) + 0.04 * math.sin(at / 23 + second))
    )


def draw_old(
    curve: Curve,
    length_mm: float,
    thickness_mm: float,
    name: str,
    times: float = 2.0,
    *,
    over: Sequence[Thing] = (),
    rings: int = -1,
) -> Group:
    """A stretch of older wood, enlarged so many times; the thickness is true, the drawing thicker.

    With `rings`, its upper end is cut so that they are seen.
    """
    grain, pen = Grain(name), _PEN / times
    half_mm = old_half_mm(thickness_mm, grain)
    side = shaded_side(curve.heading_rad(length_mm / 2))
    along = steps(0, length_mm, 11.0)
    left, right = ([curve.beside(at, way * half_mm(at)) for at in along] for way in (-1, 1))
    body = Run((*_round_end(curve, 0.0, half_mm(0)), *left[1:], left[-1], right[-1], *right[:0:-1]),
               closed=True)  # fmt: skip
    shaded = right if side > 0 else left
    # Its shade is hatched, so that only the strokes of the bark are asked for.
    strokes = bark(curve, 2, length_mm - 2, half_mm, grain, lane_mm=max(10 / times, 4.0))[1:]
    things: list[Thing] = [
        Ink((body,), {"class": "pw-wood"}),
        wash(_shade(curve, 1.0, length_mm, half_mm, side)),
        penned(
            (swelling(run.points, pen * 1.4) for stroke in strokes if isinstance(stroke, Ink)
             for run in stroke.runs), on_wood=True,
        ),
        fine(hatching(curve, 4, length_mm - 2, half_mm, side, 11 / times), pen * 0.5, on_wood=True),
        penned([swelling(shaded, pen * 2.4)]),
        *over,
    ]  # fmt: skip
    if rings >= 0:
        things.extend(cut_end(curve, length_mm, half_mm(length_mm), pen, rings=rings))
    look: Attributes = {
        "class": "pw-part pw-old",
        "color": OLD,
        "fill": "currentColor",
        "stroke": INK,
        "stroke-width": pen,
    }
    return Group(tuple(things), look)
