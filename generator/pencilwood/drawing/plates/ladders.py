"""Plates of the two kinds of ladder, kept apart: what holds for one does not for the other.

On both the steps are counted from the top. The cap of a tripod ladder counts as step 1, so that
"not on the top two" and "not above the third" say the same.
"""

from __future__ import annotations

from pencilwood.drawing.ink.curves import steps
from pencilwood.drawing.ink.looks import INK
from pencilwood.drawing.ink.points import Point, between
from pencilwood.drawing.ink.shapes import Group, Thing
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
from pencilwood.drawing.plates.carpentry import beam, bolt, shadow_on_ground, stones, tread
from pencilwood.drawing.plates.pen import penned, swelling

_GROUND_Y = 900.0
_STEPS = 8
_WALL = 96.0
_DEEP = Point(-44.0, -17.0)
"""How far aside the leaning ladder and its wall go on behind: the side it leans on is seen."""


def tripod_ladder(board: Board) -> Scene:
    """A three-leg ladder: two flared rails with steps, and one leg behind."""
    top_left, top_right = Point(330, 120), Point(430, 120)
    low_left, low_right = Point(180, _GROUND_Y), Point(540, _GROUND_Y)
    hinge, back = Point(394, 122), Point(696, _GROUND_Y - 8)
    things: list[Thing] = [
        *ground(_GROUND_Y, soft=True),
        *(shadow_on_ground(Point(foot.x + 14, _GROUND_Y + 10), 70)
          for foot in (low_left, low_right, back)),
        beam(hinge, back, 9, "third leg"),
        _spike(hinge, back),
    ]  # fmt: skip
    # Steps stand behind the rails, so that a rail is whole; the cap lies over both.
    for step in range(1, _STEPS):
        share = step / _STEPS
        left, right = between(top_left, low_left, share), between(top_right, low_right, share)
        things.append(tread(left, right, 9.0, 14.0, f"step {step}"))
    things += [
        *_braces(top_left, low_left, top_right, low_right),
        *(part for top, low in ((top_left, low_left), (top_right, low_right))
          for part in _rail(top, low)),
        tread(Point(top_left.x - 14, 122), Point(top_right.x + 14, 122), 12.0, 26.0, "cap"),
        bolt(Point(top_left.x + 2, 122)), bolt(Point(top_right.x - 2, 122)),
    ]  # fmt: skip
    for step in range(3):
        left = between(top_left, low_left, step / _STEPS)
        things.append(number_sign(Point(left.x - 56, left.y + 6), str(step + 1)))
        sign = wrong_sign if step < 2 else right_sign
        things.append(sign(Point(left.x - 128, left.y + 6), 24))
    things += [
        words(Point(24, 62), board.say("cap")),
        words(Point(520, 206), board.say("not")),
        words(Point(24, 440), board.say("highest")),
        pointer(Point(650, 520), board.say("leg"), between(hinge, back, 0.72)),
        words(Point(24, _GROUND_Y + 70), board.say("ground")),
    ]
    return Scene(_GROUND_Y + 170, things)


def _rail(top: Point, low: Point) -> list[Thing]:
    """A rail with a bolt at each step, and its foot that is pushed into the soil."""
    at_steps = (between(top, low, step / _STEPS) for step in range(1, _STEPS))
    return [_spike(top, low), beam(top, low, 10, f"rail {low.x}"), *map(bolt, at_steps)]


def _spike(top: Point, low: Point) -> Thing:
    """An iron point with a plate that stops it."""
    tip = between(top, low, 1.028)
    point = shape(Point(low.x - 6, low.y - 2), Point(low.x + 6, low.y - 2), tip, fill=INK, width=2)
    plate = shape(
        Point(low.x - 17, low.y - 2), Point(low.x + 17, low.y - 2),
        Point(low.x + 17, low.y + 5), Point(low.x - 17, low.y + 5), width=2.2,
    )  # fmt: skip
    return Group((point, plate))


