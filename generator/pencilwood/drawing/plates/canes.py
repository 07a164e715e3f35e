"""Plates of single canes: their parts, their age, their health."""

from __future__ import annotations

from collections.abc import Sequence

from pencilwood.drawing.ink.curves import Curve, HalfWidth, trace
from pencilwood.drawing.ink.grain import Grain
from pencilwood.drawing.ink.looks import BUD
from pencilwood.drawing.ink.points import XY, Point
from pencilwood.drawing.ink.shapes import Group, Ink, Run, Thing
from pencilwood.drawing.plates.board import (
    WIDTH,
    Board,
    Scene,
    mark,
    number_sign,
    pointer,
    right_sign,
    words,
    wrong_sign,
)
from pencilwood.drawing.plates.near_wood import cane, draw_cane, draw_old, old_half_mm
from pencilwood.drawing.plates.pen import penned, placed, swelling
from pencilwood.drawing.wood.canes import bud_middle
from pencilwood.drawing.wood.stems import Stem
from pencilwood.vine.model import Condition, Piece
from pencilwood.words import say

_BESIDE_BUD = 15.0
"""So far up and aside from the middle of a bud a dot touches it and covers nothing of it."""


def parts_of_a_cane(board: Board) -> Scene:
    """One cane on its old wood, with its counted buds numbered from the foot."""
    times, x, foot = 2.3, 310.0, 930.0
    piece = Piece("a", 1, 390, 10, buds=4, internode_mm=86)
    stem = cane("plate", piece, Point(0, 0))
    arm = draw_old(trace(Point(-190, 74), 420, lambda _: 1.5708), 420, 26, "plate cane arm", times)
    basal = [_basal_bud(side, up) for side, up in ((-1, -1.0), (1, -6.0))]
    things: list[Thing] = [
        placed((_bearing(times), draw_cane(stem, times), *basal, arm), x, foot, times)
    ]
    for bud in range(1, piece.buds + 1):
        middle = Point(*bud_middle(stem, bud))
        at = Point(x + middle.x * times, foot + middle.y * times)
        side = 1 if middle.x > 0 else -1
        things.append(number_sign(Point(at.x + side * 62, at.y), str(bud)))
    node_mm = piece.internode_mm * times
    between_y = foot - 2.5 * node_mm
    third = Point(*bud_middle(stem, 3))
    third_at = Point(x + third.x * times, foot + third.y * times)
    outward = _BESIDE_BUD if third.x > 0 else -_BESIDE_BUD
    beside_third = Point(third_at.x + outward, third_at.y - _BESIDE_BUD)
    # The bud's name stands on the side where the bud is, the node's on the side where it is not.
    sides = ((500.0, "start"), (170.0, "end"))
    bud_x, anchor = sides[third.x < 0]
    node_x, node_anchor = sides[bud_middle(stem, 2)[0] > 0]
    second = 2.0 * piece.internode_mm
    aside = stem.half_mm(second) * (-1 if node_x < x else 1)
    right, down = stem.curve.beside(second - 2, aside)
    node_at = Point(x + right * times, foot + down * times)
    things += [
        pointer(Point(node_x, node_at.y + 12), board.say("node"), node_at, anchor=node_anchor),
        *_between_nodes(450.0, foot - 2 * node_mm, foot - 3 * node_mm),
        pointer(Point(520, between_y + 12), board.say("internode"), Point(450, between_y)),
        pointer(Point(bud_x, third_at.y - 80), board.say("bud"), beside_third, anchor=anchor),
        pointer(Point(500, foot - 70), board.say("basal"), Point(x + 46, foot - 27)),
        pointer(Point(500, foot + 62), board.say("old"), Point(x + 40, foot + 74)),
        *_count_up(board, Point(44, 640), stem, foot, times),
    ]
    return Scene(1180, things)


_PEELING = ((-0.5, 22, 36, 4), (0.55, 18, 40, 4), (0.05, 34, 28, 3))
"""Loose bark of the old wood: see `Strip`."""


def _bearing(times: float) -> Group:
    """The old wood that bears the cane."""
    upright = trace(Point(-2, 62), 70, lambda _: 0.03)
    half_mm = old_half_mm(19, Grain("plate old"))
    peeling = [part for strip in _PEELING for part in loose_bark(upright, half_mm, strip)]
    return draw_old(upright, 66, 19, "plate old", times, over=peeling)


def _basal_bud(side: int, up: float) -> Ink:
    """A small pointed bud at the very foot of a cane."""
    edge = ((7.0, 2.0), (17.5, -1.0), (15.5, -13.0), (15.5, -13.0), (8.5, -9.0))
    points = tuple((side * out, up + more) for out, more in edge)
    return Ink((Run(points, closed=True),), {"class": "pw-bud", "fill": BUD})


def _between_nodes(x: float, low_y: float, high_y: float) -> list[Thing]:
    """A bracket as long as the piece between two nodes."""
    ends = (Point(x - 16, low_y), Point(x, low_y), Point(x, high_y), Point(x - 16, high_y))
    return [mark(*ends, width=3.0)]


