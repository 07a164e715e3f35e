"""The plan is the best pruning: against every pruning of small vines, and a general solver."""

from __future__ import annotations

import random

import pytest
from hypothesis import given, settings

from milp import least_loss
from pencilwood.plan import plan_for
from pencilwood.rules import BANDS
from pencilwood.score.judge import Target, judge, lost, target_for
from pencilwood.score.sheet import compile_sheet
from pencilwood.vine.bands import default_limits
from pencilwood.vine.wood import divide, uncut
from prunings import every_pruning, small_vine
from vines import random_vine, vines

LIMITS = default_limits(BANDS)
SMALL_VINES = 200
LARGE_VINES = 200


@pytest.mark.parametrize("batch", range(4))
def test_the_plan_is_the_best_of_all_prunings(batch: int) -> None:
    rng = random.Random(batch)
    for _ in range(SMALL_VINES // 4):
        parts = small_vine(rng, 2500)
        # Targets of every kind: hard to reach, easy, and out of reach.
        least = rng.randint(0, 8)
        target = Target(least, least + rng.randint(0, 4))
        limits = LIMITS | {
            "large wound from": rng.choice((15, 18, 25)),
            "large wounds in one winter at most": rng.randint(0, 2),
            "buds on a spur at most": rng.randint(1, 3),
        }
        judged = [judge(left, limits, target) for left in every_pruning(parts)]
        best = min(lost(one) for one in judged if not any(charge.must for charge in one))
        plan = plan_for(compile_sheet(parts, limits, target))
        assert plan.lost == best
        assert not any(charge.must for charge in plan.charges)


@pytest.mark.parametrize("batch", range(4))
def test_a_general_solver_finds_nothing_better(batch: int) -> None:
    rng = random.Random(1000 + batch)
    for number in range(LARGE_VINES // 4):
        positions = rng.randint(8, 24) if number else 40
        parts = divide(random_vine(rng, positions=positions, most_buds=5))
        wounds = {"large wounds in one winter at most": rng.randint(0, 4)}
        limits = LIMITS | wounds
        target = target_for(parts.vine, limits)
        plan = plan_for(compile_sheet(parts, limits, target))
        assert plan.lost == least_loss(parts, limits, target)


@settings(max_examples=60, deadline=None)
@given(vines(most_positions=8))
def test_the_plans_cuts_lead_to_the_plan(vine: object) -> None:
    parts = divide(vine)  # type: ignore[arg-type]
    target = target_for(parts.vine, LIMITS)
    plan = plan_for(compile_sheet(parts, LIMITS, target))
    left = uncut(parts)
    for cut in plan.cuts:
        left = left.cut(cut.done.cut)
    assert left == plan.left
    passes = [cut.done.in_pass for cut in plan.cuts]
    assert passes == sorted(passes, key=["rough", "thinning-out", "fine"].index)


def test_the_same_vine_is_planned_the_same_every_time() -> None:
    parts = divide(random_vine(random.Random(7), positions=12))
    target = target_for(parts.vine, LIMITS)
    plans = [plan_for(compile_sheet(parts, LIMITS, target)).left.states for _ in range(3)]
    assert plans[0] == plans[1] == plans[2]
