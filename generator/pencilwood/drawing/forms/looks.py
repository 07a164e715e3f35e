"""What the drawing of one form has of its own; each form has one of these."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from pencilwood.drawing.points import Point
from pencilwood.drawing.shapes import Group
from pencilwood.drawing.stems import Stem
from pencilwood.vine.model import Position, Vine


@dataclass(frozen=True)
class FormLooks:
    """Where the wood of a form stands on the drawing, and what no cut removes."""

    frame: Callable[[Vine, str], Group]
    """Trunk, head and arms; every id in it begins with the text given."""
    frame_targets: Callable[[Vine], Group]
    """The same once more, unseen, each part by itself, to be tapped by name."""
    foot: Callable[[Vine, Position], Point]
    """Where the wood of a position begins."""
    under_mm: Callable[[Vine, Position], float]
    """How far below its foot the underside of the wood is that it stands on."""
    stems: Callable[[Position, Point, float], Sequence[Stem]]
    """The pieces of one position: its foot, and how far below it the underside is."""
    corners: Callable[[Vine], Sequence[Point]]
    """The outermost points of what no cut removes."""