def _braces(top_left: Point, low_left: Point, top_right: Point, low_right: Point) -> list[Thing]:
    """Struts under the two lowest steps, which spread the wide foot apart."""
    runs = []
    for step in (_STEPS - 2, _STEPS - 1):
        for top, low, way in ((top_left, low_left, 1), (top_right, low_right, -1)):
            on_rail = between(top, low, (step + 0.42) / _STEPS)
            under = between(top, low, step / _STEPS)
            end = Point(under.x + way * 62, under.y + 6)
            runs.append(swelling([on_rail, between(on_rail, end, 0.5), end], 6.0))
    return [penned(runs)]


def leaning_ladder(board: Board) -> Scene:
    """A ladder against a firm wall, seen from the side: four parts up, one part out."""
    part = 168.0
    # Of the working length, a quarter goes out: the height follows from the two.
    wall_x, foot_x = 560.0, 560.0 - part
    top_y = _GROUND_Y - part * (16 - 1) ** 0.5
    foot, rest = Point(foot_x, _GROUND_Y), Point(wall_x, top_y)
    beyond = between(foot, rest, 1.1)
    far_foot = _on_ground(_behind(beyond), _behind(foot))
    things: list[Thing] = [
        *ground(_GROUND_Y, soft=False),
        *_wall(wall_x + 10, top_y),
        shadow_on_ground(Point(foot.x + 20, _GROUND_Y + 6), 80),
        beam(far_foot, _behind(beyond), 8, "far rail"),
        *_shoe(far_foot),
    ]
    for rung in range(9):
        at = between(beyond, foot, (rung + 0.3) / 9)
        things.append(beam(at, _behind(at), 5.5, f"rung {rung}"))
    things += [beam(foot, beyond, 9, "near rail"), *_shoe(foot)]
    for rung in range(9):
        at = between(beyond, foot, (rung + 0.3) / 9)
        things.append(bolt(at, 4.6))
        if rung < 4:
            things.append(number_sign(Point(at.x - 98, at.y - 8), str(rung + 1)))
            sign = wrong_sign if rung < 3 else right_sign
            things.append(sign(Point(at.x - 156, at.y - 8), 24))
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


def _behind(at: Point) -> Point:
    return Point(at.x + _DEEP.x, at.y + _DEEP.y)


def _on_ground(head: Point, foot: Point) -> Point:
    """Where a rail from its head through such a foot meets the ground: both rails stand on it."""
    return between(head, foot, (_GROUND_Y - head.y) / (foot.y - head.y))


def _shoe(foot: Point) -> list[Thing]:
    """The foot of a rail, which does not slide."""
    sole = [(-20, 5), (22, 5), (22, -3), (12, -9), (10, -20), (-7, -20), (-11, -8), (-20, -3)]
    edge = (Point(foot.x + x, foot.y + y) for x, y in sole)
    return [shape(*edge, fill=INK, width=2.0), bolt(Point(foot.x + 2, foot.y - 13))]


def _wall(face_x: float, top_y: float) -> list[Thing]:
    """A wall as high as the ladder leans: the face it leans on, its top, and its stones."""
    right, low = face_x + _WALL, _GROUND_Y
    near = (Point(face_x, low), Point(face_x, top_y))
    far = tuple(map(_behind, near))
    courses = [
        swelling(
            [
                (face_x, y),
                between((face_x, y), _behind(Point(face_x, y)), 0.5),
                _behind(Point(face_x, y)),
            ],
            2.4,
        )
        for y in steps(top_y, low, 44.0)[1:-1]
    ]
    return [
        shape(*near, *far[::-1], width=2.4),
        penned(courses),
        shape(near[1], far[1], _behind(Point(right, top_y)), Point(right, top_y), width=2.4),
        shape(*near, Point(right, top_y), Point(right, low), width=3.0),
        *stones(face_x, top_y, right, low, "wall"),
    ]  # fmt: skip


def _quarters(foot: Point, rest: Point) -> list[Thing]:
    """A measure beside the ladder with four equal parts."""
    aside = -224.0
    low, high = Point(foot.x + aside, foot.y), Point(rest.x + aside, rest.y)
    things: list[Thing] = [line(low, high, width=4)]
    for part in range(5):
        at = between(low, high, part / 4)
        things.append(line(Point(at.x - 16, at.y - 4), Point(at.x + 16, at.y + 4), width=4))
    return things
