"""Plates of the two kinds of ladder, kept apart: what holds for one does not for the other.

On both the steps are counted from the top. The cap of a tripod ladder counts as step 1, so that
"not on the top two" and "not above the third" say the same.
"""

from __future__ import annotations

from pencilwood.drawing.ink.looks import FACE
from pencilwood.drawing.ink.points import Point, between
from pencilwood.drawing.ink.shapes import Thing
from pencilwood.drawing.plates.board import (
    Board,
    Scene,
    box,
    ground,
    line,
    number_sign,
    pointer,
    right_sign,
    shape,
    words,
    wrong_sign,
)

_GROUND_Y = 900.0
_STEPS = 8
_RAIL = 16.0
_WALL = 90.0


def tripod_ladder(board: Board) -> Scene:
    """A three-leg ladder: two flared rails with steps, and one leg behind."""
    top_left, top_right = Point(330, 120), Point(430, 120)
    low_left, low_right = Point(180, _GROUND_Y), Point(540, _GROUND_Y)
    back = Point(700, _GROUND_Y + 8)
    things: list[Thing] = [
        *ground(_GROUND_Y, soft=True),
        shape(
            Point(384, 120), Point(404, 120), Point(back.x + 8, back.y), Point(back.x - 12, back.y)
        ),
    ]
    # Steps stand behind the rails, so that a rail is whole; the cap lies over both.
    for step in range(1, _STEPS):
        share = step / _STEPS
        left, right = between(top_left, low_left, share), between(top_right, low_right, share)
        things.append(_step(left, right, 15.0))
    things += [_rail(top_left, low_left), _rail(top_right, low_right)]
    things.append(_step(top_left, top_right, 30.0))
    for step in range(3):
        left = between(top_left, low_left, step / _STEPS)
        things.append(number_sign(Point(left.x - 52, left.y + 6), str(step + 1)))
        sign = wrong_sign if step < 2 else right_sign
        things.append(sign(Point(left.x - 124, left.y + 6), 24))
    things += [
        words(Point(24, 62), board.say("cap")),
        words(Point(520, 206), board.say("not")),
        words(Point(24, 440), board.say("highest")),
        pointer(Point(650, 520), board.say("leg"), between(Point(394, 120), back, 0.72)),
        words(Point(24, _GROUND_Y + 70), board.say("ground")),
    ]
    return Scene(_GROUND_Y + 170, things)


def _rail(top: Point, foot: Point) -> Thing:
    return shape(
        Point(top.x - 9, top.y), Point(top.x + 9, top.y),
        Point(foot.x + 9, foot.y + 10), Point(foot.x - 9, foot.y + 10),
        fill=FACE,
    )  # fmt: skip


def _step(left: Point, right: Point, thick: float) -> Thing:
    return shape(
        Point(left.x - 8, left.y - thick / 2), Point(right.x + 8, right.y - thick / 2),
        Point(right.x + 8, right.y + thick / 2), Point(left.x - 8, left.y + thick / 2),
        fill=FACE,
    )  # fmt: skip


def leaning_ladder(board: Board) -> Scene:
    """A ladder against a firm wall, seen from the side: four parts up, one part out."""
    part = 168.0
    # Of the working length, a quarter goes out: the height follows from the two.
    wall_x, foot_x = 560.0, 560.0 - part
    top_y = _GROUND_Y - part * (16 - 1) ** 0.5
    foot, rest = Point(foot_x, _GROUND_Y), Point(wall_x, top_y)
    beyond = between(foot, rest, 1.1)
    things: list[Thing] = [
        *ground(_GROUND_Y, soft=False),
        *_wall(wall_x + _RAIL / 2, top_y),
        line(foot, beyond, width=_RAIL),
    ]
    for rung in range(9):
        at = between(beyond, foot, (rung + 0.3) / 9)
        # On the side away from the wall, whose face nothing crosses.
        things.append(line(Point(at.x - 18, at.y - 4), Point(at.x, at.y), width=7))
        if rung < 4:
            things.append(number_sign(Point(at.x - 66, at.y), str(rung + 1)))
            sign = wrong_sign if rung < 3 else right_sign
            things.append(sign(Point(at.x - 126, at.y), 24))
    things.extend(_quarters(foot, rest))
    things += [
        line(Point(foot_x, _GROUND_Y + 40), Point(wall_x, _GROUND_Y + 40), width=5),
        words(Point(foot_x - 24, _GROUND_Y + 54), board.say("out"), anchor="end"),
        words(Point(24, 250), board.say("not")),
        words(Point(24, 420), board.say("highest")),
        words(Point(24, 610), board.say("up")),
        words(Point(24, 62), board.say("count")),
        words(Point(24, _GROUND_Y + 130), board.say("ground")),
    ]
    return Scene(_GROUND_Y + 220, things)


def _wall(face_x: float, top_y: float) -> list[Thing]:
    """A wall as high as the ladder leans; hatched, so that it is neither wood nor paper."""
    wall = box(face_x, top_y, _WALL, _GROUND_Y - top_y)
    count = int((_GROUND_Y - top_y) // 34)
    return [wall, *(
        line(Point(face_x + 4, y), Point(face_x + _WALL - 4, y - 24), width=2.0)
        for y in (top_y + 34 * (number + 1) for number in range(count))
    )]  # fmt: skip


def _quarters(foot: Point, rest: Point) -> list[Thing]:
    """A measure beside the ladder with four equal parts."""
    aside = -206.0
    low, high = Point(foot.x + aside, foot.y), Point(rest.x + aside, rest.y)
    things: list[Thing] = [line(low, high, width=4)]
    for part in range(5):
        at = between(low, high, part / 4)
        things.append(line(Point(at.x - 16, at.y - 4), Point(at.x + 16, at.y + 4), width=4))
    return things
