"""The winter after: what follows from the wood left, and what can be done with the new vine."""

from __future__ import annotations

import random
from collections import Counter
from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given, settings

from growing import LIMITS, SEEDS, SUMMER, at_place, pruned
from pencilwood.cases import vine_keys
from pencilwood.score.judge import target_for
from pencilwood.score.sheet import as_json, compile_sheet, dump
from pencilwood.vine.forms.cordon import TWO_ARM_CORDON
from pencilwood.vine.growth import (
    MOST_PIECES,
    NoWoodLeftError,
    Summer,
    growth_by_place,
    next_winter,
    place_of,
    weight_of,
)
from pencilwood.vine.growth_figures import (
    BASE_BUD_MM,
    LONGEST_INTERNODE,
    NEW_SPUR_GAINS,
    SHORTEST_INTERNODE,
    THICKEST_CANE,
    THINNEST_CANE,
    VARIES,
)
from pencilwood.vine.measures import buds_kept, expected_shoots, is_large_cut
from pencilwood.vine.model import Condition, Lean, Position, Side
from pencilwood.vine.wood import Shortening, ThinningOut, WoodLeft, divide, uncut
from prunings import cut_at_random
from vines import arm, cane, old, tidy_vine, vine


def spur_after(*cuts: Shortening | ThinningOut, summer: Summer = SUMMER) -> Position:
    """What a usual spur (m, low cane a, high cane b) becomes; its neighbour stays."""
    spur = (
        old("m", 60, 15),
        cane("a", 9, 8, on="m", at_mm=15),
        cane("b", 9, 9, on="m", at_mm=60),
    )
    one = vine(TWO_ARM_CORDON, arm(Side.LEFT, 500, (150, spur)), arm(Side.RIGHT, 500, (150, spur)))
    left = uncut(divide(one))
    for cut in cuts:
        left = left.cut(cut)
    return at_place(next_winter(left, summer))[Side.LEFT, 150]


def test_a_low_spur_of_two_buds_becomes_two_canes_near_the_arm() -> None:
    position = spur_after(ThinningOut("L1b"), Shortening("L1a", 2), ThinningOut("L1m above a"))
    m, n, a, b = position.pieces
    assert (m.letter, m.age_years, m.length_mm, m.thickness_mm) == ("m", 3, 15, 17)
    # Two internodes of 70 mm and the stub; the wood is a year older, thicker, without buds.
    stub_mm = LIMITS["stub above the bud"]
    assert (n.letter, n.age_years, n.length_mm, n.buds) == ("n", 2, 140 + stub_mm, 0)
    assert n.thickness_mm == 8 + NEW_SPUR_GAINS.value
    assert (n.grows_from, n.at_mm) == ("m", 15)
    assert [(one.letter, one.grows_from, one.at_mm) for one in (a, b)] == [
        ("a", "n", 70),
        ("b", "n", 140),
    ]
    assert all(one.is_cane and one.lean is Lean.UP for one in (a, b))


def test_nothing_pushes_where_no_bud_breaks() -> None:
    asleep = replace(SUMMER, budbreak_percent=0)
    position = spur_after(Shortening("L1a", 2), ThinningOut("L1b"), summer=asleep)
    assert not any(piece.is_cane for piece in position.pieces)
    assert [piece.length_mm for piece in position.pieces][-1] == 140 + SUMMER.stub_mm


def test_a_kept_cane_may_push_from_its_foot_as_well() -> None:
    base = replace(SUMMER, base_percent=100)
    position = spur_after(Shortening("L1a", 1), ThinningOut("L1b"), summer=base)
    canes = [piece for piece in position.pieces if piece.is_cane]
    assert [one.at_mm for one in canes] == [BASE_BUD_MM, 70]


def test_a_cut_to_the_arm_loses_the_position_unless_the_wound_is_large() -> None:
    thin = replace(SUMMER, large_wound_mm=16)
    with pytest.raises(KeyError):
        spur_after(ThinningOut("L1m"), summer=thin)
    thick = replace(SUMMER, large_wound_mm=15)
    woken = spur_after(ThinningOut("L1m"), summer=thick).pieces
    assert [(one.is_cane, one.grows_from, one.at_mm) for one in woken] == [(True, None, 0)]


def test_positions_are_numbered_without_a_gap_and_stay_where_they_were() -> None:
    left = uncut(divide(tidy_vine()))
    left = left.cut(ThinningOut("L2m")).cut(ThinningOut("R1m"))
    grown = next_winter(left, replace(SUMMER, large_wound_mm=99))
    assert [one.name for one in grown.arms[0].positions] == ["L1", "L2", "L3", "L4", "L5"]
    assert [one.at_mm for one in grown.arms[0].positions] == [140, 380, 500, 620, 740]
    assert [one.name for one in grown.arms[1].positions] == ["R1", "R2", "R3", "R4", "R5"]


def test_a_vine_of_which_nothing_is_left_has_no_next_winter() -> None:
    parts = divide(tidy_vine())
    with pytest.raises(NoWoodLeftError):
        next_winter(WoodLeft(parts, (0,) * len(parts.parts)), SUMMER)


