"""What a quiz holds once it has been read: its questions, not yet worked out."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import Literal

from pencilwood.cases.case import Text
from pencilwood.places import Place

Shown = Literal["before", "answer"]
"""Whether a vine is shown uncut or as the trainer's answer leaves it."""


class Find(StrEnum):
    """What a learner may be asked to find on a drawing."""

    TRUNK = "trunk"
    HEAD = "head"
    ARM = "arm"
    OLD_WOOD = "old wood"
    LAST_YEARS_SPUR = "last year's spur"
    CANE = "cane"
    DISEASED = "diseased wood"
    DEAD = "dead wood"
    INJURED = "injured wood"
    SPINDLY = "spindly cane"
    BULL = "bull cane"
    HANGING = "wood below the arm"
    HEAD_CANE = "cane on the head"
    UPRIGHT_CANE = "upright cane"
    INWARD_CANE = "inward cane"
    LAST_YEARS_CANE = "last year's fruiting cane"
    LOWEST_CANE = "lowest cane"


class Count(StrEnum):
    """What a learner may be asked to count or to work out from a vine."""

    BUDS_OF_CANE = "buds of a cane"
    BUDS_LEFT = "buds left"
    BUDS_PER_METRE = "buds per metre"
    LEAF_ROOM = "leaf room"
    SPACING = "spacing"
    TARGET = "target"


class Deed(StrEnum):
    """What to do in a scene of work."""

    GO_ON = "go on"
    PUT_RIGHT = "put it right"
    STOP = "stop and tell"


@dataclass(frozen=True)
class Said:
    """Something to choose or to put in order, and why it is right or wrong."""

    say: Text
    why: Text
    place: Place


@dataclass(frozen=True)
class Seen:
    """Which drawing stands above a question."""

    vine: str
    """Slug of the case."""
    place: Place
    shown: Shown = "before"
    at: str | None = None
    """A position or a piece to look at; None shows the whole vine."""


@dataclass(frozen=True)
class Common:
    """What every question has."""

    slug: str
    place: Place
    must_know: bool = False
    rules: tuple[str, ...] = ()
    chapter: str | None = None


@dataclass(frozen=True)
class Prune:
    """Prune the vine of a case; the slug is the case's."""

    common: Common


@dataclass(frozen=True)
class Choose:
    """A question in the trainer's own words."""

    common: Common
    ask: Text
    right: Said
    wrong: tuple[Said, ...]
    seen: Seen | None = None


@dataclass(frozen=True)
class WhichCane:
    """Which cane of a position stays; everything is worked out from the vine."""

    common: Common
    seen: Seen


@dataclass(frozen=True)
class NamePart:
    """Tap a part on the drawing."""

    common: Common
    seen: Seen
    find: Find


@dataclass(frozen=True)
class CountIt:
    """Count, or work out, something of a vine."""

    common: Common
    seen: Seen
    count: Count


@dataclass(frozen=True)
class PutInOrder:
    """Put steps in their order; they stand here in the right one."""

    common: Common
    ask: Text
    steps: tuple[Said, ...]


@dataclass(frozen=True)
class SafeOrStop:
    """A scene of work: go on, put it right, or stop and tell."""

    common: Common
    ask: Text
    right: Deed
    whys: Mapping[Deed, Text]


@dataclass(frozen=True)
class WrongSum:
    """A sum done with one usual slip: other figures, or another sum."""

    given: Mapping[str, str]
    """Figures that differ from the right ones."""
    work_out: str | None
    why: Text
    place: Place


@dataclass(frozen=True)
class BlockSum:
    """A sum of the block."""

    common: Common
    ask: Text
    work_out: str
    """Name of the sum, as `pencilwood block` knows it."""
    given: Mapping[str, str]
    wrong: tuple[WrongSum, ...]


QuizQuestion = Prune | Choose | WhichCane | NamePart | CountIt | PutInOrder | SafeOrStop | BlockSum


@dataclass(frozen=True)
class Quiz:
    """`quizzes/<quiz>.yml`: its questions in their order, and what it takes to pass."""

    slug: str
    title: Text
    intro: Text
    questions: tuple[QuizQuestion, ...]
    passes_needed: int
    """Right answers needed among the questions that are not must-know."""
    place: Place
    tries: int = 1
    """How often it may be tried before the trainer steps in."""
    order: int | None = None
    """Its place among the quizzes; those without one come last."""

    @property
    def scored(self) -> tuple[QuizQuestion, ...]:
        """The questions that make up the score."""
        return tuple(one for one in self.questions if not one.common.must_know)

    @property
    def must_know(self) -> tuple[QuizQuestion, ...]:
        """The questions that must all be right, apart from the score."""
        return tuple(one for one in self.questions if one.common.must_know)

    @property
    def vines(self) -> tuple[str, ...]:
        """Slugs of the cases to prune, in order."""
        return tuple(one.common.slug for one in self.questions if isinstance(one, Prune))
