"""Renewing an arm over the winters: what can be done with it, and what is then left.

An old arm with bare stretches is replaced by a young cane that is laid along the wire. The
cane grows on the head, beside the old arm, or from a bud that sawing the old arm off woke.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from enum import StrEnum
from itertools import pairwise

from pencilwood.vine.bands import Limits
from pencilwood.vine.measures import buds_kept, is_large_cut, large_wounds, outside_head_mm
from pencilwood.vine.model import Arm, Condition, Growth, Line, Position, Side, Vine
from pencilwood.vine.spur_choice import Stays, cane_that_stays, states_with_spur
from pencilwood.vine.wood import Part, Parts, WoodLeft, divide


class Stage(StrEnum):
    """What stands on the side that is renewed."""

    OLD = "old"
    """The old arm."""
    NONE = "none"
    """A stump of it at the head, with what grows there."""
    NEW = "new"
    """An arm that was a cane, with shoots or spurs along it."""


class Work(StrEnum):
    """What is done with the arm in one winter."""

    KEEP = "keep"
    """Prune the spurs of the old arm; the young cane comes off."""
    SAVE = "save"
    """Prune the spurs of what stands; the young cane is cut to a spur, to grow stronger ones."""
    LAY = "lay"
    """Saw the old arm off, if it stands, and lay the young cane along the wire."""
    OFF = "off"
    """Saw the old arm off; nothing stays on this side."""
    SPACE = "space"
    """Leave spurs along the new arm, as far apart as they should stand."""
    EVERY = "every"
    """Make a spur of every shoot on the new arm."""
    LENGTHEN = "lengthen"
    """Spurs as far apart as they should stand, and the outermost cane laid along the wire."""


_WORKS: Mapping[Stage, tuple[Work, ...]] = {
    Stage.OLD: (Work.KEEP, Work.SAVE, Work.LAY, Work.OFF),
    Stage.NONE: (Work.SAVE, Work.LAY, Work.OFF),
    Stage.NEW: (Work.SPACE, Work.LENGTHEN, Work.EVERY),
}


@dataclass(frozen=True)
class ArmFound:
    """A vine in winter, of which one arm is being renewed."""

    parts: Parts
    side: Side
    stage: Stage
    room_mm: int
    """From the middle of the head to where the old arm ended: how far the new one may reach."""

    @property
    def arm(self) -> Arm:
        """What stands on the side that is renewed."""
        return self.parts.vine.arm_on(self.side)

    @property
    def is_short(self) -> bool:
        """Whether the arm ends before its room does."""
        return self.arm.length_mm < self.room_mm


@dataclass(frozen=True)
class ArmWorked:
    """What a winter's work left of such a vine."""

    found: ArmFound
    work: Work
    left: WoodLeft
    laid: Part | None = None
    """The cane that lies along the wire, its buds those that are left."""

    @property
    def is_sawn(self) -> bool:
        """Whether the old arm was sawn off."""
        return self.found.stage is Stage.OLD and self.work in (Work.LAY, Work.OFF)

    @property
    def buds_on_side(self) -> int:
        """Counted buds left where the arm is renewed, those of the laid cane too."""
        return buds_kept(self.left, self.found.side)

    @property
    def end_mm(self) -> int:
        """How far from the middle of the head the laid cane's last bud stands; 0 without one."""
        if self.laid is None:
            return 0
        buds = self.left.state(self.laid.name)
        return self.laid.position.at_mm + buds * self.laid.piece.internode_mm

    def bearing_mm(self) -> Iterator[int]:
        """Where buds stand that may bear, in mm from the middle of the head."""
        for position in self.found.arm.positions:
            if self.left.is_spur(position.name):
                yield position.at_mm
        if self.laid is not None:
            yield from range(
                self.laid.position.at_mm, self.end_mm + 1, self.laid.piece.internode_mm
            )

    def bare_mm(self, head_zone_mm: int) -> int:
        """The longest stretch of the arm's room without a bud, the head zone excluded."""
        places = [0, *sorted(self.bearing_mm()), self.found.room_mm]
        outside = [outside_head_mm(at_mm, head_zone_mm) for at_mm in places]
        return max(b - a for a, b in pairwise(outside))

    def large_wounds(self, large_wound_mm: int) -> int:
        """Large wounds of this winter; cuts on an arm that was sawn off count as that one cut."""
        if not self.is_sawn:
            return large_wounds(self.left, large_wound_mm)
        beside = sum(
            is_large_cut(self.left, number, large_wound_mm)
            for number, part in enumerate(self.left.parts.parts)
            if part.position.side is not self.found.side
        )
        return beside + (self.found.arm.thickness_mm >= large_wound_mm)


