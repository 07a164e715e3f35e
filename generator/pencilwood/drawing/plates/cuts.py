"""Plates of the cut itself, and of the hand as a measure."""

from __future__ import annotations

from pencilwood.drawing.ink.curves import steps, trace
from pencilwood.drawing.ink.points import Point
from pencilwood.drawing.ink.shapes import Ink, Run, Thing
from pencilwood.drawing.plates.board import (
    WIDTH,
    Board,
    Scene,
    line,
    mark,
    right_sign,
    shape,
    words,
    wrong_sign,
)
from pencilwood.drawing.plates.near_wood import cane, draw_cane, draw_old
from pencilwood.drawing.plates.pen import fine, placed
from pencilwood.vine.model import Piece

_STUBS = (("close", 1), ("right", 20), ("long", 60))
"""Wood above the bud; the right one is what the rules ask for unless a profile says otherwise."""
_DRAWN_MM = 5
"""Thickness of a cane of 10 mm, which the drawing doubles: here the stub is compared with it."""
_BUD_SHARE = 0.72
"""The bud of a vine's drawing is as much too large as its wood is too thick."""
_SCALE_MM = 20
_HAND_MM = 100


def cut_and_stub(board: Board) -> Scene:
    """The top of a spur three times: cut too close, right, and with a stub too long."""
    things: list[Thing] = []
    foot, times = 640.0, 5.4
    for number, (key, stub_mm) in enumerate(_STUBS):
        x = WIDTH * (number + 0.5) / len(_STUBS)
        piece = Piece("a", 1, 50 + stub_mm, _DRAWN_MM, buds=1, internode_mm=50)
        # One name for all three, so that the bud stands on the same side.
        stem = cane("plate cut", piece, Point(0, 0))
        drawn = draw_cane(stem, times, buds_share=_BUD_SHARE)
        things.append(placed((drawn,), x, foot, times))
        sign = right_sign if key == "right" else wrong_sign
        things.append(sign(Point(x, foot + 60)))
        things.append(words(Point(x, foot + 140), board.say(key), anchor="middle", bold=True))
        things.append(
            words(Point(x, foot + 184), board.say(f"{key}.why"), anchor="middle", size=29)
        )
    bar_y, long = 96.0, _SCALE_MM * times
    things += [
        mark(Point(40, bar_y), Point(40 + long, bar_y), width=5.0),
        *(mark(Point(at, bar_y - 10), Point(at, bar_y + 10), width=3.0) for at in (40, 40 + long)),
        words(Point(40, bar_y - 26), board.length(_SCALE_MM)),
    ]
    return Scene(foot + 270, things)


def hand_on_the_arm(board: Board) -> Scene:
    """A hand laid on the arm between two spurs."""
    times, arm_y, left = 3.0, 560.0, 250.0
    arm = draw_old(trace(Point(-110, 0), 330, lambda _: 1.5708), 322, 17, "plate arm", times)
    spurs = [
        draw_cane(cane(f"plate spur {at}", _spur(), Point(at, -12)), times, buds_share=_BUD_SHARE)
        for at in (0.0, float(_HAND_MM))
    ]
    right = left + _HAND_MM * times
    above = arm_y - 400
    things: list[Thing] = [
        placed((*spurs, arm), left, arm_y, times),
        placed(_hand(), left, arm_y, times),
        mark(Point(left, above + 14), Point(left, above - 14), width=2.4),
        mark(Point(right, above + 14), Point(right, above - 14), width=2.4),
        mark(Point(left, above), Point(right, above), width=3.4),
        words(Point((left + right) / 2, above - 64), board.say("hand"), anchor="middle"),
        words(Point((left + right) / 2, above - 24), board.length(_HAND_MM), anchor="middle"),
        words(Point(24, arm_y + 110), board.say("arm")),
        words(Point(24, arm_y - 250), board.say("spur")),
        mark(Point(120, arm_y - 240), Point(left - 21, arm_y - 160), width=2.4),
    ]
    return Scene(arm_y + 530, things)


