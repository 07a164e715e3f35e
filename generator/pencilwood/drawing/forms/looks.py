"""What the drawing of one form has of its own; each form has one of these."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field

from pencilwood.drawing.ink.points import Point
from pencilwood.drawing.ink.shapes import Group, Ink
from pencilwood.drawing.wood.stems import Stem
from pencilwood.vine.model import Position, Vine

Stems = Callable[[Vine, Position, Point, float], Sequence[Stem]]
"""The pieces of one position: its foot, and how far below it the underside is."""


@dataclass(frozen=True)
class Caption:
    """A line of words on a drawing, in the middle of its place."""

    foot: Point
    """Where the first line of its view stands."""
    key: str
    row: int = 0
    """So many lines below it, each as high as the letters make it."""


@dataclass(frozen=True)
class FormLooks:
    """Where the wood of a form stands on the drawing, and what no cut removes."""

    frame: Callable[[Vine, str], Group]
    """Trunk, head and arms; every id in it begins with the text given."""
    frame_wood: Callable[[Vine], Ink]
    """The same in one colour, without its bark."""
    frame_targets: Callable[[Vine], Group]
    """The same once more, unseen, each part by itself, to be tapped by name."""
    foot: Callable[[Vine, Position], Point]
    """Where the wood of a position begins."""
    under_mm: Callable[[Vine, Position], float]
    """How far below its foot the underside of the wood is that it stands on."""
    stems: Stems
    corners: Callable[[Vine], Sequence[Point]]
    """The outermost points of what no cut removes."""
    is_behind: Callable[[Position, Vine], bool] = field(default=lambda _position, _vine: False)
    """Whether a position stands on the far side, so that its wood is drawn paler, behind."""
    is_before: Callable[[Position, Vine], bool] = field(default=lambda _position, _vine: False)
    """Whether a position stands on the near side, so that its wood hides trunk and head."""
    name_foot: Callable[[Vine, Position], Point] | None = None
    """Where the name of a position stands; None for a row below or above the arms."""
    lead: Callable[[Point, Point], tuple[Ink, ...]] = field(default=lambda _foot, _name: ())
    """A line from such a name to where the wood of its position begins, from both places."""
    captions: Callable[[Vine], Sequence[Caption]] = field(default=lambda _vine: ())
    """Words on the drawing that tell its views apart."""
    ground_mm: Callable[[Vine], tuple[float, float] | None] = field(default=lambda _vine: None)
    """From where to where the ground is drawn; None for all the width of the drawing."""
    scale_foot: Callable[[Vine], Point] | None = None
    """Where the last line of the scale begins, where a form keeps room for it; else it is put
    beside the trunk or below the ground."""
    view: str = ""
    """What this view is called where a form has more than one."""
    second: FormLooks | None = None
    """The same wood once more from another side, in the same millimetres beside the first."""
