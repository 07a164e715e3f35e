"""The plate of the choice: two canes on one foot of old wood, seen from near."""

from __future__ import annotations

import math
from collections.abc import Sequence

from pencilwood.drawing.ink.curves import trace
from pencilwood.drawing.ink.grain import Grain
from pencilwood.drawing.ink.points import XY, Point
from pencilwood.drawing.ink.shapes import Thing
from pencilwood.drawing.plates.board import (
    WIDTH,
    Board,
    Scene,
    mark,
    right_sign,
    words,
    wrong_sign,
)
from pencilwood.drawing.plates.canes import Strip, loose_bark
from pencilwood.drawing.plates.going import bars_across, going_cane, going_old
from pencilwood.drawing.plates.near_wood import draw_cane, draw_old, old_half_mm
from pencilwood.drawing.plates.pen import placed
from pencilwood.drawing.wood.canes import FACE_DEEP, cut_place_mm
from pencilwood.drawing.wood.stems import Stem
from pencilwood.vine.model import Piece

_TIMES = 2.3
_FOOT = Point(430.0, 782.0)
"""Where the old wood leaves the arm, on the board."""
_OLD_MM, _CUT_MM = 118.0, 50.0
"""How high the old wood stands before the cut, and after it."""
_LOW_FROM_MM, _NODE_MM = 21.0, 58
_KEPT = 2
_PEELING: Sequence[Strip] = (
    (0.5, 12, 32, 4), (-0.25, 10, 30, 3.5), (1, 16, 28, 4), (0.15, 26, 20, 3),
)  # fmt: skip
"""Bark that begins to come off wood of two years."""


def which_cane(board: Board) -> Scene:
    """The low cane becomes the spur; the high one goes, with the old wood below it."""
    low, high = _low(), _high()
    name, thick = "choice old", 15.0
    half_mm = old_half_mm(thick, Grain(name))
    upright = trace(Point(0, 4), _OLD_MM + 12, lambda at: 0.02 + 0.0012 * at)
    peeling = [part for strip in _PEELING for part in loose_bark(upright, half_mm, strip)]
    old = draw_old(upright, _CUT_MM, thick, name, _TIMES, over=peeling, rings=2)
    arm = draw_old(
        trace(Point(-250, 19), 500, lambda _: math.pi / 2), 480, 26, "choice arm", _TIMES
    )
    spur = Stem(low.name, _shortened(low), low.curve)
    fine_mm = cut_place_mm(low, _KEPT)
    thinned_mm = _CUT_MM + half_mm(_CUT_MM) * FACE_DEEP + 8
    going: list[Thing] = [
        going_cane(high, 0.0, _TIMES),
        going_old(upright, _CUT_MM, _OLD_MM, half_mm, _TIMES),
        going_cane(low, fine_mm, _TIMES),
    ]
    bars: list[Thing] = [
        bars_across(upright, thinned_mm, lambda at: half_mm(at) + 3, 2, _TIMES),
        bars_across(low.curve, fine_mm + 9, lambda at: low.half_mm(at) + 8, 3, _TIMES),
    ]
    wood = (*going, draw_cane(spur, _TIMES), old, arm, *bars)
    kept = _on_board(low.curve.beside(70, -low.half_mm(70)))
    gone = _on_board(high.curve.beside(130, high.half_mm(130)))
    things: list[Thing] = [
        placed(wood, *_FOOT, _TIMES),
        wrong_sign(Point(660, 120)),
        words(Point(660, 190), board.say("high"), anchor="middle"),
        mark(Point(616, 200), Point(gone.x + 6, gone.y), width=2.4),
        right_sign(Point(120, 430)),
        words(Point(120, 500), board.say("low"), anchor="middle"),
        mark(Point(190, 505), Point(kept.x - 6, kept.y), width=2.4),
        words(Point(WIDTH / 2, 940), board.say("arm"), anchor="middle"),
    ]
    return Scene(975, things)


def _on_board(at: XY) -> Point:
    return Point(_FOOT.x + at[0] * _TIMES, _FOOT.y + at[1] * _TIMES)


def _low() -> Stem:
    """It leaves the side of the old wood and bends up."""
    piece = Piece("a", 1, 5 * _NODE_MM + 20, 9, buds=5, internode_mm=_NODE_MM)
    curve = trace(
        Point(-3, -_LOW_FROM_MM), piece.length_mm,
        lambda at: -0.85 * math.exp(-at / 42) - 0.16 + 0.05 * math.sin(at / 60),
    )  # fmt: skip
    return Stem("choice low", piece, curve)


def _high() -> Stem:
    piece = Piece("b", 1, 3 * _NODE_MM + 24, 8, buds=3, internode_mm=_NODE_MM)
    curve = trace(
        Point(7, -_OLD_MM + 6), piece.length_mm, lambda at: 0.12 + 0.06 * math.sin(at / 70 + 1)
    )
    return Stem("choice high", piece, curve)


def _shortened(stem: Stem) -> Piece:
    """The spur that is left of it."""
    piece = stem.piece
    length = round(cut_place_mm(stem, _KEPT))
    return Piece("a", 1, length, piece.thickness_mm, buds=_KEPT, internode_mm=piece.internode_mm)
