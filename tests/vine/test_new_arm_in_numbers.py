"""An arm made new, winter by winter in numbers that can be worked out on paper."""

from __future__ import annotations

from dataclasses import replace

import pytest

from growing import GROWTH_MM, LIMITS, SUMMER, worn_out
from pencilwood.vine.arm_renewal import Stage, Work, found_first, worked, works, young_cane
from pencilwood.vine.forms.cordon import TWO_ARM_CORDON
from pencilwood.vine.growth_figures import OLD_WOOD_GAINS
from pencilwood.vine.model import Side
from pencilwood.vine.new_arm import WOKEN_AT_MM, next_found
from vines import arm, cane, old, vine


@pytest.mark.parametrize(
    ("work", "bare_mm", "wounds", "why"),
    [
        (Work.KEEP, 460, 0, "between the spurs at 14 and 60 cm"),
        (Work.SAVE, 460, 0, "a spur on the head fills no arm"),
        (Work.LAY, 270, 1, "from the last laid bud, at 39 cm, to the old arm's end"),
        (Work.OFF, 560, 1, "the whole arm but the head zone"),
    ],
)
def test_the_first_winter_in_numbers(work: Work, bare_mm: int, wounds: int, why: str) -> None:
    done = worked(found_first(worn_out(), Side.LEFT), work, LIMITS)
    assert done.bare_mm(LIMITS["head zone"]) == bare_mm, why
    assert done.large_wounds(LIMITS["large wound from"]) == wounds, why


@pytest.mark.parametrize(
    ("work", "bearing_mm", "buds", "bare_mm", "why"),
    [
        (Work.SPACE, (140, 240, 340), 6, 320, "8 cm apart at least, none on the head"),
        (
            Work.LENGTHEN,
            (140, 240, 390, 390, 454, 518, 582, 646),
            8,
            150,
            "a spur at 39 cm is laid to the old arm's end; none stands less than 8 cm before it",
        ),
        (Work.EVERY, (20, 90, 140, 190, 240, 290, 340, 390), 16, 270, "those on the head too"),
    ],
)
def test_the_second_winter_in_numbers(
    work: Work, bearing_mm: tuple[int, ...], buds: int, bare_mm: int, why: str
) -> None:
    """A cane of seven buds was laid from 4 cm, 5 cm from bud to bud; the room ends at 66 cm."""
    laid = worked(found_first(worn_out(), Side.LEFT), Work.LAY, LIMITS)
    young = next_found(laid, SUMMER, GROWTH_MM)
    assert works(young, LIMITS) == (Work.SPACE, Work.LENGTHEN, Work.EVERY)
    done = worked(young, work, LIMITS)
    assert tuple(done.bearing_mm()) == bearing_mm, why
    assert done.buds_on_side == buds, why
    assert done.bare_mm(LIMITS["head zone"]) == bare_mm, why


def test_a_new_arm_ends_half_an_internode_beyond_its_last_bud_or_where_its_room_does() -> None:
    laid = worked(found_first(worn_out(), Side.LEFT), Work.LAY, LIMITS)
    young = next_found(laid, SUMMER, GROWTH_MM)
    assert young.arm.length_mm == 390 + 50 // 2
    longer = next_found(worked(young, Work.LENGTHEN, LIMITS), SUMMER, GROWTH_MM)
    # The next bud would stand at 71 cm.
    assert longer.arm.length_mm == longer.room_mm == 660
    assert longer.arm.thickness_mm == young.arm.thickness_mm + OLD_WOOD_GAINS.value
    assert longer.stage is Stage.NEW
    assert Work.LENGTHEN not in works(longer, LIMITS)


@pytest.mark.parametrize(("at_mm", "on_head"), [(99, True), (100, False), (101, False)])
def test_the_head_ends_where_the_rule_for_wood_on_it_says(at_mm: int, on_head: bool) -> None:
    """The rule head-wood speaks of less than the head zone, 10 cm here; so does the work."""
    assert LIMITS["head zone"] == 100
    worn = worn_out()
    left = arm(Side.LEFT, 660, (at_mm, [cane("a", 7)]), (600, [cane("a", 7)]))
    found = found_first(replace(worn, arms=(left, worn.arms[1])), Side.LEFT)
    assert (young_cane(found, LIMITS) is not None) == on_head
    kept = worked(found, Work.KEEP, LIMITS)
    assert list(kept.bearing_mm()) == ([600] if on_head else [at_mm, 600])


@pytest.mark.parametrize(
    ("arm_mm", "wounds", "why"),
    [
        (LIMITS["large wound from"], 2, "the arm and the old wood on the other side"),
        (LIMITS["large wound from"] - 1, 1, "the arm is thin"),
    ],
)
def test_wounds_on_the_other_side_count_beside_the_sawn_arm(
    arm_mm: int, wounds: int, why: str
) -> None:
    two = (
        old("m", 50),
        cane("a", 9, on="m", at_mm=15),
        old("n", 60, LIMITS["large wound from"]),
        cane("b", 9, on="n", at_mm=40),
    )
    left = arm(Side.LEFT, 660, (40, [cane("a", 7)]), thickness_mm=arm_mm)
    found = found_first(vine(TWO_ARM_CORDON, left, arm(Side.RIGHT, 640, (130, two))), Side.LEFT)
    done = worked(found, Work.LAY, LIMITS)
    assert done.large_wounds(LIMITS["large wound from"]) == wounds, why


def test_each_shoot_that_a_wound_wakes_has_a_chance_of_its_own() -> None:
    """As each bud has: shoots from one place are not all alike."""
    done = worked(found_first(worn_out(), Side.LEFT), Work.OFF, LIMITS)
    after = next_found(done, replace(SUMMER, latent_per_wound=4), 3200)
    (woken,) = after.arm.positions
    assert woken.at_mm == WOKEN_AT_MM
    assert len({piece.length_mm for piece in woken.pieces}) > 1
    assert all(piece.grows_from is None and piece.at_mm == 0 for piece in woken.pieces)


def test_cuts_on_an_arm_that_is_sawn_off_are_no_wounds_of_their_own() -> None:
    thick = (old("m", 50, LIMITS["large wound from"] + 5), cane("a", 9, on="m", at_mm=15))
    worn = worn_out()
    left = arm(Side.LEFT, 660, (40, [cane("a", 7)]), (140, thick), (600, thick))
    found = found_first(replace(worn, arms=(left, worn.arms[1])), Side.LEFT)
    assert worked(found, Work.LAY, LIMITS).large_wounds(LIMITS["large wound from"]) == 1
