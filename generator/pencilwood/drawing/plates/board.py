"""The board on which a plate is drawn: words, pointing lines, signs, and wood at any size.

A plate is 800 units wide, so that its words can be read on a phone. Wood keeps its own scale of
1 unit to the millimetre inside a group that is enlarged or reduced as a whole.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from pencilwood.drawing.ink.looks import FACE, INK, PAPER, PENCIL
from pencilwood.drawing.ink.points import Point
from pencilwood.drawing.ink.shapes import Attributes, Dot, Group, Ink, Run, Thing, Words
from pencilwood.drawing.ink.writer import number
from pencilwood.drawing.scene.ground import grass_and_earth
from pencilwood.units import UnitSystem, format_length
from pencilwood.words import say

WIDTH = 800.0
SIZE = 34.0
"""Height of the words: 15 px on a phone."""
_LINE = 1.15


@dataclass(frozen=True)
class Board:
    """Who draws a plate asks it for words in one language and for ids that nobody else has."""

    name: str
    prefix: str
    language: str
    units: UnitSystem

    def say(self, key: str) -> str:
        """A label of the plate."""
        return say(self.language, f"plates.{self.name}.{key}")

    def length(self, mm: int) -> str:
        """A length as the pages show it."""
        return format_length(mm, self.units, self.language)


@dataclass(frozen=True)
class Remark(Group):
    """Words and signs on a plate, and the lines to them: a small picture does without."""


@dataclass(frozen=True)
class Scene:
    """What stands on a plate."""

    height: float
    things: Sequence[Thing]
    rows: bool = False
    """Whether it is made of rows, which the page sets side by side where it has the room."""


def words(
    at: Point, text: str, *, anchor: str = "start", size: float = SIZE, bold: bool = False
) -> Remark:
    """Words on one line or, with `|` in them, on several."""
    look: dict[str, str | float] = {
        "class": "pw-plate-words",
        "font-size": size,
        "fill": INK,
        "stroke": PAPER,
        "stroke-width": 6.0,
        "paint-order": "stroke",
        "text-anchor": anchor,
    }
    if bold:
        look["font-weight"] = "bold"
    lines = text.split("|")
    return Remark(
        tuple(
            Words(Point(at.x, at.y + row * size * _LINE), line.strip(), look)
            for row, line in enumerate(lines)
        )
    )


def line(*points: Point, width: float = 3.0, dashed: bool = False, smooth: bool = False) -> Ink:
    """A plain pen line."""
    look: dict[str, str | float] = {
        "class": "pw-plate-line",
        "fill": "none",
        "stroke": INK,
        "stroke-width": width,
    }
    if dashed:
        look["stroke-dasharray"] = "10 9"
    return Ink((Run(points, smooth=smooth),), look)


def mark(*points: Point, width: float = 2.4) -> Remark:
    """A line to words, or one of a measure: without its words it would say nothing."""
    return Remark((line(*points, width=width),))


def shape(*points: Point, fill: str = PAPER, width: float = 3.0, smooth: bool = False) -> Ink:
    """A filled outline."""
    names = {PAPER: "pw-plate-paper", FACE: "pw-plate-face", INK: "pw-plate-ink"}
    look: Attributes = {
        "class": names.get(fill, "pw-plate-shape"),
        "fill": fill,
        "stroke": INK,
        "stroke-width": width,
    }
    return Ink((Run(points, closed=True, smooth=smooth),), look)


def box(left: float, top: float, width: float, height: float, fill: str = PAPER) -> Ink:
    """A rectangle with a pen line around it."""
    return shape(
        Point(left, top),
        Point(left + width, top),
        Point(left + width, top + height),
        Point(left, top + height),
        fill=fill,
    )


def pointer(text_at: Point, text: str, to: Point, *, anchor: str = "start") -> Remark:
    """A label, and a line from it to what it names."""
    lines = text.count("|") + 1
    middle_y = text_at.y - SIZE * 0.32 + (lines - 1) * SIZE * _LINE / 2
    aside = {"start": -1.0, "end": 1.0}.get(anchor, 0.0)
    begin = Point(text_at.x + 14 * aside, middle_y)
    if (to.x - text_at.x) * aside <= 0:
        # What it names lies under or over the words; the line leaves them there.
        below = to.y > text_at.y
        foot_y = text_at.y + (lines - 1) * SIZE * _LINE + 14
        begin = Point(text_at.x - 26 * aside, foot_y if below else text_at.y - SIZE - 2)
    # A rim of paper, so that it is seen on black and covers little.
    dot = Dot(to, 5.0, {"class": "pw-plate-dot", "fill": INK, "stroke": PAPER, "stroke-width": 3.0})
    return Remark((line(begin, to, width=2.4), dot, words(text_at, text, anchor=anchor)))


def right_sign(at: Point, size: float = 26.0) -> Remark:
    """A tick in a circle."""
    tick = (
        Point(at.x - size * 0.45, at.y),
        Point(at.x - size * 0.1, at.y + size * 0.4),
        Point(at.x + size * 0.5, at.y - size * 0.4),
    )
    return Remark((_disc(at, size), line(*tick, width=6.0)))


def wrong_sign(at: Point, size: float = 26.0) -> Remark:
    """A cross in a square, so that even the outline tells it from the tick."""
    half = size * 0.42
    cross = (
        line(Point(at.x - half, at.y - half), Point(at.x + half, at.y + half), width=6.0),
        line(Point(at.x - half, at.y + half), Point(at.x + half, at.y - half), width=6.0),
    )
    return Remark((box(at.x - size * 0.85, at.y - size * 0.85, size * 1.7, size * 1.7), *cross))


def number_sign(at: Point, text: str, size: float = 24.0) -> Remark:
    """A figure in a circle."""
    middle = Point(at.x, at.y + size * 0.45)
    return Remark((_disc(at, size), words(middle, text, anchor="middle", size=size * 1.3)))


def _disc(at: Point, radius: float) -> Dot:
    return Dot(
        at,
        radius,
        {"class": "pw-plate-paper", "fill": PAPER, "stroke": INK, "stroke-width": 3.0},
    )


def enlarged(
    things: Sequence[Thing], x: float, y: float, times: float, css_class: str = ""
) -> Group:
    """Things drawn in millimetres, moved to a place of the board and enlarged."""
    move = f"translate({number(x)} {number(y)}) scale({times:g})"
    look: dict[str, str | float] = {"transform": move}
    if css_class:
        look["class"] = css_class
    return Group(tuple(things), look)


def ground(ground_y: float, *, soft: bool) -> list[Thing]:
    """Soft soil with tufts, or a firm hatched floor."""
    look: Attributes = {
        "class": "pw-ground", "fill": "none", "stroke": PENCIL, "stroke-width": 4.0,
    }  # fmt: skip
    y = ground_y + 4
    line = Ink((Run((Point(10, y), Point(790, y))),), look)
    if soft:
        return [line, Ink(tuple(grass_and_earth(10, 790, y, 40)), {**look, "stroke-width": 2.4})]
    hatch = [Run((Point(x + 18, y + 2), Point(x, y + 20))) for x in range(20, 800, 30)]
    return [line, Ink(tuple(hatch), look)]