def _spur() -> Piece:
    """As thick as on the plate of the cuts, with as much wood above the top bud as is right."""
    return Piece("a", 1, 90 + dict(_STUBS)["right"], _DRAWN_MM, buds=2, internode_mm=45)


def _hand() -> tuple[Thing, ...]:
    """The back of a right hand from below, as wide as the measure; in millimetres."""
    wide = _HAND_MM / 4
    fingers = [part for number, top in enumerate(_FINGER_TOPS_MM)
               for part in _finger(wide * number, top, wide)]  # fmt: skip
    left = _points(
        (0, 50), (0, 50), (-1, 58), (-3, 68), (-9, 60), (-15, 47), (-22, 38), (-30, 40), (-32, 50),
        (-28, 64), (-19, 82), (-6, 101), (12, 120), (20, 136), (21, 146),
    )  # fmt: skip
    right = _points((100, 50), (100, 50), (101, 68), (98, 92), (89, 112), (82, 128), (80, 146))
    palm = shape(*left, *reversed(right), width=0.0, smooth=True)
    wrist = [line(Point(21, 146), Point(21, 172), width=0.7),
             line(Point(80, 146), Point(80, 172), width=0.7)]  # fmt: skip
    sides = [line(*one, width=0.8, smooth=True) for one in (left, right)]
    return (palm, *sides, *(_fading(one) for one in wrist), *fingers)


_FINGER_TOPS_MM = (-24.0, -36.0, -32.0, -16.0)
_KNUCKLES_MM = 50.0


def _points(*places: tuple[float, float]) -> tuple[Point, ...]:
    return tuple(Point(*place) for place in places)


def _finger(x: float, top: float, wide: float) -> tuple[Thing, ...]:
    """A finger with a round end, its nail, the creases of its joint, and its knuckle."""
    middle, low = x + wide / 2, _KNUCKLES_MM
    joint = top + (low - top) * 0.5
    edge = _points(
        (x, low), (x, low), (x + 0.4, joint), (x + 0.8, top + 12), (x + 4, top + 2), (middle, top),
        (x + wide - 4, top + 2), (x + wide - 0.8, top + 12), (x + wide - 0.4, joint),
        (x + wide, low), (x + wide, low),
    )  # fmt: skip
    nail = _points(
        (middle - 5.5, top + 15), (middle - 6, top + 7), (middle, top + 4.5), (middle + 6, top + 7),
        (middle + 5.5, top + 15), (middle, top + 17), (middle - 5.5, top + 15),
    )  # fmt: skip
    creases = [_wrinkle(middle, joint + up, 1.4) for up in (-2.0, 2.5)]
    inside = shape(*edge, width=0.0, smooth=True)
    return (
        inside, line(*edge, width=0.8, smooth=True), line(*nail, width=0.5, smooth=True), *creases,
        _wrinkle(middle, low + 11, -3.0), _shade_of_finger(x + wide - 0.6, top + 8, low),
    )  # fmt: skip


def _shade_of_finger(right: float, top: float, low: float) -> Ink:
    """Strokes from its edge inward, on the side away from the light."""
    strokes = (
        Run((Point(right, down), Point(right - (4.5 if number % 2 else 2.8), down + 1.6)))
        for number, down in enumerate(steps(top, low - 3, 2.6))
    )
    return fine(strokes, 0.35)


def _wrinkle(middle: float, down: float, bent: float) -> Ink:
    """A short line across a finger."""
    places = _points((middle - 6, down), (middle, down + bent), (middle + 6, down))
    return line(*places, width=0.5, smooth=True)


def _fading(drawn: Ink) -> Ink:
    """A line that ends in shorter and shorter strokes."""
    return Ink(drawn.runs, {**drawn.attributes, "stroke-dasharray": "9 3 6 4 3 5"})
