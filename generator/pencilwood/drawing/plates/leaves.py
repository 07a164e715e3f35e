"""The plate of leaf room: a low spur and a high one under the same summer trim."""

from __future__ import annotations

import math

from pencilwood.drawing.ink.curves import trace
from pencilwood.drawing.ink.points import Point
from pencilwood.drawing.ink.shapes import Group, Thing
from pencilwood.drawing.plates.board import (
    Board,
    Scene,
    line,
    right_sign,
    words,
    wrong_sign,
)
from pencilwood.drawing.plates.greens import Shoot, draw_shoot
from pencilwood.drawing.plates.near_wood import cane, draw_cane, draw_old
from pencilwood.drawing.plates.pen import placed
from pencilwood.drawing.wood.canes import bud_side
from pencilwood.vine.model import Piece

_TRIM_Y = 90.0
_ARM_Y = 800.0
_LEAF_EVERY = 42.0
"""7 cm, where the trim is 1.2 m above the arm: the plate is true to that scale."""
_LEAF = 62.0
_SPURS = (("low", 220.0, 14.0), ("high", 560.0, 350.0))
"""Where each stands, and how high its old wood has climbed."""


def leaf_room(board: Board) -> Scene:
    """Two shoots that begin at different heights and are trimmed at the same one."""
    # It goes on beyond both edges of the plate.
    arm = draw_old(trace(Point(-50, 0), 520, lambda _: math.pi / 2), 510, 17, "plate leaf arm", 1.8)
    things: list[Thing] = [
        line(Point(20, _TRIM_Y), Point(780, _TRIM_Y), dashed=True, width=3.0),
        words(Point(20, _TRIM_Y - 34), board.say("trim")),
    ]
    for (key, x, _), sign in zip(_SPURS, (right_sign, wrong_sign), strict=True):
        old, spur, grown = spur_in_summer(key)
        things += [old, spur, draw_shoot(grown)]
        top = grown.curve.at(grown.length)
        cut = (Point(top.x - 20, _TRIM_Y + 9), Point(top.x + 20, _TRIM_Y - 9))
        things.append(line(*cut, width=5.0))
        things.append(sign(Point(x - 140, _ARM_Y + 100)))
        things.append(words(Point(x, _ARM_Y + 90), board.say(key), anchor="middle"))
    # The arm hides the feet of the spurs, which so grow out of it.
    things.append(placed((arm,), 40, _ARM_Y, 1.8))
    return Scene(950, things)


def spur_in_summer(key: str) -> tuple[Group, Group, Shoot]:
    """Old wood, the spur of one bud on it, and the shoot of that bud up to the summer trim."""
    _, x, climbed = next(spur for spur in _SPURS if spur[0] == key)
    # Each winter's spur stood a little aside of the last one.
    wood = trace(Point(x, _ARM_Y - 6), climbed + 24, lambda at: 0.16 * math.sin(at / 34))
    old = draw_old(wood, climbed + 20, 12, f"plate leaf {key}", 1.0)
    foot = wood.at(climbed + 14)
    stem = cane(f"plate leaf spur {key}", Piece("a", 1, 46, 7, buds=1, internode_mm=30), foot)
    spur = draw_cane(stem, 1.0, buds_share=0.0)
    node, side = float(stem.piece.internode_mm), bud_side(stem, 1)
    bud = Point(*stem.curve.beside(node, side * stem.half_mm(node) * 0.8))
    long = bud.y - _TRIM_Y
    grown = Shoot(
        f"plate shoot {key}",
        trace(bud, long, lambda at: side * 0.7 * math.exp(-at / 26)),
        long,
        half=5.5,
        joint=_LEAF_EVERY,
        leaf=_LEAF,
        trimmed=True,
    )
    return old, spur, grown
