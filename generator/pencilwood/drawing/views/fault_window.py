"""What a picture of a fault shows: as much around it as tells where on a vine it is."""

from __future__ import annotations

import math
from collections.abc import Sequence

from pencilwood.drawing.ink.points import XY
from pencilwood.drawing.ink.shapes import Ink, Run
from pencilwood.drawing.plate import Frame, frame_around_all

WIDER = 4 / 3
"""How wide every picture is for its height."""
_NEAR_MM, _USUAL_MM = 170.0, 420.0
"""Least width: around one cut, and around anything else, where neighbours are to be seen."""
_TOOL_ROOM_MM = 170.0
_AROUND_SPOT, _AROUND_WOOD_MM = 0.2, 30.0
_BRACKET_MM = 16.0
_RING_SHARE, _RING_MM, _LEAST_RING_MM = 0.55, 14.0, 26.0
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
    wide, high = (
        max(side * _RING_SHARE + _RING_MM, _LEAST_RING_MM)
        for side in (spot.right - spot.left, spot.bottom - spot.top)
    )
    most = (window.bottom - window.top) * 0.46
    points = tuple(_at(x, y, wide, min(high, most), number) for number in range(_RING_POINTS + 1))
    return Ink((Run(points),), {"class": "pw-fault-ring"})


def bracket(wood: Frame) -> Ink:
    """A bracket over all wood that is counted together; it would run through a laid cane."""
    over, under = wood.top - _BRACKET_MM, wood.top + _BRACKET_MM
    corners = ((wood.left, under), (wood.left, over), (wood.right, over), (wood.right, under))
    return Ink((Run(corners),), {"class": "pw-fault-ring"})


def above(frame: Frame) -> Frame:
    """The room above the wood where the sign of a tool stands."""
    return Frame(frame.left, frame.top - _TOOL_ROOM_MM, frame.right, frame.top)


def box_around(points: Sequence[XY]) -> Frame:
    """The smallest frame that holds some points."""
    xs, ys = zip(*points, strict=True)
    return Frame(min(xs), min(ys), max(xs), max(ys))


def _at(x: float, y: float, wide: float, high: float, number: int) -> XY:
    share = number / _RING_POINTS
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
