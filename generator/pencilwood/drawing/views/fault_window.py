"""What a picture of a fault shows: as much around it as tells where on a vine it is."""

from __future__ import annotations

import math
from collections.abc import Sequence

from pencilwood.drawing.ink.points import XY
from pencilwood.drawing.ink.shapes import Ink, Run
from pencilwood.drawing.ink.writer import element, number
from pencilwood.drawing.plate import Frame, frame_around_all
from pencilwood.drawing.signs import SIDE, strokes_of
from pencilwood.vine.passes import Tool

WIDER = 4 / 3
"""How wide every picture is for its height."""
_NEAR_MM, _USUAL_MM = 170.0, 420.0
"""Least width: around one cut, and around anything else, where neighbours are to be seen."""
_TOOL_ROOM_MM, _TOOL_SHARE = 170.0, 0.4
_SIGN_OF = {Tool.SHEARS: "hand-shears", Tool.LOPPERS: "loppers", Tool.SAW: "saw"}
_AROUND_SPOT, _AROUND_WOOD_MM = 0.2, 30.0
_BRACKET_MM, _BESIDE_MM = 16.0, 8.0
_RING_SHARE, _RING_MM, _LEAST_RING = 0.55, 14.0, 0.06
"""The least is a share of the window's width: a ring of a few pixels would hide what is in it."""
_RING_POINTS, _RING_TURN_RAD, _RING_WIDENS = 14, 6.9, 0.05
"""A ring as a hand draws it: a little more than once around, and a little wider at its end."""


def around_spots(spots: Sequence[Frame], *, near: bool = False) -> Frame:
    """A window on some spots."""
    box = frame_around_all(spots)
    aside = max(box.right - box.left, box.bottom - box.top) * _AROUND_SPOT
    return _of_one_shape(_grown(box, aside + _RING_MM), _NEAR_MM if near else _USUAL_MM)


def around_wood(wood: Frame) -> Frame:
    """A window on all the wood of a vine."""
    return _of_one_shape(_grown(wood, _AROUND_WOOD_MM), 0.0)


def ring(spot: Frame, window: Frame) -> Ink:
    """A ring around a spot, in ink, inside the window."""
    x, y = (spot.left + spot.right) / 2, (spot.top + spot.bottom) / 2
    least = (window.right - window.left) * _LEAST_RING
    wide, high = (
        max(side * _RING_SHARE + _RING_MM, least)
        for side in (spot.right - spot.left, spot.bottom - spot.top)
    )
    high = min(high, (window.bottom - window.top) * 0.46)
    x = _inside(x, wide, window.left, window.right)
    y = _inside(y, high, window.top, window.bottom)
    points = tuple(_at(x, y, wide, high, step) for step in range(_RING_POINTS + 1))
    return Ink((Run(points),), {"class": "pw-fault-ring"})


def bracket(wood: Frame) -> Ink:
    """A bracket over all wood that is counted together; it would run through a laid cane."""
    over, under = wood.top - _BRACKET_MM, wood.top + _BRACKET_MM
    corners = ((wood.left, under), (wood.left, over), (wood.right, over), (wood.right, under))
    return Ink((Run(corners),), {"class": "pw-fault-ring"})


def above(frame: Frame) -> Frame:
    """The room above the wood where the sign of a tool stands."""
    return Frame(frame.left, frame.top - _TOOL_ROOM_MM, frame.right, frame.top)


def tool_sign(tool: Tool, window: Frame) -> str:
    """The sign of a tool in the room above the wood."""
    side = (window.bottom - window.top) * _TOOL_SHARE
    move = f"translate({number(round(window.left))} {number(round(window.top))})"
    look = {"class": "pw-fault-tool", "transform": f"{move} scale({side / SIDE:.2f})"}
    return element("g", look, strokes_of(_SIGN_OF[tool]))


def box_around(points: Sequence[XY]) -> Frame:
    """The smallest frame that holds some points."""
    xs, ys = zip(*points, strict=True)
    return Frame(min(xs), min(ys), max(xs), max(ys))


def whole_wood(window: Frame, wood: Sequence[Frame]) -> Frame:
    """The window made wider where its left or right edge would cut wood in half."""
    cut = [
        one
        for one in wood
        if any(one.left < edge < one.right for edge in (window.left, window.right))
    ]
    if not cut:
        return window
    box = frame_around_all([window, *(_grown(one, _BESIDE_MM) for one in cut)])
    return _of_one_shape(Frame(box.left, window.top, box.right, window.bottom), 0.0)


def _inside(middle: float, half: float, least: float, most: float) -> float:
    """The middle of a ring, moved as far as it must be to lie inside."""
    room = half * (1 + _RING_WIDENS)
    return min(max(middle, least + room), most - room)


def _at(x: float, y: float, wide: float, high: float, step: int) -> XY:
    share = step / _RING_POINTS
    turn = -2.2 + _RING_TURN_RAD * share
    out = 1 + _RING_WIDENS * (2 * share - 1)
    return x + math.cos(turn) * wide * out, y + math.sin(turn) * high * out


def _grown(frame: Frame, room_mm: float) -> Frame:
    return Frame(
        frame.left - room_mm, frame.top - room_mm, frame.right + room_mm, frame.bottom + room_mm
    )


def _of_one_shape(frame: Frame, least_mm: float) -> Frame:
    """The same made wider or higher, and at least so wide; what it shows stays in its middle."""
    wide = max(frame.right - frame.left, (frame.bottom - frame.top) * WIDER, least_mm)
    high = wide / WIDER
    x, y = (frame.left + frame.right) / 2, (frame.top + frame.bottom) / 2
    return Frame(x - wide / 2, y - high / 2, x + wide / 2, y + high / 2)
