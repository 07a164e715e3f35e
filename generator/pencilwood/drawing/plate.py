"""The geometry of a whole vine: every stem, and the frame around them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

from pencilwood.drawing.forms import LOOKS_OF
from pencilwood.drawing.forms.looks import FormLooks
from pencilwood.drawing.points import Point
from pencilwood.drawing.stems import Stem
from pencilwood.vine.model import Position, Vine
from pencilwood.vine.wood import Part, Parts

LEFT_MARGIN_MM = 110.0
RIGHT_MARGIN_MM = 350.0
_TOP_MARGIN_MM = 60.0
_BELOW_GROUND_MM = 290.0


@dataclass(frozen=True)
class Frame:
    """The part of the plane that a drawing shows."""

    left: float
    top: float
    right: float
    bottom: float


@dataclass(frozen=True)
class Plate:
    """A divided vine and where all of it runs."""

    parts: Parts

    @property
    def vine(self) -> Vine:
        """The vine that is drawn."""
        return self.parts.vine

    @cached_property
    def stems(self) -> Mapping[str, Stem]:
        """Every stem by position and letter."""
        return {
            stem.name: stem
            for arm in self.vine.arms
            for position in arm.positions
            for stem in self.looks.stems(position, self.foot(position), self.under_mm(position))
        }

    def stem(self, part: Part) -> Stem:
        """The stem that a part belongs to."""
        return self.stems[part.position.name + part.piece.letter]

    @property
    def looks(self) -> FormLooks:
        """What the drawing has of its form."""
        return LOOKS_OF[self.vine.form.name]

    def foot(self, position: Position) -> Point:
        """Where the wood of a position begins."""
        return self.looks.foot(self.vine, position)

    def under_mm(self, position: Position) -> float:
        """How far below its foot the underside of the wood is that it stands on."""
        return self.looks.under_mm(self.vine, position)

    @cached_property
    def frame(self) -> Frame:
        """Room for all wood, the wires, the ground and the words."""
        edges = [
            (point, stem.half_mm(0) + 16)
            for stem in self.stems.values()
            for point in stem.curve.points
        ]
        tips = [corner.x for corner in self.looks.corners(self.vine)]
        trunk = float(self.vine.trunk_thickness_mm * 2)
        trellis = self.vine.trellis
        left = min([-trunk, *tips, *(point.x - room for point, room in edges)])
        right = max([trunk, *tips, *(point.x + room for point, room in edges)])
        top = max(
            [trellis.trimming_mm, trellis.top_wire_mm, *trellis.catch_wires_mm]
            + [room - point.y for point, room in edges]
        )
        low = max([0.0, *(point.y + room for point, room in edges)])
        return Frame(
            left - LEFT_MARGIN_MM,
            -top - _TOP_MARGIN_MM,
            right + RIGHT_MARGIN_MM,
            low + _BELOW_GROUND_MM,
        )
