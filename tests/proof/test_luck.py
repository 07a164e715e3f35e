"""A random pruning is given up only where the finished one would fail, and is as random as said."""

from __future__ import annotations

import random
from collections import Counter
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import chisquare

from pencilwood.plan import plan_for
from pencilwood.proof.luck import prune_at_random, random_states, rows_of, try_luck
from pencilwood.rules import BANDS
from pencilwood.score.judge import target_for
from pencilwood.score.lookup import LookUp
from pencilwood.score.sheet import compile_sheet
from pencilwood.vine.bands import default_limits
from pencilwood.vine.wood import divide
from prunings import every_pruning, small_vine
from vines import sick_vine, vines

LIMITS = default_limits(BANDS)


def look_up_of(parts: Any) -> tuple[LookUp, int]:
    sheet = compile_sheet(parts, LIMITS, target_for(parts.vine, LIMITS))
    return LookUp(sheet), plan_for(sheet).lost


@settings(max_examples=60, deadline=None)
@given(vines(most_positions=6), st.integers(0, 2**32), st.sampled_from([0, 50, 80, 100]))
def test_what_is_given_up_would_have_failed(vine: Any, seed: int, pass_mark: int) -> None:
    parts = divide(vine)
    look_up, plan_lost = look_up_of(parts)
    rows = rows_of(parts, look_up.least_lost)
    for number in range(60):
        left = prune_at_random(rows, random.Random(seed + number), plan_lost + 100 - pass_mark)
        whole = random_states(parts, random.Random(seed + number))
        if left is None:
            assert look_up.score(whole, plan_lost, pass_mark) < pass_mark
        else:
            assert left == whole


def test_no_piece_loses_less_than_the_least() -> None:
    parts = small_vine(random.Random(4), 3000)
    look_up, _ = look_up_of(parts)
    for left in every_pruning(parts):
        lost, must = look_up.tally(left.states)
        least = sum(row[state] for row, state in zip(look_up.least_lost, left.states, strict=True))
        assert least <= lost or must


def test_passes_are_counted_as_if_every_pruning_were_finished() -> None:
    parts = small_vine(random.Random(4), 3000)
    look_up, plan_lost = look_up_of(parts)
    lucky = try_luck(look_up, parts, plan_lost, 60, "seed", 4000)
    chance = random.Random("another seed")
    passed = sum(
        look_up.score(random_states(parts, chance), plan_lost, 60) >= 60 for _ in range(4000)
    )
    assert 100 < passed < 3900
    # Two counts of the same chance: six standard deviations apart at most.
    assert abs(lucky.passes - passed) < 6 * (2 * 4000 * 0.25) ** 0.5
    assert lucky == try_luck(look_up, parts, plan_lost, 60, "seed", 4000)


def test_half_of_the_canes_come_off_and_the_others_keep_one_to_five_buds_alike() -> None:
    parts = divide(sick_vine())
    number = next(
        number
        for number, part in enumerate(parts.parts)
        if part.is_cane and part.most > 5 and parts.parent[number] < 0
    )
    chance = random.Random(11)
    drawn = Counter(random_states(parts, chance)[number] for _ in range(5000))
    assert set(drawn) == set(range(6))
    expected = [2500, *[500] * 5]
    assert chisquare([drawn[state] for state in range(6)], expected).pvalue > 1e-4
