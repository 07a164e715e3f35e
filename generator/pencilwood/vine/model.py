"""A measured vine, as a trainer reads it off with a tape before anything is cut.

All lengths are whole millimetres. Heights are above the ground unless a name says otherwise.
Nothing here changes: a cut makes a new `pencilwood.vine.wood.WoodLeft`.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from enum import StrEnum

from pencilwood.vine.bands import Limits


class Side(StrEnum):
    """Which arm, as seen by the person who stands before the vine."""

    LEFT = "left"
    RIGHT = "right"
    ROUND = "round"
    """All around the head, for a vine without arms; measured clockwise from a mark to the row."""


LETTER_OF_SIDE = {Side.LEFT: "L", Side.RIGHT: "R", Side.ROUND: "H"}
"""The first letter of the names of its positions."""
ROUND_WORDS = Side.ROUND.value
"""Texts about places around a head are filed under this where they differ from those for arms."""


def own_words(side: Side) -> str:
    """What texts about a place on this side are filed under; empty for arms."""
    return ROUND_WORDS if side is Side.ROUND else ""


class Condition(StrEnum):
    """What the eye and the thumb say of a piece of wood."""

    SOUND = "sound"
    SPINDLY = "spindly"
    DISEASED = "diseased"
    DEAD = "dead"
    INJURED = "injured"


class Pass(StrEnum):
    """The passes of a pruning, in the trade's order; a form may do without some of them."""

    ROUGH = "rough"
    THINNING_OUT = "thinning-out"
    FINE = "fine"
    TIE = "tie"
    """Tying the canes that are left along the wire."""


PASSES = tuple(Pass)
CUTTING_PASSES = (Pass.ROUGH, Pass.THINNING_OUT, Pass.FINE)
"""Those in which wood comes off."""


class Lean(StrEnum):
    """Where a piece points.

    Upright, 45 degrees to the arm's tip or the head, hanging, or lying along the wire.
    """

    UP = "up"
    OUT = "out"
    IN = "in"
    DOWN = "down"
    ALONG = "along"


_RISE_THOUSANDTHS = {Lean.UP: 1000, Lean.OUT: 707, Lean.IN: 707, Lean.DOWN: -1000, Lean.ALONG: 0}


def rise_mm(lean: Lean, along_mm: int) -> int:
    """How much higher one stands after going `along_mm` along a piece that leans so."""
    return along_mm * _RISE_THOUSANDTHS[lean] // 1000


@dataclass(frozen=True, slots=True)
class Piece:
    """One piece of wood at a spur position.

    A cane is last summer's shoot: `age_years` is 1, `buds` counts its clear buds (the basal
    bud at its foot is not counted) and `internode_mm` is their usual distance.
    Older wood has no buds of its own that count: `buds` and `internode_mm` are 0.
    """

    letter: str
    """Its letter in the notebook, unique at its position: `a`, `m`."""
    age_years: int
    length_mm: int
    thickness_mm: int
    grows_from: str | None = None
    """Letter of the piece it grows from; None when it grows straight from the arm."""
    at_mm: int = 0
    """How far along that piece it grows; 0 when it grows straight from the arm."""
    condition: Condition = Condition.SOUND
    lean: Lean = Lean.UP
    buds: int = 0
    internode_mm: int = 0

    @property
    def is_cane(self) -> bool:
        """Whether this is one-year wood."""
        return self.age_years == 1

    @property
    def is_alive(self) -> bool:
        """Dead wood carries no bud that will push."""
        return self.condition is not Condition.DEAD


@dataclass(frozen=True)
class Position:
    """A place along an arm where wood grows, numbered from the head outward: L1, L2, R1."""

    name: str
    side: Side
    at_mm: int
    """Distance from the middle of the head along the arm."""
    pieces: tuple[Piece, ...]