@given(SEEDS)
@settings(max_examples=150, deadline=None)
def test_what_grows_follows_from_what_was_left(seed: int) -> None:
    left = pruned(seed)
    before, limits = left.parts, LIMITS
    grown = next_winter(left, SUMMER)
    there = at_place(grown)
    for position in before.positions:
        numbers = before.of_position(position.name)
        standing = {
            before.parts[n].piece.letter: before.parts[n].piece for n in numbers if left.states[n]
        }
        wounds = sum(is_large_cut(left, n, limits["large wound from"]) for n in numbers)
        # With full budbreak each living bud left and each large wound gives a cane.
        buds = sum(
            left.states[n]
            for n in numbers
            if before.parts[n].is_cane and before.parts[n].piece.is_alive
        )
        canes = min(buds + wounds, MOST_PIECES - len(standing))
        pieces = there[place_of(position)].pieces if place_of(position) in there else ()
        older = [piece for piece in pieces if not piece.is_cane]
        assert len(pieces) - len(older) == canes
        facts = [(one.age_years, one.condition, one.lean, one.at_mm) for one in older]
        was = [(o.age_years + 1, o.condition, o.lean, o.at_mm) for o in standing.values()]
        assert Counter(facts) == Counter(was)
        assert all((one.buds, one.internode_mm) == (0, 0) for one in older)


@given(SEEDS)
@settings(max_examples=100, deadline=None)
def test_canes_are_such_as_could_be_measured(seed: int) -> None:
    left = pruned(seed)
    grown = next_winter(left, SUMMER)
    parts = divide(grown)
    growth = growth_by_place(left.parts.vine)
    for position in parts.positions:
        canes = [piece for piece in position.pieces if piece.is_cane]
        for one in canes:
            assert one.length_mm == (one.buds + 1) * one.internode_mm
            assert SHORTEST_INTERNODE.value <= one.internode_mm <= LONGEST_INTERNODE.value
            assert one.thickness_mm <= THICKEST_CANE.value
            assert one.condition is Condition.SOUND
        # No wood from nothing: all shoots together are as long as last summer's, or two
        # internodes each where that is more.
        together = sum(one.length_mm for one in canes)
        least = sum(2 * one.internode_mm for one in canes)
        assert together <= max(growth[place_of(position)], least)
    for part in parts.parts:
        if part.is_cane:
            # Trimming leaves no shoot above 2150 mm, the arm at 900 mm; one bud always stays.
            top_mm = part.base_height_mm + part.piece.length_mm
            assert top_mm <= 2150 - 900 or part.most == 1


def test_growth_is_shared_and_not_lost() -> None:
    """Three canes of two buds: all that grew at a position grows again, to a bud for each."""
    position = spur_after(Shortening("L1a", 2), Shortening("L1b", 2))
    canes = [piece for piece in position.pieces if piece.is_cane]
    assert len(canes) == 4
    together = sum(one.length_mm for one in canes)
    assert 2 * 10 * 70 - sum(one.internode_mm for one in canes) < together <= 2 * 10 * 70
    assert all(THINNEST_CANE.value <= one.thickness_mm for one in canes)


def test_shoots_differ_by_the_stated_share() -> None:
    weights = {weight_of(random.Random(seed)) for seed in range(3000)}
    assert (min(weights), max(weights)) == (100 - VARIES.value, 100 + VARIES.value)


def test_a_shoot_is_trimmed_in_summer() -> None:
    strong = replace(SUMMER, growth_mm={(Side.LEFT, 150): 9000})
    position = spur_after(Shortening("L1a", 1), ThinningOut("L1b"), summer=strong)
    (shoot,) = (piece for piece in position.pieces if piece.is_cane)
    # Trimmed at 2150 mm, arm at 900 mm, foot of the shoot 15 + 70 mm above the arm.
    assert shoot.length_mm <= 2150 - 900 - 85 < shoot.length_mm + shoot.internode_mm


@given(SEEDS)
@settings(max_examples=40, deadline=None)
def test_a_position_knows_nothing_of_the_others(seed: int) -> None:
    left = pruned(seed)
    there = at_place(next_winter(left, SUMMER))
    rng = random.Random(seed + 1)
    chosen = rng.choice(left.parts.positions)
    other, _ = cut_at_random(left.parts, rng)
    own = set(left.parts.of_position(chosen.name))
    mixed = WoodLeft(
        left.parts,
        tuple(
            a if n in own else b
            for n, (a, b) in enumerate(zip(left.states, other.states, strict=True))
        ),
    )
    if not any(left.states[n] for n in own):
        return
    again = at_place(next_winter(mixed, SUMMER))
    assert again[place_of(chosen)].pieces == there[place_of(chosen)].pieces


@given(SEEDS)
@settings(max_examples=40, deadline=None)
def test_nothing_that_went_in_is_changed_and_a_seed_gives_the_same_bytes(seed: int) -> None:
    left = pruned(seed)
    told = repr(left)
    sheets = []
    for _ in range(2):
        parts = divide(next_winter(left, replace(SUMMER, budbreak_percent=60)))
        sheet = compile_sheet(parts, LIMITS, target_for(parts.vine, LIMITS))
        sheets.append(dump(as_json(sheet, "grown", 0, 80)))
    assert sheets[0] == sheets[1]
    assert repr(left) == told


def test_about_as_many_buds_push_as_is_said() -> None:
    parts = divide(tidy_vine())
    left = WoodLeft(parts, tuple(min(part.most, 2) for part in parts.parts))
    expected = expected_shoots(left, Fraction(9, 10), Fraction(1), LIMITS["large wound from"])
    assert expected == Fraction(9, 10) * buds_kept(left)
    pushed = sum(
        sum(part.is_cane for part in divide(next_winter(left, summer)).parts)
        for turn in range(50)
        for summer in [replace(SUMMER, seed=str(turn), budbreak_percent=90)]
    )
    assert abs(pushed / 50 - expected) < 1


def test_no_more_wood_than_a_file_may_hold() -> None:
    assert vine_keys.MOST_PIECES == MOST_PIECES
