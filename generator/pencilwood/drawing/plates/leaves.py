"""The plate of leaf room: a low spur and a high one under the same summer trim."""

from __future__ import annotations

from pencilwood.drawing.curves import trace
from pencilwood.drawing.plates.board import (
    Board,
    Scene,
    draw_old,
    enlarged,
    line,
    right_sign,
    shape,
    words,
    wrong_sign,
)
from pencilwood.drawing.points import Point
from pencilwood.drawing.shapes import Thing

_TRIM_Y = 90.0
_ARM_Y = 800.0
_LEAF_EVERY = 40.0
_LEAF_UP = 34.0
"""How far a leaf reaches above its joint."""


def leaf_room(board: Board) -> Scene:
    """Two shoots that begin at different heights and are trimmed at the same one."""
    # It goes on beyond both edges of the plate.
    arm = draw_old(trace(Point(-50, 0), 520, lambda _: 1.5708), 510, 17, "plate leaf arm")
    things: list[Thing] = [
        line(Point(20, _TRIM_Y), Point(780, _TRIM_Y), dashed=True, width=3.4),
        words(Point(20, _TRIM_Y - 34), board.say("trim")),
    ]
    for x, spur_high, sign, key in (
        (230.0, 60.0, right_sign, "low"),
        (580.0, 360.0, wrong_sign, "high"),
    ):
        foot = trace(Point(0, 0), spur_high, lambda _: 0.0)
        old = draw_old(foot, spur_high, 13, f"plate leaf {key}")
        things.append(enlarged((old,), x, _ARM_Y - 14, 1.0))
        bud_y = _ARM_Y - 14 - spur_high
        things.extend(_shoot(x, bud_y))
        things.append(sign(Point(x - 110, bud_y - 10)))
        things.append(words(Point(x, _ARM_Y + 90), board.say(key), anchor="middle"))
    # The arm hides the feet of the spurs, which so grow out of it.
    things.append(enlarged((arm,), 40, _ARM_Y, 1.8))
    return Scene(950, things)


def _shoot(x: float, bud_y: float) -> list[Thing]:
    """A green shoot with a leaf at every joint, up to the trim and a little ghost beyond."""
    things: list[Thing] = [line(Point(x, bud_y), Point(x, _TRIM_Y), width=7.0)]
    count = int((bud_y - _TRIM_Y) // _LEAF_EVERY)
    for number in range(count):
        y = bud_y - (number + 0.6) * _LEAF_EVERY
        if y - _LEAF_UP < _TRIM_Y:
            break
        side = 1 if number % 2 else -1
        things.append(_leaf(Point(x, y), side))
    things.append(line(Point(x - 24, _TRIM_Y + 10), Point(x + 24, _TRIM_Y - 10), width=5.0))
    return things


def _leaf(joint: Point, side: int) -> Thing:
    def off(right: float, up: float) -> Point:
        return Point(joint.x + side * right, joint.y - up)

    return shape(
        off(0, 0), off(20, 8), off(28, 28), off(44, 22), off(62, 30), off(60, 14), off(74, 4),
        off(58, -6), off(50, -20), off(34, -12), off(20, -14),
        width=2.4,
    )  # fmt: skip
