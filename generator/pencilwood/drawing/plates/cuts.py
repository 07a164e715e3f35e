"""Plates of the cut itself, and of the hand as a measure."""

from __future__ import annotations

from pencilwood.drawing.canes import bud_middle
from pencilwood.drawing.curves import trace
from pencilwood.drawing.looks import FACE, INK
from pencilwood.drawing.plates.board import (
    WIDTH,
    Board,
    Scene,
    cane,
    draw_cane,
    draw_old,
    enlarged,
    line,
    right_sign,
    shape,
    words,
    wrong_sign,
)
from pencilwood.drawing.points import Point
from pencilwood.drawing.shapes import Attributes, Dot, Thing
from pencilwood.drawing.stems import Stem
from pencilwood.vine.model import Piece

_STUBS = (("close", 1), ("right", 13), ("long", 46))
_HAND_MM = 100


def cut_and_stub(board: Board) -> Scene:
    """The top of a spur three times: cut too close, right, and with a stub too long."""
    things: list[Thing] = []
    foot, times = 620.0, 4.2
    for number, (key, stub_mm) in enumerate(_STUBS):
        x = WIDTH * (number + 0.5) / len(_STUBS)
        piece = Piece("a", 1, 80 + stub_mm, 11, buds=1, internode_mm=80)
        # One name for all three, so that the bud stands on the same side.
        stem = cane("plate cut", piece, Point(0, 0))
        things.append(enlarged((draw_cane(stem), _cut_end(stem)), x, foot, times))
        sign = right_sign if key == "right" else wrong_sign
        things.append(sign(Point(x, foot + 60)))
        things.append(words(Point(x, foot + 140), board.say(key), anchor="middle", bold=True))
        things.append(
            words(Point(x, foot + 184), board.say(f"{key}.why"), anchor="middle", size=29)
        )
    return Scene(foot + 270, things)


def _cut_end(stem: Stem) -> Thing:
    """The pale cut face, sloping down on the side away from the bud."""
    end = float(stem.piece.length_mm)
    slope_deg = -24 if bud_middle(stem, 1)[0] > 0 else 24
    look: Attributes = {
        "class": "pw-plate-face",
        "fill": FACE,
        "stroke": INK,
        "stroke-width": 1.6,
    }
    half = stem.half_mm(end) * 1.12
    return Dot(stem.curve.at(end), half, look, flattening=0.5, turn_deg=slope_deg)


def hand_on_the_arm(board: Board) -> Scene:
    """A hand laid on the arm between two spurs."""
    times, arm_y, left = 3.0, 560.0, 250.0
    arm = draw_old(trace(Point(-110, 0), 330, lambda _: 1.5708), 322, 17, "plate arm")
    spurs = [
        draw_cane(cane(f"plate spur {at}", _spur(), Point(at, -12)))
        for at in (0.0, float(_HAND_MM))
    ]
    right = left + _HAND_MM * times
    above = arm_y - 400
    things: list[Thing] = [
        enlarged((*spurs, arm), left, arm_y, times),
        enlarged(_hand(), left, arm_y, times),
        line(Point(left, above + 30), Point(left, above - 14), width=2.4),
        line(Point(right, above + 30), Point(right, above - 14), width=2.4),
        line(Point(left, above), Point(right, above), width=3.4),
        words(Point((left + right) / 2, above - 64), board.say("hand"), anchor="middle"),
        words(Point((left + right) / 2, above - 24), board.length(_HAND_MM), anchor="middle"),
        words(Point(24, arm_y + 110), board.say("arm")),
        words(Point(24, arm_y - 250), board.say("spur")),
        line(Point(120, arm_y - 240), Point(left - 34, arm_y - 160), width=2.4),
    ]
    return Scene(arm_y + 420, things)


def _spur() -> Piece:
    return Piece("a", 1, 105, 9, buds=2, internode_mm=45)


def _hand() -> tuple[Thing, ...]:
    """The back of a hand from below, its four fingers closed over the arm; in millimetres."""
    fingers = []
    tops = (-38.0, -50.0, -47.0, -32.0)
    for number, top in enumerate(tops):
        x = 10.0 + 20.0 * number
        fingers.append(
            shape(
                Point(x, 44), Point(x, top + 10), Point(x + 1.5, top + 2), Point(x + 10, top),
                Point(x + 18.5, top + 2), Point(x + 20, top + 10), Point(x + 20, 44),
                width=1.3,
            )
        )  # fmt: skip
        fingers.append(line(Point(x + 5, top + 13), Point(x + 15, top + 13), width=0.8))
        fingers.append(line(Point(x + 5, 12), Point(x + 15, 12), width=0.8))
    palm = shape(
        Point(10, 36), Point(90, 36), Point(91, 70), Point(86, 100), Point(78, 118),
        Point(78, 138), Point(24, 138), Point(24, 118), Point(14, 96), Point(10, 70),
        width=1.3,
    )  # fmt: skip
    thumb = shape(
        Point(12, 92), Point(-4, 76), Point(-13, 58), Point(-14, 46), Point(-7, 42),
        Point(0, 49), Point(6, 60), Point(16, 68), width=1.3,
    )  # fmt: skip
    join = [line(Point(30 + 20 * n, 30), Point(30 + 20 * n, 44), width=1.3) for n in range(3)]
    return (thumb, palm, *fingers, *join)
