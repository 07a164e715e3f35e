"""Plates of single canes: their parts, their age, their health."""

from __future__ import annotations

from pencilwood.drawing.canes import bud_middle
from pencilwood.drawing.curves import trace
from pencilwood.drawing.looks import BUD
from pencilwood.drawing.plates.board import (
    WIDTH,
    Board,
    Scene,
    cane,
    draw_cane,
    draw_old,
    enlarged,
    line,
    number_sign,
    on_wood,
    pointer,
    right_sign,
    words,
    wrong_sign,
)
from pencilwood.drawing.points import Point
from pencilwood.drawing.shapes import Dot, Group, Ink, Run, Thing
from pencilwood.drawing.stems import Stem
from pencilwood.vine.model import Condition, Piece
from pencilwood.words import say


def parts_of_a_cane(board: Board) -> Scene:
    """One cane on its old wood, with its counted buds numbered from the foot."""
    times, x, foot = 2.3, 310.0, 930.0
    piece = Piece("a", 1, 390, 10, buds=4, internode_mm=86)
    stem = cane("plate", piece, Point(0, 0))
    old = draw_old(trace(Point(-2, 62), 70, lambda _: 0.03), 66, 19, "plate old")
    arm = draw_old(trace(Point(-190, 74), 420, lambda _: 1.5708), 420, 26, "plate cane arm")
    basal = [
        Dot(Point(side * 12.0, up), 4.2, {"class": "pw-bud", "fill": BUD})
        for side, up in ((-1, -4.0), (1, -9.0))
    ]
    things: list[Thing] = [enlarged((draw_cane(stem), old, *basal, arm), x, foot, times)]
    for bud in range(1, piece.buds + 1):
        middle = Point(*bud_middle(stem, bud))
        at = Point(x + middle.x * times, foot + middle.y * times)
        side = 1 if middle.x > 0 else -1
        things.append(number_sign(Point(at.x + side * 62, at.y), str(bud)))
    rings = [_ring(stem, bud, x, foot, times) for bud in range(1, piece.buds + 1)]
    node_mm = piece.internode_mm * times
    between_y = foot - 2.5 * node_mm
    third = Point(*bud_middle(stem, 3))
    third_at = Point(x + third.x * times, foot + third.y * times)
    # The bud's name stands on the side where the bud is, the node's on the side where it is not.
    sides = ((500.0, "start"), (170.0, "end"))
    bud_x, anchor = sides[third.x < 0]
    node_x, node_anchor = sides[bud_middle(stem, 2)[0] > 0]
    node = rings[1].runs[0].points[0 if node_x < x else -1]
    things += [
        *rings,
        pointer(Point(node_x, node[1] + 12), board.say("node"), Point(*node), anchor=node_anchor),
        *_between_nodes(450.0, foot - 2 * node_mm, foot - 3 * node_mm),
        pointer(Point(520, between_y + 12), board.say("internode"), Point(450, between_y)),
        pointer(Point(bud_x, third_at.y - 80), board.say("bud"), third_at, anchor=anchor),
        pointer(Point(500, foot - 70), board.say("basal"), Point(x + 32, foot - 21)),
        pointer(Point(500, foot + 62), board.say("old"), Point(x + 40, foot + 74)),
        *_count_up(board, Point(44, 640), stem, foot, times),
    ]
    return Scene(1180, things)


def _between_nodes(x: float, low_y: float, high_y: float) -> list[Thing]:
    """A bracket as long as the piece between two nodes."""
    ends = (Point(x - 16, low_y), Point(x, low_y), Point(x, high_y), Point(x - 16, high_y))
    return [line(*ends, width=3.0)]


