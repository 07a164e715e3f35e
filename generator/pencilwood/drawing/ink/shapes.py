"""What a scene is made of: groups, outlines, lines, circles and words."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from pencilwood.drawing.ink.points import XY, Point

Attributes = Mapping[str, str | float]


@dataclass(frozen=True)
class Run:
    """One pen stroke: a start, then either corners or points that a smooth line rounds."""

    points: tuple[XY, ...]
    closed: bool = False
    smooth: bool = True
    open_foot: bool = False
    """Of a closed run: no pen line from its last point back to its first, where wood goes on."""


@dataclass(frozen=True)
class Ink:
    """One or more pen strokes with one look."""

    runs: tuple[Run, ...]
    attributes: Attributes = field(default_factory=dict)


@dataclass(frozen=True)
class Dot:
    """A circle or, with a flattening below 1, an ellipse turned by `turn_deg`."""

    middle: Point
    radius_mm: float
    attributes: Attributes = field(default_factory=dict)
    flattening: float = 1.0
    turn_deg: float = 0.0


@dataclass(frozen=True)
class Box:
    """An upright rectangle."""

    corner: Point
    width_mm: float
    height_mm: float
    attributes: Attributes = field(default_factory=dict)


@dataclass(frozen=True)
class Words:
    """A line of text; it stands on `foot`."""

    foot: Point
    text: str
    attributes: Attributes = field(default_factory=dict)


@dataclass(frozen=True)
class Group:
    """Things that belong together."""

    things: tuple[Thing, ...]
    attributes: Attributes = field(default_factory=dict)


Thing = Ink | Dot | Box | Words | Group
