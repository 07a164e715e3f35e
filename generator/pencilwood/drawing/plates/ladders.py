"""Plates of the two kinds of ladder, kept apart: what holds for one does not for the other.

On both the steps are counted from the top. The cap of a tripod ladder counts as step 1, so that
"not on the top two" and "not above the third" say the same.
"""

from __future__ import annotations

from pencilwood.drawing.looks import FACE, PENCIL
from pencilwood.drawing.plates.board import (
    Board,
    Scene,
    ground,
    line,
    number_sign,
    pointer,
    right_sign,
    shape,
    words,
    wrong_sign,
)
from pencilwood.drawing.points import Point, between
from pencilwood.drawing.shapes import Thing

_GROUND_Y = 900.0
_STEPS = 8


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
        _rail(top_left, low_left),
        _rail(top_right, low_right),
    ]
    for step in range(_STEPS):
        share = step / _STEPS
        left, right = between(top_left, low_left, share), between(top_right, low_right, share)
        thick = 30.0 if step == 0 else 15.0
        things.append(_step(left, right, thick))
        if step < 3:
            things.append(number_sign(Point(left.x - 52, left.y + 6), str(step + 1)))
        sign = wrong_sign if step < 2 else right_sign
        if step < 3:
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
        shape(
            Point(wall_x, 150), Point(wall_x + 90, 150),
            Point(wall_x + 90, _GROUND_Y), Point(wall_x, _GROUND_Y), fill=PENCIL,
        ),
        line(foot, beyond, width=16),
    ]  # fmt: skip
    for rung in range(9):
        at = between(beyond, foot, (rung + 0.3) / 9)
        things.append(line(Point(at.x - 15, at.y - 4), Point(at.x + 15, at.y + 4), width=7))
        if rung < 3:
            things.append(number_sign(Point(at.x - 66, at.y), str(rung + 1)))
            things.append(wrong_sign(Point(at.x - 126, at.y), 24))
    things.extend(_quarters(foot, rest))
    things += [
        line(Point(foot_x, _GROUND_Y + 40), Point(wall_x, _GROUND_Y + 40), width=5),
        words(Point(foot_x - 24, _GROUND_Y + 54), board.say("out"), anchor="end"),
        words(Point(24, 250), board.say("not")),
        words(Point(24, 560), board.say("up")),
        words(Point(24, 62), board.say("count")),
        words(Point(24, _GROUND_Y + 130), board.say("ground")),
    ]
    return Scene(_GROUND_Y + 220, things)


def _quarters(foot: Point, rest: Point) -> list[Thing]:
    """A measure beside the ladder with four equal parts."""
    aside = -206.0
    low, high = Point(foot.x + aside, foot.y), Point(rest.x + aside, rest.y)
    things: list[Thing] = [line(low, high, width=4)]
    for part in range(5):
        at = between(low, high, part / 4)
        things.append(line(Point(at.x - 16, at.y - 4), Point(at.x + 16, at.y + 4), width=4))
    return things