def _count_up(board: Board, tip: Point, stem: Stem, foot: float, times: float) -> list[Thing]:
    """Beside the lowest bud where the count begins, and an arrow upward."""
    low = Point(tip.x, foot - stem.piece.internode_mm * times * 0.75)
    arrow = [
        mark(low, tip, width=4.0),
        mark(Point(tip.x - 14, tip.y + 24), tip, Point(tip.x + 14, tip.y + 24), width=4.0),
    ]
    return [*arrow, words(Point(20, low.y + 48), board.say("count"), size=30)]


def wood_ages(board: Board) -> Scene:
    """Wood of one year, of two years and of many years, side by side."""
    times = 1.85
    young = cane("plate young", Piece("a", 1, 258, 9, buds=3, internode_mm=72), Point(0, 0))
    things: list[Thing] = []
    columns = (
        (130.0, draw_cane(young, times), "one"),
        (390.0, _aged("plate two", 17, times, _FLAKES, rings=1), "two"),
        (660.0, _aged("plate many", 36, times, _STRIPS, rings=7), "many"),
    )
    for x, drawn, key in columns:
        things.append(placed((drawn,), x, 512, times))
        things.append(words(Point(x, 590), board.say(key), anchor="middle", bold=True))
        things.append(words(Point(x, 636), board.say(f"{key}.looks"), anchor="middle", size=30))
    return Scene(750, things)


Strip = tuple[float, float, float, float]
_FLAKES: Sequence[Strip] = (
    (1, 172, 46, 4), (-1, 60, 40, 4), (-0.2, 120, 52, 4.5), (0.45, 30, 44, 3.5), (-0.5, 196, 30, 3),
)  # fmt: skip
"""Of bark that comes off: how far aside it lies, as a share of half the thickness, how far up its
loose lower end is, how long it is, and how far that end stands off. At 1 or -1 it is on an edge."""
_STRIPS: Sequence[Strip] = (
    (-1, 34, 92, 13), (1, 58, 84, 12), (-1, 118, 80, 11), (1, 138, 78, 13), (-1, 184, 52, 8),
    (1, 8, 60, 9), (-0.45, 60, 120, 8), (0.3, 24, 96, 9), (0.05, 128, 96, 8), (-0.6, 8, 66, 7),
    (0.55, 120, 74, 8), (-0.35, 176, 58, 6),
)  # fmt: skip


def _aged(
    name: str, thickness_mm: float, times: float, strips: Sequence[Strip], rings: int
) -> Group:
    """A piece of older wood with loose bark, its rings on the cut end."""
    curve = trace(Point(0, 0), 250, lambda _: 0.0)
    half_mm = old_half_mm(thickness_mm, Grain(name))
    bark = [part for strip in strips for part in loose_bark(curve, half_mm, strip)]
    return draw_old(curve, 244, thickness_mm, name, times, over=bark, rings=rings)


def loose_bark(curve: Curve, half_mm: HalfWidth, strip: Strip) -> list[Thing]:
    """A strip that holds at its upper end; its lower one stands off and curls, over its shadow."""
    share, low, long, off = strip
    side = 1 if share > 0 else -1
    wide = max(half_mm(low) * 0.14, 2.2)

    def at(up: float, out: float) -> XY:
        return curve.beside(low + long * up, half_mm(low + long * up) * share + side * out)

    tip = at(0.0, off)
    outer = (at(1.0, 0.0), at(0.6, 0.4), at(0.25, off * 0.45), tip)
    inner = (tip, at(0.16, off * 0.2 - wide), at(0.55, -wide * 1.3), at(1.0, -wide * 0.3))
    shadow = [at(0.86, -wide * 0.9), at(0.5, -wide * 1.6), at(0.1, -wide * 1.1)]
    edge = Ink((Run((*outer, *inner), closed=True),), {"class": "pw-wood"})
    return [penned([swelling(shadow, wide * 0.9)], on_wood=True), edge]


HEALTH = (
    Condition.SOUND,
    Condition.SPINDLY,
    Condition.DISEASED,
    Condition.DEAD,
    Condition.INJURED,
)


_NAME = 31.0
"""Height of the names, so that the longest of any language has room beside its neighbours."""


def wood_health(board: Board) -> Scene:
    """Five canes in different health; a tick stands under the one to look for."""
    things: list[Thing] = []
    step = WIDTH / len(HEALTH)
    for number, condition in enumerate(HEALTH):
        thick = 4 if condition is Condition.SPINDLY else 10
        piece = Piece("a", 1, 250, thick, condition=condition, buds=3, internode_mm=70)
        x = step * (number + 0.5)
        stem = cane(f"plate {condition}", piece, Point(0, 0))
        things.append(placed((draw_cane(stem, 1.8),), x, 500, 1.8))
        name = say(board.language, f"drawing.condition.{condition}.cane")
        things.append(words(Point(x, 568), name, anchor="middle", size=_NAME))
        sign = right_sign if condition is Condition.SOUND else wrong_sign
        things.append(sign(Point(x, 622)))
    things.append(words(Point(WIDTH / 2, 704), board.say("note"), anchor="middle", size=30))
    return Scene(750, things)
