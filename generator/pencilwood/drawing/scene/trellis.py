"""What surrounds the vine: posts, wires with their heights, the ground and the scale bar."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from pencilwood.drawing.forms.looks import Caption
from pencilwood.drawing.ink.grain import Grain
from pencilwood.drawing.ink.looks import INK, PENCIL
from pencilwood.drawing.ink.points import Point
from pencilwood.drawing.ink.shapes import Attributes, Box, Group, Ink, Run, Thing, Words
from pencilwood.drawing.plate import (
    LEFT_MARGIN_MM,
    RIGHT_MARGIN_MM,
    SCALE_BAR_MM,
    SCALE_LETTERS,
    Frame,
    Plate,
)
from pencilwood.drawing.wood.stems import THICKER
from pencilwood.units import UnitSystem, format_length
from pencilwood.words import say

LABEL_MM = 44.0
_POST_MM = 46.0
_WIRE: Attributes = {"class": "pw-trellis-wire", "fill": "none", "stroke-width": 1.7}
_WIRE_HALF_MM = 1.4
"""A wire is a thin double line."""
_TRIMMING: Attributes = {
    "class": "pw-trimming",
    "fill": "none",
    "stroke-width": 2.6,
    "stroke-dasharray": "4 16",
}
_HAND_MM = 100
_WIRE_LABEL_MM = 38.0
WIRE_WORDS = ("pw-wire-name", "pw-wire-height")
"""The classes of the words beside a wire."""
_WORDS_OFF_MM = 44.0
"""How far beyond the wood the words about the wires begin."""
_LINE = 1.25
_CAPTION_LINE = 1.3
_ABOVE_GROUND_MM = 60.0


def draw_trellis(
    plate: Plate, language: str, units: UnitSystem, across: Frame | None = None, only: str = ""
) -> Group:
    """Posts, wires and the summer trimming height, all behind the wood.

    The wires run as far as the drawing of the vine does, or as `across` says. Where there is
    `only` one view, no words tell it from another.
    """
    frame = across or plate.frame
    things: list[Thing] = []
    if not plate.vine.trellis.has_no_wire:
        things.extend(_post(_post_x(frame), plate.vine.trellis.top_wire_mm + 50.0))
    for height_mm, name in _wires(plate):
        things.append(_wire(frame, height_mm, name))
    for height_mm, name in _wires(plate):
        things.extend(_wire_words(plate, height_mm, name, language, units))
    views = () if only else plate.views
    things.extend(_caption(one, language) for view in views for one in _captions(view))
    return Group(tuple(things), {"class": "pw-trellis", "stroke": PENCIL})


def _captions(view: Plate) -> Sequence[Caption]:
    return view.looks.captions(view.vine)


def _caption(caption: Caption, language: str) -> Words:
    look: dict[str, str | float] = {
        "class": "pw-words pw-caption",
        "text-anchor": "middle",
        "font-size": LABEL_MM,
        "fill": INK,
        "stroke": "none",
    }
    if caption.row:
        # By its own letters: on a small screen they are larger, and its lines farther apart.
        look["dy"] = f"{caption.row * _CAPTION_LINE:.1f}em"
    return Words(caption.foot, say(language, f"drawing.{caption.key}"), look)


def _post_x(frame: Frame) -> float:
    return frame.left + LEFT_MARGIN_MM * 0.36


def _post(x: float, top_mm: float) -> Iterator[Thing]:
    """A hint of a post: a pale wash, its two edges, and a few lines of grain in its shade."""
    wash: Attributes = {
        "class": "pw-post",
        "fill": PENCIL,
        "fill-opacity": ".1",
        "stroke": "none",
    }
    yield Box(Point(x - _POST_MM / 2, -top_mm), _POST_MM, top_mm, wash)
    left, right = x - _POST_MM / 2, x + _POST_MM / 2
    edges = Run((Point(left, 0), Point(left, -top_mm), Point(right, -top_mm)), smooth=False)
    yield Ink((edges,), {"fill": "none", "stroke-width": 1.4})
    grain = Grain("post")
    lines = [Run((Point(right, -top_mm), Point(right, 0)))]
    for number in range(5):
        at = x + _POST_MM * (0.1 + 0.07 * number)
        start = grain.within(0.05, 0.7, "start", number) * top_mm
        end = min(start + grain.within(150, 500, "long", number), top_mm - 6)
        lines.append(Run((Point(at, -start), Point(at, -end))))
    yield Ink(tuple(lines), {"fill": "none", "stroke-width": 2.0, "stroke-opacity": ".6"})


def _wires(plate: Plate) -> list[tuple[int, str]]:
    """Heights and names, lowest first; a lone wire is named once."""
    trellis = plate.vine.trellis
    trimming = [(trellis.trimming_mm, "trimming")] if trellis.is_trimmed else []
    if trellis.has_no_wire:
        return trimming
    top = [] if trellis.has_one_wire else [(trellis.top_wire_mm, "top-wire")]
    return [
        (trellis.fruiting_wire_mm, "fruiting-wire"),
        *((height, "catch-wire") for height in trellis.catch_wires_mm),
        *top,
        *trimming,
    ]


def _wire(frame: Frame, height_mm: int, name: str) -> Ink:
    left, right = frame.left, frame.right - RIGHT_MARGIN_MM + _WORDS_OFF_MM
    if name == "trimming":
        return Ink((Run((Point(left, -height_mm), Point(right, -height_mm))),), _TRIMMING)
    runs = tuple(
        Run((Point(left, -height_mm + off), Point(right, -height_mm + off)))
        for off in (-_WIRE_HALF_MM, _WIRE_HALF_MM)
    )
    return Ink(runs, _WIRE)


def _wire_words(
    plate: Plate, height_mm: int, name: str, language: str, units: UnitSystem
) -> Iterator[Words]:
    look: Attributes = {"font-size": _WIRE_LABEL_MM, "fill": PENCIL, "stroke": "none"}
    x = plate.frame.right - RIGHT_MARGIN_MM + _WORDS_OFF_MM + 12
    above, under = Point(x, -height_mm - 5), Point(x, -height_mm + _WIRE_LABEL_MM * 0.95)
    name_class, height_class = WIRE_WORDS
    yield Words(above, say(language, f"drawing.{name}"), {"class": name_class, **look})
    height = format_length(height_mm, units, language)
    yield Words(under, height, {"class": height_class, **look})


def draw_scale(plate: Plate, language: str, units: UnitSystem) -> Group:
    """A hand's width to scale, and how much too thick the wood is drawn."""
    size, left, low = _scale_place(plate)
    # Letters that fill the room they have do not grow on a small screen.
    name = "pw-scale" if size == LABEL_MM else "pw-scale pw-scale-fitted"
    y = low - 2 * size * _LINE
    bar: Attributes = {"class": "pw-scale-bar", "fill": INK, "stroke": "none"}
    right = left + _HAND_MM
    ticks = Run(
        (Point(left, y - 20), Point(left, y), Point(right, y), Point(right, y - 20)), smooth=False
    )
    frame_line: Attributes = {
        "class": "pw-scale-line",
        "fill": "none",
        "stroke-width": 3.0,
        "stroke": INK,
    }
    look: Attributes = {"class": "pw-words", "font-size": size, "fill": INK, "stroke": "none"}
    length = format_length(_HAND_MM, units, language)
    lines = (
        (right + SCALE_BAR_MM - _HAND_MM, y, say(language, "drawing.hand-width", length=length)),
        (left, y + size * _LINE, say(language, "drawing.hand-width-status")),
        (left, low, say(language, "drawing.thicker", times=THICKER)),
    )
    things: list[Thing] = [
        Box(Point(left, y - 12), _HAND_MM / 2, 12, bar),
        Ink((ticks,), frame_line),
        *(Words(Point(x, foot), text, look) for x, foot, text in lines),
    ]
    return Group(tuple(things), {"class": name})


def _scale_place(plate: Plate) -> tuple[float, float, float]:
    """Height of its letters, its left end, and where the last of its lines stands."""
    size, frame = plate.scale_size_mm, plate.frame
    if size is not None and plate.looks.scale_foot is not None:
        foot = plate.looks.scale_foot(plate.vine)
        return size, foot.x, foot.y
    if size is not None and plate.beside_trunk is not None:
        return size, plate.beside_trunk[0] + 10, -_ABOVE_GROUND_MM
    left = frame.left + 50
    size = min(LABEL_MM, (frame.right - left - SCALE_BAR_MM) / SCALE_LETTERS)
    return size, left, frame.bottom - 14 - size * _LINE
