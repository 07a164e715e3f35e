"""Which of several prunings that score the same the plan takes: the one a pruner would take.

The preferences are ours; in the trade the nearer and the stronger cane is kept (common practice,
no source).
"""

from __future__ import annotations

import random

import pytest

from pencilwood.plan.solver import solve
from pencilwood.rules import BANDS
from pencilwood.score.judge import Target, judge, lost
from pencilwood.score.sheet import compile_sheet
from pencilwood.vine import measures
from pencilwood.vine.bands import default_limits
from pencilwood.vine.forms.cordon import ONE_ARM_RIGHT
from pencilwood.vine.model import Piece, Side
from pencilwood.vine.wood import Parts, WoodLeft, divide
from prunings import every_pruning, small_vine
from vines import arm, cane, old, vine

LIMITS = default_limits(BANDS)


def spur(at_mm: int) -> tuple[Piece, ...]:
    """A spur of last year with one cane, so high on it."""
    return (old("m", 60, 15), cane("a", 9, on="m", at_mm=at_mm))


def buds_left(parts: Parts, left: WoodLeft) -> dict[str, int]:
    """Buds left on each cane by its name; only canes that stay."""
    return {
        part.name: left.states[number]
        for number, part in enumerate(parts.parts)
        if part.is_cane and left.states[number]
    }


@pytest.mark.parametrize(
    ("places", "target", "expected", "reason"),
    [
        (
            [(200, [cane("a", 9, 7)]), (320, [cane("a", 9, 10)])],
            Target(3, 3),
            {"R1a": 1, "R2a": 2},
            "three buds for two spurs: the thicker cane carries the second bud",
        ),
        (
            [(200, [cane("a", 9, 10)]), (320, [cane("a", 9, 7)])],
            Target(3, 3),
            {"R1a": 2, "R2a": 1},
            "the same with the thicker cane first, so that it is not the order that decides",
        ),
        (
            [(100, spur(10)), (200, spur(50)), (240, spur(10)), (340, spur(10))],
            Target(6, 6),
            {"R1a": 2, "R3a": 2, "R4a": 2},
            "two places too close together, one to go: the one whose cane stands high",
        ),
        (
            [(100, spur(10)), (200, spur(10)), (240, spur(50)), (340, spur(10))],
            Target(6, 6),
            {"R1a": 2, "R2a": 2, "R4a": 2},
            "the same with the low one first",
        ),
    ],
)
def test_of_prunings_alike_in_points_the_plan_takes(
    places: list[tuple[int, list[Piece]]], target: Target, expected: dict[str, int], reason: str
) -> None:
    parts = divide(vine(ONE_ARM_RIGHT, arm(Side.RIGHT, 500, *places)))
    left = solve(compile_sheet(parts, LIMITS, target))
    assert buds_left(parts, left) == expected, reason


def liked(left: WoodLeft) -> int:
    """How well a pruner likes it, the less the better.

    Many spurs, near the arm, and the bud spared on the thinner cane.
    """
    parts = left.parts
    total = 0
    for number, part in enumerate(parts.parts):
        buds = left.states[number]
        if part.is_cane and buds:
            away_mm = max(0, measures.away_mm(parts.vine, part))
            spared = part.piece.thickness_mm if buds == 1 else 0
            total += -60 + min(25, away_mm // 20) + 2 * spared
    return total


def test_no_other_best_pruning_of_a_small_vine_is_liked_better() -> None:
    rng = random.Random(4100)
    several = 0
    for _ in range(150):
        parts = small_vine(rng, 400)
        least = rng.randint(0, 6)
        target = Target(least, least + rng.randint(0, 4))
        judged = [(left, judge(left, LIMITS, target)) for left in every_pruning(parts)]
        allowed = [
            (lost(charges), liked(left))
            for left, charges in judged
            if not any(charge.must for charge in charges)
        ]
        best = min(points for points, _ in allowed)
        plan = solve(compile_sheet(parts, LIMITS, target))
        assert (lost(judge(plan, LIMITS, target)), liked(plan)) == min(allowed)
        several += len({liking for points, liking in allowed if points == best}) > 1
    assert several > 25
