"""The geometry of a whole vine: every stem, and the frame around them."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import astuple, dataclass
from functools import cached_property

from pencilwood.drawing.forms import LOOKS_OF
from pencilwood.drawing.forms.looks import FormLooks
from pencilwood.drawing.ink.points import XY, Point
from pencilwood.drawing.wood.stems import Stem
from pencilwood.vine.model import Growth, Position, Vine
from pencilwood.vine.wood import Part, Parts

LEFT_MARGIN_MM = 110.0
RIGHT_MARGIN_MM = 350.0
_TOP_MARGIN_MM = 60.0
_BELOW_GROUND_MM = 60.0
_SCALE_BELOW_MM = 230.0
"""Room below the ground for the scale and its words, where there is none beside the trunk."""
_SCALE_HIGH_MM = 280.0
"""How far up they reach beside the trunk."""
_LOWEST_ARM_MM = 650
SCALE_BAR_MM = 130.0
SCALE_LETTERS = 17.5
"""Width of its longest line of words beside the bar, compared with the height of a letter."""
_SMALLEST_SCALE_MM, _LARGEST_SCALE_MM = 30.0, 58.0
_SCALE_UNDER_MM = 36.0
"""Height of its letters where a form keeps room for it."""
_TIP_ROOM_MM = 24.0
_NAMES_MM = 130.0
"""Room for names above the arms, where shoots hang."""


@dataclass(frozen=True)
class Frame:
    """The part of the plane that a drawing shows."""

    left: float
    top: float
    right: float
    bottom: float

    @property
    def box(self) -> tuple[float, float, float, float]:
        """Its left and upper edge, its width and its height, as a viewBox has them."""
        return self.left, self.top, self.right - self.left, self.bottom - self.top


@dataclass(frozen=True)
class Window:
    """What a drawing shows instead of a whole vine."""

    frame: Frame
    across: Frame | None = None
    """How far the wires run, where that is not as far as the vine."""
    clipped: bool = False
    """Whether what lies outside is left out."""
    view: str = ""
    """The one view that is drawn of a form with several, with nothing that tells views apart."""


def frame_around_all(frames: Iterable[Frame]) -> Frame:
    """The smallest that holds all of these; there is one at least."""
    lefts, tops, rights, bottoms = zip(*(astuple(frame) for frame in frames), strict=True)
    return Frame(min(lefts), min(tops), max(rights), max(bottoms))


Heights = tuple[float, float]
"""Upper and lower edge of a stretch of the drawing; y grows downward."""


def heights_around(vine: Vine, y: float, ahead_mm: float, behind_mm: float) -> Heights:
    """So far from a height the way the vine's shoots are trained, and so far the other way."""
    if vine.form.growth is Growth.DOWN:
        return y - behind_mm, y + ahead_mm
    return y - ahead_mm, y + behind_mm