def can_be_renewed(vine: Vine) -> bool:
    """Whether arms of such a vine lie along a wire with their shoots above it."""
    return vine.form.line is Line.ARMS and vine.form.growth is Growth.UP and not vine.form.tied


def found_first(vine: Vine, side: Side) -> ArmFound:
    """The vine in its first winter."""
    return ArmFound(divide(vine), side, Stage.OLD, vine.arm_on(side).length_mm)


def young_cane(found: ArmFound, limits: Limits) -> Part | None:
    """The cane on the head that may become an arm: the longest sound one; None without any."""
    zone_mm = limits["head zone"]
    canes = [
        part
        for part in found.parts.parts
        if part.position.side is found.side
        and part.position.at_mm < zone_mm
        and part.is_cane
        and part.piece.condition is Condition.SOUND
    ]
    return max(canes, key=lambda part: part.piece.length_mm, default=None)


def works(found: ArmFound, limits: Limits) -> tuple[Work, ...]:
    """What can be done this winter."""
    young = young_cane(found, limits)
    possible = {
        Work.SAVE: young is not None,
        Work.LAY: young is not None and _buds_laid(found, young) > 0,
        Work.LENGTHEN: found.is_short and _outermost(found, limits) is not None,
    }
    return tuple(work for work in _WORKS[found.stage] if possible.get(work, True))


def worked(found: ArmFound, work: Work, limits: Limits) -> ArmWorked:
    """The vine after this winter's work; the other arm keeps the near cane at each place."""
    parts = found.parts
    laid = _laid(found, work, limits)
    states = dict.fromkeys(range(len(parts.parts)), 0)
    for position in parts.positions:
        if position.side is not found.side:
            states |= states_with_spur(parts, position.name, Stays.NEAR, limits)
    for position in _with_spurs(found, work, laid, limits):
        states |= states_with_spur(parts, position.name, Stays.NEAR, limits)
    young = young_cane(found, limits) if work is Work.SAVE else laid
    if young is not None:
        most = limits["buds on a spur at most"] if laid is None else _buds_laid(found, young)
        number = parts.index[young.name]
        states[number] = min(most, young.most)
        states |= dict.fromkeys(parts.below(number), 1)
    left = WoodLeft(parts, tuple(states[number] for number in range(len(parts.parts))))
    return ArmWorked(found, work, left, laid)


def _laid(found: ArmFound, work: Work, limits: Limits) -> Part | None:
    if work is Work.LAY:
        return young_cane(found, limits)
    return _outermost(found, limits) if work is Work.LENGTHEN else None


def _outermost(found: ArmFound, limits: Limits) -> Part | None:
    """The cane nearest to the arm's tip that may be laid on from there."""
    for position in sorted(found.arm.positions, key=lambda one: -one.at_mm):
        cane = cane_that_stays(found.parts, position.name, Stays.NEAR, limits)
        if cane is not None:
            return cane if _buds_laid(found, cane) > 0 else None
    return None


def _buds_laid(found: ArmFound, cane: Part) -> int:
    """Buds of a laid cane that stand within the arm's room."""
    return min(cane.most, (found.room_mm - cane.position.at_mm) // cane.piece.internode_mm)


def _with_spurs(
    found: ArmFound, work: Work, laid: Part | None, limits: Limits
) -> Iterator[Position]:
    """The positions that keep a spur on the side that is renewed, beside the young cane."""
    if work in (Work.LAY, Work.OFF):
        return
    zone_mm = limits["head zone"]
    apart_mm = 0 if work in (Work.KEEP, Work.SAVE, Work.EVERY) else limits["spur spacing at least"]
    last_mm = -apart_mm
    for position in sorted(found.arm.positions, key=lambda one: one.at_mm):
        if position.at_mm < zone_mm and work is not Work.EVERY:
            continue
        if laid is not None and position.at_mm > laid.position.at_mm - apart_mm:
            continue
        if cane_that_stays(found.parts, position.name, Stays.NEAR, limits) is None:
            continue
        if position.at_mm - last_mm >= apart_mm:
            last_mm = position.at_mm
            yield position
