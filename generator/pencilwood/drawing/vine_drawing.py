"""The drawing of a vine as one inline SVG."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import KW_ONLY, dataclass, field

from pencilwood.drawing.ink.looks import PAPER, stylesheet
from pencilwood.drawing.ink.points import Point
from pencilwood.drawing.ink.shapes import Attributes, Box, Group, Thing
from pencilwood.drawing.ink.svg_root import svg_root
from pencilwood.drawing.ink.writer import element, escape, number, write
from pencilwood.drawing.plate import Frame, Window
from pencilwood.drawing.scene.trellis import draw_scale, draw_trellis
from pencilwood.drawing.scene.wood_shown import WoodShown
from pencilwood.drawing.scene.wood_text import clipped_to, lightened, plate_of, wood_text
from pencilwood.kept import kept_text, name_of
from pencilwood.units import UnitSystem


@dataclass(frozen=True)
class Paper:
    """What carries a drawing: its words, its edges, and how a page finds it."""

    prefix: str
    """Every id in the drawing begins with it."""
    language: str
    _: KW_ONLY
    title: str
    description: str
    units: UnitSystem = "metric"
    window: Window | None = None
    """The part of the vine that is shown; all of it if there is none."""
    over: Group | None = None
    """What is drawn last."""
    css_class: str = ""
    """Classes of the root."""
    data: Mapping[str, str] = field(default_factory=dict)
    """The `data-` attributes of the root."""
    alone: bool = False
    """Whether the drawing brings its style sheet along, for a file."""


def draw_vine(shown: WoodShown, paper: Paper) -> str:
    """A vine as SVG text."""
    facts = [name_of(shown.parts.vine), shown.facts, paper, stylesheet() if paper.alone else ""]
    return kept_text("drawing", facts, lambda: _drawn(shown, paper))


def _drawn(shown: WoodShown, paper: Paper) -> str:
    plate = plate_of(shown.parts, shown.laid)
    window = paper.window or Window(plate.frame)
    behind, over = wood_text(shown, window, paper.prefix)
    around: list[Thing] = [
        draw_trellis(plate, paper.language, paper.units, window.across, window.view)
    ]
    scale: list[Thing] = [draw_scale(plate, paper.language, paper.units)]
    edge = clipped_to(window)
    inside = [
        _words(paper),
        _style() if paper.alone else "",
        write(_blank(window.frame)),
        *map(write, lightened(around, shown, edge)),
        behind,
        *map(write, [] if window.view else lightened(scale, shown, edge)),
        over,
        write(paper.over) if paper.over else "",
    ]
    return element("svg", _root(window.frame, paper), "".join(inside))


def _root(frame: Frame, paper: Paper) -> Attributes:
    box = " ".join(number(value) for value in frame.box)
    css_class = f"pw-vine {paper.css_class}".rstrip()
    root = svg_root("vine", paper.prefix, paper.language, box, css_class, paper.data)
    # A page gives its names their size on the screen: in hundredths of the picture's width.
    return {**root, "font-size": (frame.right - frame.left) / 100}


def _words(paper: Paper) -> str:
    return element("title", {"id": f"{paper.prefix}-title"}, escape(paper.title)) + element(
        "desc", {"id": f"{paper.prefix}-desc"}, escape(paper.description)
    )


def _style() -> str:
    return element("style", {}, escape(stylesheet()))


def _blank(frame: Frame) -> Box:
    left, top, width, height = frame.box
    look: Attributes = {"class": "pw-paper", "fill": PAPER}
    return Box(Point(left, top), width, height, look)
