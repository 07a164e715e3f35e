"""An arm made new: what grows follows from the vine, the work done and the stated shares."""

from __future__ import annotations

import random
from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from growing import GROWTH_MM, LIMITS, SEEDS, SUMMER, at_place, worn_out
from pencilwood.vine.arm_renewal import (
    ArmFound,
    Stage,
    Work,
    can_be_renewed,
    found_first,
    worked,
    works,
    young_cane,
)
from pencilwood.vine.forms import FORMS
from pencilwood.vine.growth import growth_by_place, next_winter
from pencilwood.vine.growth_figures import NEW_SPUR_GAINS, OLD_WOOD_GAINS
from pencilwood.vine.measures import buds_kept
from pencilwood.vine.model import Condition, Side
from pencilwood.vine.new_arm import STUMP_MM, WOKEN_AT_MM, next_found, side_growth_mm
from vines import random_vine


def random_found(seed: int) -> ArmFound:
    """A random vine to which one to three winters of random work were done."""
    rng = random.Random(seed)
    while True:
        grown = random_vine(rng, positions=rng.randint(1, 6))
        if all(one.length_mm >= 150 for one in grown.arms):
            break
    found = found_first(grown, rng.choice([one.side for one in grown.arms]))
    for winter in range(rng.randint(0, 2)):
        work = rng.choice(works(found, LIMITS))
        summer = replace(SUMMER, seed=str(winter))
        found = next_found(worked(found, work, LIMITS), summer, GROWTH_MM)
    return found


def canes_mm(found: ArmFound) -> int:
    """What grew on the renewed side."""
    return sum(
        piece.length_mm for one in found.arm.positions for piece in one.pieces if piece.is_cane
    )


@given(SEEDS)
def test_a_side_grows_no_more_than_it_is_said_to(seed: int) -> None:
    found = random_found(seed)
    for work in works(found, LIMITS):
        done = worked(found, work, LIMITS)
        after = next_found(done, SUMMER, GROWTH_MM)
        # Each cane is rounded to whole internodes, one at the least and one above its last bud.
        canes = [p for one in after.arm.positions for p in one.pieces if p.is_cane]
        assert canes_mm(after) <= GROWTH_MM + sum(2 * one.internode_mm for one in canes)


@given(SEEDS)
def test_every_fact_follows_from_the_wood_left(seed: int) -> None:
    found = random_found(seed)
    for work in works(found, LIMITS):
        done = worked(found, work, LIMITS)
        after = next_found(done, SUMMER, GROWTH_MM)
        new, before = after.arm, found.arm
        assert new.length_mm <= found.room_mm
        assert all(a.at_mm < b.at_mm for a, b in pairwise(new.positions))
        assert [one.name for one in new.positions] == [
            f"{'L' if found.side is Side.LEFT else 'R'}{n}"
            for n in range(1, len(new.positions) + 1)
        ]
        had = {one.at_mm: one for one in before.positions}
        for position in new.positions:
            for piece in position.pieces:
                assert piece.thickness_mm <= new.thickness_mm or not piece.is_cane
                if position.at_mm not in had:
                    # What stands where nothing stood is one summer old and grows from the arm.
                    assert piece.is_cane
                    assert piece.grows_from is None
                elif not piece.is_cane:
                    # Every piece that is left is a year older, so some piece was younger.
                    ages = {one.age_years + 1 for one in had[position.at_mm].pieces}
                    assert piece.age_years in ages


@given(SEEDS)
def test_the_other_arm_grows_as_ever(seed: int) -> None:
    found = random_found(seed)
    done = worked(found, works(found, LIMITS)[0], LIMITS)
    if not any(done.left.states):
        return
    after = at_place(next_found(done, SUMMER, GROWTH_MM).parts.vine)
    as_ever = at_place(next_winter(done.left, SUMMER))
    for place, position in as_ever.items():
        if place[0] is not found.side:
            assert after[place].pieces == position.pieces