@dataclass(frozen=True)
class Arm:
    """One arm (cordon) and its spur positions, nearest to the head first."""

    side: Side
    length_mm: int
    """From the middle of the head to the tip."""
    thickness_mm: int
    positions: tuple[Position, ...]


@dataclass(frozen=True)
class Trellis:
    """Heights of the wires, and of the cut that trims the shoots in summer; 0 for what is not."""

    fruiting_wire_mm: int
    catch_wires_mm: tuple[int, ...]
    top_wire_mm: int
    """The fruiting wire once more where there is no other wire."""
    trimming_mm: int
    """Above the arms, or below them where shoots hang."""

    @property
    def has_no_wire(self) -> bool:
        """Whether the vine stands by itself or at a stake."""
        return self.top_wire_mm == 0

    @property
    def is_trimmed(self) -> bool:
        """Whether its shoots are cut off at a height in summer."""
        return self.trimming_mm > 0

    @property
    def has_one_wire(self) -> bool:
        """Whether the wire that carries the arms is the only one."""
        return self.top_wire_mm == self.fruiting_wire_mm


class Line(StrEnum):
    """What positions are measured along, and so which spurs are neighbours."""

    ARMS = "arms"
    """From the tip of the left arm through the head to the tip of the right one."""
    RING = "ring"
    """Around the head with a tape, so that the last position is the first one's neighbour."""


class Growth(StrEnum):
    """Which way the summer's shoots are trained."""

    UP = "up"
    DOWN = "down"


@dataclass(frozen=True)
class Tally:
    """Something that a form counts over the whole vine beside buds and wounds."""

    name: str
    counts: Callable[[Position, Piece, int, Limits], bool]
    """Whether a piece with so much left of it is one: buds of a cane, 1 for older wood."""
    wanted: int = 0
    """How many of them the form is to have."""


@dataclass(frozen=True)
class Form:
    """How a vine is trained. What differs between forms hangs on this value.

    Each form has a module of its own in `vine.forms`; its rules are in `rules.of_forms`, its
    drawing in `drawing.forms`, the reading of its measures in `cases.forms`. None of them knows
    another form's.
    """

    name: str
    sides: tuple[Side, ...]
    """The arms such a vine has, from left to right."""
    line: Line = Line.ARMS
    growth: Growth = Growth.UP
    tallies: tuple[Tally, ...] = ()
    passes: tuple[Pass, ...] = CUTTING_PASSES
    tied: str = ""
    """Name of the tally whose pieces are tied along the wire, each on a side of its own."""
    words: str = ""
    """What its own texts are filed under where they differ from those for arms and spurs."""

    def __hash__(self) -> int:
        # Rules are looked up by form for each piece of each pruning.
        return hash(self.name)


@dataclass(frozen=True)
class Vine:
    """One measured vine."""

    form: Form
    trunk_thickness_mm: int
    cordon_height_mm: int
    """Height of the arms above the ground."""
    trellis: Trellis
    arms: tuple[Arm, ...]
    """From left to right, as `form.sides`."""

    @property
    def own_words(self) -> str:
        """What texts about its places are filed under that differ from those for arms."""
        return self.form.words or own_words(self.arms[0].side)

    def arm_on(self, side: Side) -> Arm:
        """The arm on a side on which its form has one."""
        return next(arm for arm in self.arms if arm.side is side)

    @property
    def line_length_mm(self) -> int:
        """All arms together, or once around the head: what buds per metre are counted on."""
        return sum(arm.length_mm for arm in self.arms)

    @property
    def is_ring(self) -> bool:
        """Whether its positions stand around the head."""
        return self.form.line is Line.RING

    def positions_along_line(self) -> tuple[Position, ...]:
        """Every position from the left tip through the head to the right tip."""
        line: list[Position] = []
        for arm in self.arms:
            in_order = sorted(arm.positions, key=lambda position: position.at_mm)
            line.extend(reversed(in_order) if arm.side is Side.LEFT else in_order)
        return tuple(line)
