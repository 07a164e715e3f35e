"""The plate of spring: which green shoots stay on a spur, and which come off."""

from __future__ import annotations

import math

from pencilwood.drawing.ink.curves import trace
from pencilwood.drawing.ink.points import Point
from pencilwood.drawing.ink.shapes import Thing
from pencilwood.drawing.plates.board import Board, Scene, mark, right_sign, words, wrong_sign
from pencilwood.drawing.plates.greens import Shoot, draw_shoot
from pencilwood.drawing.plates.near_wood import cane, draw_cane, draw_old
from pencilwood.drawing.plates.pen import placed
from pencilwood.drawing.wood.canes import bud_side
from pencilwood.drawing.wood.stems import Stem
from pencilwood.vine.model import Piece

_TIMES = 2.0
_SPUR_X, _UNDER_X, _ARM_Y = 310.0, 520.0, 800.0
_SPUR_MM = 52
"""From bud to bud."""
_JOINT, _LEAF = 62.0, 76.0


def shoot_thinning(board: Board) -> Scene:
    """A spur with one good shoot on each bud; a second one and one from old wood are dotted."""
    arm = draw_old(trace(Point(-30, 0), 470, lambda _: math.pi / 2), 460, 17, "spring arm", _TIMES)
    old = draw_old(trace(Point(0, -4), 40, lambda _: 0.04), 36, 12, "spring old", _TIMES)
    spur = _spur()
    low, high, weak, under = shoots_in_spring()
    things: list[Thing] = [
        draw_shoot(under),
        placed((old,), _SPUR_X, _ARM_Y - 12, _TIMES),
        placed((arm,), 0, _ARM_Y, _TIMES),
        draw_shoot(weak),
        placed((draw_cane(spur, _TIMES, buds_share=0.0),), 0, 0, _TIMES),
        draw_shoot(high),
        draw_shoot(low),
        right_sign(Point(46, 60)),
        words(Point(86, 72), board.say("stays")),
        mark(Point(130, 168), low.curve.at(low.length * 0.97), width=2.4),
        mark(Point(314, 104), high.curve.at(high.length * 0.94), width=2.4),
        wrong_sign(Point(584, 240)),
        words(Point(558, 308), board.say("second")),
        mark(Point(548, 372), weak.curve.at(weak.length * 0.9), width=2.4),
        wrong_sign(Point(46, 944)),
        words(Point(86, 956), board.say("under")),
        mark(Point(300, 916), under.curve.at(under.length * 0.3), width=2.4),
    ]
    return Scene(1040, things)


def _spur() -> Stem:
    piece = Piece("a", 1, 2 * _SPUR_MM + 20, 9, buds=2, internode_mm=_SPUR_MM)
    return cane("spur in spring", piece, Point(_SPUR_X / _TIMES, (_ARM_Y - 82) / _TIMES))


def _bud(bud: int) -> tuple[Point, int]:
    """Where a shoot begins, and on which side of the spur."""
    spur = _spur()
    at, side = float(bud * _SPUR_MM), bud_side(spur, bud)
    x, y = spur.curve.beside(at + 2, side * spur.half_mm(at) * 0.9)
    return Point(x * _TIMES, y * _TIMES), side


def shoots_in_spring() -> tuple[Shoot, Shoot, Shoot, Shoot]:
    """On the low bud and on the high one, the weaker one beside it, and one under the arm."""
    (low_at, low_side), (high_at, high_side) = _bud(1), _bud(2)
    first = trace(low_at, 350, lambda at: low_side * 0.85 * math.exp(-at / 120))
    second = trace(high_at, 400, lambda at: high_side * 0.5 * math.exp(-at / 100))
    beside = Point(high_at.x, high_at.y + 10)
    third = trace(beside, 215, lambda at: high_side * (0.55 + 1.1 * math.exp(-at / 110)))
    below = Point(_UNDER_X, _ARM_Y + 22)
    fourth = trace(below, 260, lambda at: 1.85 + 1.1 * math.exp(-at / 60))
    return (
        Shoot("spring low", first, 350, half=7.5, joint=_JOINT, leaf=_LEAF, bunches=2),
        Shoot("spring upper", second, 400, half=7.5, joint=_JOINT, leaf=_LEAF, bunches=2),
        Shoot("spring weak", third, 215, half=5.0, joint=46.0, leaf=52.0, gone=True),
        Shoot("spring under", fourth, 260, half=6.0, joint=52.0, leaf=60.0, gone=True),
    )
