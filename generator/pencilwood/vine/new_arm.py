"""The winter after for a vine of which one arm is being renewed.

A cane that was laid along the wire becomes an arm: each of its buds that pushes is a place with
a shoot. All that grows on this side shares what grew there in the summer that was measured; the
other arm grows place by place as `pencilwood.vine.growth` says.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from pencilwood.vine.arm_renewal import ArmFound, ArmWorked, Stage, Work
from pencilwood.vine.growth import (
    Summer,
    cane_of,
    chance_of,
    grown_arm,
    growth_by_place,
    numbered,
    place_of,
    shared,
    sprouts_of,
    trimmed,
    weight_of,
)
from pencilwood.vine.growth_figures import NEW_SPUR_GAINS, OLD_WOOD_GAINS
from pencilwood.vine.model import Arm, Growth, Piece, Position, Side, Vine
from pencilwood.vine.regrowth import Sprout, labelled
from pencilwood.vine.wood import WoodLeft, divide

STUMP_MM = 60
"""What is left of an arm that was sawn off."""
WOKEN_AT_MM = 20
"""Where on it, from the middle of the head, latent buds push."""


@dataclass(frozen=True)
class _NewPlace:
    """A place that had no wood before: a bud of a laid cane, or the stump of an arm."""

    at_mm: int
    sprouts: tuple[Sprout, ...]


def side_growth_mm(vine: Vine, side: Side) -> int:
    """Length of all living canes on one side: what grew there last summer."""
    return sum(mm for (of_side, _), mm in growth_by_place(vine).items() if of_side is side)


def next_found(worked: ArmWorked, summer: Summer, growth_mm: int) -> ArmFound:
    """The vine next winter; `growth_mm` is what all shoots of the renewed side grow together.

    `summer.growth_mm` is asked for the other arm.
    """
    found, vine = worked.found, worked.left.parts.vine
    arms = tuple(
        _renewed(worked, summer, growth_mm)
        if arm.side is found.side
        else grown_arm(worked.left, arm, summer, {**growth_by_place(vine), **summer.growth_mm})
        for arm in vine.arms
    )
    return replace(
        found, parts=divide(trimmed(replace(vine, arms=arms))), stage=_next_stage(worked)
    )


def _next_stage(worked: ArmWorked) -> Stage:
    if worked.laid is not None:
        return Stage.NEW
    return Stage.NONE if worked.work is Work.OFF else worked.found.stage


def _renewed(worked: ArmWorked, summer: Summer, growth_mm: int) -> Arm:
    """The renewed side: what stood grows on, and each new place carries a cane or more."""
    arm, left = _arm_after(worked), _without_laid(worked)
    standing = {place_of(one): sprouts_of(left, one, summer) for one in arm.positions}
    new = [*_along_laid(worked, summer), *_at_stump(worked, summer)]
    lengths = _shares([*standing.values(), *(place.sprouts for place in new)], growth_mm)
    share = dict(zip(standing, lengths, strict=False))
    thicker = _thicker(arm, worked)
    grown = grown_arm(left, thicker, summer, share)
    shoots = [
        Position("", arm.side, place.at_mm, _canes(place, mm, thicker.thickness_mm))
        for place, mm in zip(new, lengths[len(standing) :], strict=True)
    ]
    return replace(thicker, positions=numbered(arm.side, (*grown.positions, *shoots)))


def _arm_after(worked: ArmWorked) -> Arm:
    """The arm as the winter's work left it, with the places that were on it."""
    arm = worked.found.arm
    if worked.laid is not None:
        laid = worked.laid
        thickness_mm = laid.piece.thickness_mm if worked.work is Work.LAY else arm.thickness_mm
        stays = () if worked.work is Work.LAY else arm.positions
        end_mm = min(worked.end_mm + laid.piece.internode_mm // 2, worked.found.room_mm)
        return Arm(arm.side, end_mm, thickness_mm, stays)
    if worked.work is Work.OFF:
        return Arm(arm.side, min(STUMP_MM, arm.length_mm), arm.thickness_mm, ())
    return arm


def _thicker(arm: Arm, worked: ArmWorked) -> Arm:
    """A young arm gains in thickness as a spur does; an old one is as thick as it was measured."""
    if worked.work is Work.LAY:
        return replace(arm, thickness_mm=arm.thickness_mm + NEW_SPUR_GAINS.value)
    if worked.found.stage is Stage.NEW:
        return replace(arm, thickness_mm=arm.thickness_mm + OLD_WOOD_GAINS.value)
    return arm


def _without_laid(worked: ArmWorked) -> WoodLeft:
    """What stands: the laid cane is part of the arm now."""
    left = worked.left
    if worked.laid is None:
        return left
    gone = left.parts.index[worked.laid.name]
    states = tuple(0 if number == gone else state for number, state in enumerate(left.states))
    return replace(left, states=states)


def _along_laid(worked: ArmWorked, summer: Summer) -> Iterator[_NewPlace]:
    """A place for each bud of the laid cane that pushes."""
    if worked.laid is None:
        return
    cane = worked.laid
    for bud in range(1, worked.left.state(cane.name) + 1):
        chance = chance_of(summer, place_of(cane.position), cane.piece.letter, bud)
        if chance.random() * 100 < summer.budbreak_percent:
            at_mm = cane.position.at_mm + bud * cane.piece.internode_mm
            yield _NewPlace(at_mm, (Sprout(None, 0, weight_of(chance)),))


def _at_stump(worked: ArmWorked, summer: Summer) -> Iterator[_NewPlace]:
    """The place where sawing the old arm off wakes latent buds."""
    arm = worked.found.arm
    if not worked.is_sawn or arm.thickness_mm < summer.large_wound_mm:
        return
    chances = [
        chance_of(summer, (arm.side, WOKEN_AT_MM), "", -1 - turn)
        for turn in range(summer.latent_per_wound)
    ]
    if chances:
        sprouts = tuple(Sprout(None, 0, weight_of(chance)) for chance in chances)
        yield _NewPlace(WOKEN_AT_MM, sprouts)


def _shares(places: Sequence[Sequence[Sprout]], growth_mm: int) -> list[int]:
    """What each place has of the side's growth: as its shoots weigh among all shoots."""
    weights = [sum(sprout.weight for sprout in sprouts) for sprouts in places]
    all_weights = max(1, sum(weights))
    return [growth_mm * weight // all_weights for weight in weights]


def _canes(place: _NewPlace, growth_mm: int, arm_mm: int) -> tuple[Piece, ...]:
    canes = [
        cane_of(sprout, length_mm, arm_mm, Growth.UP)
        for sprout, length_mm in shared(place.sprouts, growth_mm)
    ]
    return labelled((), canes)
