"""Measures by hand on small vines; each row says where its figure comes from."""

from __future__ import annotations

from fractions import Fraction

import pytest

from pencilwood.vine import measures
from pencilwood.vine.forms.cordon import ONE_ARM_RIGHT, TWO_ARM_CORDON
from pencilwood.vine.model import Lean, Side
from pencilwood.vine.wood import (
    CutError,
    Shortening,
    ThinningOut,
    WoodLeft,
    divide,
    uncut,
)
from vines import arm, cane, old, vine

# On each arm: a spur of last year with a low and a high cane, and a cane straight from the arm.
SPUR = (old("m", 50, 14), cane("a", 8, on="m", at_mm=10), cane("b", 9, on="m", at_mm=50))
TWO_ARMS = divide(
    vine(
        TWO_ARM_CORDON,
        arm(Side.LEFT, 500, (120, SPUR), (300, (cane("a", 7),))),
        arm(Side.RIGHT, 500, (60, (cane("a", 6),)), (250, SPUR)),
    )
)


def pruned(*cuts: Shortening | ThinningOut) -> WoodLeft:
    left = uncut(TWO_ARMS)
    for cut in cuts:
        left = left.cut(cut)
    return left


def test_parts_are_named_as_the_trade_cuts_them() -> None:
    names = [part.name for part in TWO_ARMS.parts]
    assert names == [
        "L2a",
        *("L1m", "L1a", "L1m above a", "L1b"),
        "R1a",
        *("R2m", "R2a", "R2m above a", "R2b"),
    ]


def test_a_cut_takes_all_that_grows_from_the_wood() -> None:
    left = pruned(ThinningOut("L1m above a"))
    assert (left.state("L1b"), left.state("L1a"), left.state("L1m")) == (0, 8, 1)
    assert pruned(ThinningOut("L1m")).state("L1a") == 0


@pytest.mark.parametrize(
    ("cuts", "problem"),
    [
        pytest.param((ThinningOut("L9m"),), "no-such-wood", id="wood that was never there"),
        pytest.param((ThinningOut("L1m"), ThinningOut("L1b")), "already-gone", id="fell before"),
        pytest.param((Shortening("L1m", 1),), "not-a-cane", id="old wood has no counted buds"),
        pytest.param((Shortening("L1a", 9),), "no-such-bud", id="more buds than there are"),
        pytest.param((Shortening("L1a", 0),), "no-such-bud", id="no bud left is thinning out"),
        pytest.param((Shortening("L1a", 8),), "nothing-to-cut", id="all buds stay"),
    ],
)
def test_an_impossible_cut_says_why(cuts: tuple[Shortening, ...], problem: str) -> None:
    with pytest.raises(CutError) as caught:
        pruned(*cuts)
    assert caught.value.problem == problem


def test_a_cut_leaves_the_vine_before_it_as_it_was() -> None:
    before = uncut(TWO_ARMS)
    before.cut(ThinningOut("L1m"))
    assert before == uncut(TWO_ARMS)


def test_buds_are_counted_in_all_and_by_arm() -> None:
    left = pruned(Shortening("L1a", 2), ThinningOut("L1m above a"))
    # Two and seven on the left; six, eight and nine on the right.
    assert measures.buds_kept(left) == 32
    assert measures.buds_kept(left, Side.LEFT) == 9
    assert measures.buds_per_metre(left) == Fraction(32)


def test_spacing_is_along_the_line_and_the_head_zone_is_left_out_of_blanks() -> None:
    left = uncut(TWO_ARMS)
    assert measures.spacings_mm(left) == (180, 180, 190)  # -300, -120, 60, 250
    # With a head zone of 100 mm each side the line runs from -400 to 400:
    # spurs at -200, -20, 0, 150.
    assert measures.stretches_mm(left, 100) == (200, 180, 20, 150, 250)
    assert measures.blank_mm(left, 100) == 250


def test_a_stretch_without_spurs_reaches_to_the_tips() -> None:
    bare = pruned(*(ThinningOut(name) for name in ("L1m", "L2a", "R1a", "R2m")))
    assert measures.spurs(bare) == ()
    assert measures.blank_mm(bare, 100) == 800


def test_a_one_arm_vine_has_no_left_end() -> None:
    one = uncut(divide(vine(ONE_ARM_RIGHT, arm(Side.RIGHT, 600, (200, (cane("a", 5),))))))
    assert measures.stretches_mm(one, 100) == (100, 400)


def test_climb_is_the_height_of_the_highest_spurs_first_bud() -> None:
    # b grows 50 mm up, its first bud one internode (70 mm) further.
    assert measures.climb_mm(uncut(TWO_ARMS)) == 120
    assert measures.climb_mm(pruned(ThinningOut("L1m above a"), ThinningOut("R2m above a"))) == 80


@pytest.mark.parametrize(
    ("lean", "first_bud_mm"),
    [(Lean.UP, 80), (Lean.OUT, 56), (Lean.IN, 56), (Lean.DOWN, -80)],
)
def test_lean_decides_how_high_a_bud_stands(lean: Lean, first_bud_mm: int) -> None:
    parts = divide(
        vine(
            ONE_ARM_RIGHT,
            arm(Side.RIGHT, 500, (200, (cane("a", 5, internode_mm=80, lean=lean),))),
        )
    )
    assert parts.parts[0].bud_height_mm(1) == first_bud_mm


@pytest.mark.parametrize(
    ("bud_height_mm", "leaves"),
    [
        (50, 15),  # trimmed at 215 cm, arm at 90 cm, internode 8 cm: room for 15 leaves
        (600, 8),  # the same vine where a bud has climbed 60 cm: 8 leaves
        (1250, 0),  # at the trimming height no leaf has room
        (1400, 0),  # above it neither
    ],
)
def test_leaf_room(bud_height_mm: int, leaves: int) -> None:
    foot_mm = bud_height_mm - 80
    pieces = (
        [old("m", foot_mm, 20), cane("a", 5, internode_mm=80, on="m", at_mm=foot_mm)]
        if foot_mm > 0
        else [old("m", 100, 20, lean=Lean.DOWN), cane("a", 5, internode_mm=80, on="m", at_mm=30)]
    )
    parts = divide(vine(ONE_ARM_RIGHT, arm(Side.RIGHT, 500, (200, pieces))))
    part = parts.parts[parts.index["L1a" if "L1a" in parts.index else "R1a"]]
    assert part.bud_height_mm(1) == bud_height_mm
    assert measures.leaf_room(parts.vine, part, 1) == leaves


def test_only_thick_living_wood_that_is_cut_itself_wounds_the_vine() -> None:
    thick = (
        old("m", 80, 30),
        old("n", 60, 30, on="m", at_mm=80),
        cane("a", 5, on="n", at_mm=60),
    )
    parts = divide(vine(ONE_ARM_RIGHT, arm(Side.RIGHT, 500, (200, thick))))
    left = uncut(parts).cut(ThinningOut("R1m"))
    assert measures.large_wounds(left, 30) == 1  # R1n fell with R1m
    assert measures.large_wounds(left, 31) == 0
    assert measures.large_wounds(uncut(parts).cut(ThinningOut("R1a")), 30) == 0


def test_shoots_to_expect_are_buds_that_push_and_latent_buds_that_wake() -> None:
    left = pruned(Shortening("L1a", 2), ThinningOut("L1m above a"))
    # 32 buds at 90 % push; the one wound of 14 mm wakes two.
    expected = measures.expected_shoots(left, Fraction(9, 10), Fraction(2), large_wound_mm=14)
    assert expected == Fraction(32 * 9, 10) + 2