def _count_up(board: Board, tip: Point, stem: Stem, foot: float, times: float) -> list[Thing]:
    """Beside the lowest bud where the count begins, and an arrow upward."""
    low = Point(tip.x, foot - stem.piece.internode_mm * times * 0.75)
    arrow = [
        line(low, tip, width=4.0),
        line(Point(tip.x - 14, tip.y + 24), tip, Point(tip.x + 14, tip.y + 24), width=4.0),
    ]
    return [*arrow, words(Point(20, low.y + 48), board.say("count"), size=30)]


def _ring(stem: Stem, bud: int, x: float, foot: float, times: float) -> Ink:
    """The ring of a node, which goes around the cane under the bud."""
    at = float(bud * stem.piece.internode_mm)
    half = stem.half_mm(at)
    places = (
        stem.curve.beside(at, -half), stem.curve.beside(at - 4, 0.0), stem.curve.beside(at, half),
    )  # fmt: skip
    return on_wood(*(Point(x + right * times, foot + down * times) for right, down in places))


def wood_ages(board: Board) -> Scene:
    """Wood of one year, of two years and of many years, side by side."""
    young = cane("plate young", Piece("a", 1, 250, 9, buds=3, internode_mm=72), Point(0, 0))
    two = draw_old(trace(Point(0, 0), 260, lambda _: 0.0), 240, 17, "plate two")
    many = _shaggy(draw_old(trace(Point(0, 0), 260, lambda _: 0.0), 240, 36, "plate many"), 36)
    things: list[Thing] = []
    columns = ((130.0, draw_cane(young), "one"), (390.0, two, "two"), (660.0, many, "many"))
    for x, drawn, key in columns:
        things.append(enlarged((drawn,), x, 520, 1.85))
        things.append(words(Point(x, 590), board.say(key), anchor="middle", bold=True))
        things.append(words(Point(x, 636), board.say(f"{key}.looks"), anchor="middle", size=30))
    return Scene(750, things)


_STRIPS = ((-1, 20, 58), (1, 40, 74), (-1, 88, 66), (1, 126, 56), (-1, 166, 62), (1, 190, 46))
"""On which side a strip of bark hangs loose, how far up it begins, and how long it is."""


def _shaggy(wood: Group, half_mm: float) -> Group:
    """The same with strips of bark that come off its edges; filled, so that black shows them."""
    runs = []
    for side, up, long in _STRIPS:

        def at(out: float, share: float, side: int = side, up: int = up, long: int = long) -> Point:
            return Point(side * (half_mm + out), -(up + long * share))

        tip = at(9, 1.0)
        edge = (at(-5, 0), at(-1, 0.4), at(4, 0.75), tip, tip, at(-1, 0.85), at(-6, 0.5), at(-5, 0))
        runs.append(Run(edge, closed=True))
    return Group((*wood.things, Ink(tuple(runs), {"class": "pw-wood"})), wood.attributes)


HEALTH = (
    Condition.SOUND,
    Condition.SPINDLY,
    Condition.DISEASED,
    Condition.DEAD,
    Condition.INJURED,
)


def wood_health(board: Board) -> Scene:
    """Five canes in different health; a tick stands under the one to look for."""
    things: list[Thing] = []
    step = WIDTH / len(HEALTH)
    for number, condition in enumerate(HEALTH):
        thick = 4 if condition is Condition.SPINDLY else 10
        piece = Piece("a", 1, 250, thick, condition=condition, buds=3, internode_mm=70)
        x = step * (number + 0.5)
        stem = cane(f"plate {condition}", piece, Point(0, 0))
        things.append(enlarged((draw_cane(stem),), x, 500, 1.8))
        name = say(board.language, f"drawing.condition.{condition}.cane")
        # Two heights, so that long neighbouring names do not touch.
        foot = Point(x, 565 if number % 2 == 0 else 610)
        things.append(words(foot, name, anchor="middle"))
        sign = right_sign if condition is Condition.SOUND else wrong_sign
        things.append(sign(Point(x, 665)))
    things.append(words(Point(WIDTH / 2, 740), board.say("note"), anchor="middle", size=30))
    return Scene(800, things)