@given(SEEDS)
def test_the_same_work_always_grows_the_same_wood(seed: int) -> None:
    one, other = random_found(seed), random_found(seed)
    for work in works(one, LIMITS):
        first = next_found(worked(one, work, LIMITS), SUMMER, GROWTH_MM)
        again = next_found(worked(other, work, LIMITS), SUMMER, GROWTH_MM)
        assert first == again


def test_a_laid_cane_becomes_an_arm_with_a_shoot_at_each_bud() -> None:
    found = found_first(worn_out(), Side.LEFT)
    done = worked(found, Work.LAY, LIMITS)
    after = next_found(done, SUMMER, GROWTH_MM)
    laid = [one.at_mm for one in after.arm.positions if one.at_mm != WOKEN_AT_MM]
    # All buds push here: the usual summer of these tests says so.
    assert laid == [40 + 50 * bud for bud in range(1, 8)]
    assert after.stage is Stage.NEW
    assert after.arm.thickness_mm == 6 + NEW_SPUR_GAINS.value
    assert done.buds_on_side == 7
    thicker = next_found(worked(after, Work.SPACE, LIMITS), SUMMER, GROWTH_MM)
    assert thicker.arm.thickness_mm == after.arm.thickness_mm + OLD_WOOD_GAINS.value


def test_a_sawn_arm_wakes_as_many_buds_as_the_profile_says() -> None:
    found = found_first(worn_out(), Side.LEFT)
    for latent in (0, 1, 3):
        summer = replace(SUMMER, latent_per_wound=latent)
        after = next_found(worked(found, Work.OFF, LIMITS), summer, GROWTH_MM)
        assert after.stage is Stage.NONE
        assert after.arm.length_mm == STUMP_MM
        assert sum(len(one.pieces) for one in after.arm.positions) == latent
        assert (young_cane(after, LIMITS) is None) == (latent == 0)


def test_fewer_shoots_grow_longer() -> None:
    """The share of a side's growth: pruned to fewer spurs, each shoot is longer."""
    laid = worked(found_first(worn_out(), Side.LEFT), Work.LAY, LIMITS)
    young = next_found(laid, SUMMER, GROWTH_MM)
    longest = {}
    for work in (Work.SPACE, Work.EVERY):
        after = next_found(worked(young, work, LIMITS), SUMMER, GROWTH_MM)
        lengths = [p.length_mm for one in after.arm.positions for p in one.pieces if p.is_cane]
        longest[work] = sum(lengths) / len(lengths)
    assert longest[Work.SPACE] > longest[Work.EVERY]


@pytest.mark.parametrize("condition", list(Condition))
def test_only_a_sound_cane_may_become_an_arm(condition: Condition) -> None:
    worn = worn_out()
    (head, *rest) = worn.arms[0].positions
    changed = replace(head, pieces=tuple(replace(p, condition=condition) for p in head.pieces))
    vine_now = replace(worn, arms=(replace(worn.arms[0], positions=(changed, *rest)), worn.arms[1]))
    found = found_first(vine_now, Side.LEFT)
    is_sound = condition is Condition.SOUND
    assert (Work.LAY in works(found, LIMITS)) == is_sound
    assert (young_cane(found, LIMITS) is not None) == is_sound


def test_the_side_grows_what_was_measured_on_it() -> None:
    worn = worn_out()
    both = sum(growth_by_place(worn).values())
    assert side_growth_mm(worn, Side.LEFT) + side_growth_mm(worn, Side.RIGHT) == both


def test_upright_cordons_alone_can_be_renewed() -> None:
    names = {form.name for form in FORMS if can_be_renewed(replace(worn_out(), form=form))}
    assert names == {"two-arm cordon", "one-arm cordon"}


@given(SEEDS, st.booleans())
def test_buds_left_on_the_side_are_counted_with_the_laid_ones(seed: int, late: bool) -> None:
    found = random_found(seed)
    for work in works(found, LIMITS):
        done = worked(found, work, LIMITS)
        laid = 0 if done.laid is None else done.left.state(done.laid.name)
        assert buds_kept(done.left, found.side) == done.buds_on_side
        assert done.buds_on_side >= laid
        assert done.end_mm <= found.room_mm