@dataclass(frozen=True)
class Plate:
    """A divided vine and where all of it runs, in one view."""

    parts: Parts
    view: FormLooks | None = None
    """The view that is drawn; None for the form's first."""
    reaching: tuple[Point, ...] = ()
    """Tips of canes that lie along the wire; they may reach beyond the wood that stands."""

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
            for stem in self._stems_of(position)
        }

    def _stems_of(self, position: Position) -> Sequence[Stem]:
        foot, under_mm = self.foot(position), self.under_mm(position)
        return self.looks.stems(self.vine, position, foot, under_mm)

    def stem(self, part: Part) -> Stem:
        """The stem that a part belongs to."""
        return self.stems[part.position.name + part.piece.letter]

    @property
    def looks(self) -> FormLooks:
        """What the drawing has of its form."""
        return self.view or LOOKS_OF[self.vine.form.name]

    @cached_property
    def second(self) -> Plate | None:
        """The other view of the same wood, where the form has one."""
        return None if self.looks.second is None else Plate(self.parts, self.looks.second)

    @property
    def views(self) -> tuple[Plate, ...]:
        """This view and the other one, if there is one."""
        return (self,) if self.second is None else (self, self.second)

    def foot(self, position: Position) -> Point:
        """Where the wood of a position begins."""
        return self.looks.foot(self.vine, position)

    def under_mm(self, position: Position) -> float:
        """How far below its foot the underside of the wood is that it stands on."""
        return self.looks.under_mm(self.vine, position)

    def around_arm(self, ahead_mm: float, behind_mm: float, y: float | None = None) -> Heights:
        """So far from the arm (or another height) the way shoots are trained, so far the other."""
        level = -float(self.vine.cordon_height_mm) if y is None else y
        return heights_around(self.vine, level, ahead_mm, behind_mm)

    @cached_property
    def beside_trunk(self) -> tuple[float, float] | None:
        """Left and right end of the larger empty place beside the trunk, just above the ground.

        None where wood hangs down into it, or where the arms are low.
        """
        lowest = (stem.curve.corners[1][1] for stem in self.stems.values())
        is_crowded = any(y > -_SCALE_HIGH_MM for y in lowest)
        if self.second is not None or is_crowded or self.vine.cordon_height_mm < _LOWEST_ARM_MM:
            return None
        left, right = self._sides
        trunk = float(self.vine.trunk_thickness_mm * 2)
        return max(
            ((trunk, right), (left + LEFT_MARGIN_MM, -trunk)), key=lambda ends: ends[1] - ends[0]
        )

    @property
    def scale_size_mm(self) -> float | None:
        """Height of the scale's letters where it has a room; None where it goes below all."""
        if self.looks.scale_foot is not None:
            return _SCALE_UNDER_MM
        if self.beside_trunk is None:
            return None
        left, right = self.beside_trunk
        size = min((right - left - SCALE_BAR_MM) / SCALE_LETTERS, _LARGEST_SCALE_MM)
        return size if size >= _SMALLEST_SCALE_MM else None

    @cached_property
    def _sides(self) -> tuple[float, float]:
        """Left and right edge of the drawing."""
        corners = [corner for view in self.views for corner in view.looks.corners(self.vine)]
        tips = [corner.x for corner in corners]
        trunk = float(self.vine.trunk_thickness_mm * 2)
        left = min([-trunk, *tips, *(x - room for (x, _), room in self._edges)])
        right = max([trunk, *tips, *(x + room for (x, _), room in self._edges)])
        beside = RIGHT_MARGIN_MM if self.has_words_beside else LEFT_MARGIN_MM
        return left - LEFT_MARGIN_MM, right + beside

    @cached_property
    def _edges(self) -> Sequence[tuple[XY, float]]:
        """Two corners around every piece, and the room that its bends need around them."""
        return [
            (corner, room)
            for view in self.views
            for stem in view.stems.values()
            for room in (stem.half_mm(0) + 16,)
            for corner in stem.curve.corners
        ] + [(tip, _TIP_ROOM_MM) for tip in self.reaching]

    @cached_property
    def frame(self) -> Frame:
        """Room for all wood, the wires, the ground and the words."""
        return self.frame_around(self._edges)

    def frame_around(self, edges: Sequence[tuple[XY, float]]) -> Frame:
        """The same, only as high and as low as these points need with the room around each."""
        corners = [corner for view in self.views for corner in view.looks.corners(self.vine)]
        trellis = self.vine.trellis
        top = max(
            [trellis.trimming_mm, trellis.top_wire_mm, *trellis.catch_wires_mm, self._named_mm]
            + [room - y for (_, y), room in edges]
        )
        low = max([0.0, *(corner.y for corner in corners), *(y + room for (_, y), room in edges)])
        left, right = self._sides
        scale = 0.0 if self.scale_size_mm else _SCALE_BELOW_MM
        return Frame(left, -top - _TOP_MARGIN_MM, right, low + _BELOW_GROUND_MM + scale)

    @property
    def has_words_beside(self) -> bool:
        """Whether wires or a height are named to the right of the wood."""
        return self.vine.trellis.is_trimmed or not self.vine.trellis.has_no_wire

    @property
    def _named_mm(self) -> float:
        """The height up to which names of positions stand; 0 where they stand below the arms."""
        if self.vine.form.growth is Growth.UP:
            return 0.0
        return self.vine.cordon_height_mm + _NAMES_MM
