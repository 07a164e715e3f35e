"""Pieces that no passing pruning keeps, against every pruning of small vines."""

from __future__ import annotations

import random
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property

import pytest

from pencilwood.plan.keeping import best_keeping, must_go
from pencilwood.rules import BANDS
from pencilwood.score.judge import Target, judge, lost
from pencilwood.score.sheet import compile_sheet
from pencilwood.vine.bands import default_limits
from pencilwood.vine.wood import Parts, WoodLeft
from prunings import every_pruning, small_vine

LIMITS = default_limits(BANDS)
VINES_IN_A_BATCH = 25


@dataclass(frozen=True)
class Tried:
    """A small vine with all of its prunings."""

    parts: Parts
    target: Target
    pass_mark: int

    @cached_property
    def allowed(self) -> list[tuple[WoodLeft, int]]:
        """Prunings that break no must-rule, with the points they lose."""
        judged = [(left, judge(left, LIMITS, self.target)) for left in every_pruning(self.parts)]
        return [
            (left, lost(cost)) for left, cost in judged if not any(charge.must for charge in cost)
        ]

    @cached_property
    def passing(self) -> list[WoodLeft]:
        """Prunings that pass. One that breaks a must-rule never does."""
        least = min(points for _, points in self.allowed)
        return [left for left, points in self.allowed if 100 - (points - least) >= self.pass_mark]


def tried(rng: random.Random) -> Tried:
    least = rng.randint(0, 6)
    return Tried(
        small_vine(rng, 1000), Target(least, least + rng.randint(0, 4)), rng.choice((60, 80, 95))
    )


def kept_in(prunings: Iterable[WoodLeft]) -> set[int]:
    return {number for left in prunings for number, state in enumerate(left.states) if state}


@pytest.mark.parametrize("batch", range(2))
def test_every_pruning_agrees_on_what_must_go(batch: int) -> None:
    rng = random.Random(700 + batch)
    found = 0
    for _ in range(VINES_IN_A_BATCH):
        vine = tried(rng)
        parts = vine.parts
        named = must_go(compile_sheet(parts, LIMITS, vine.target), vine.pass_mark)
        numbers = {parts.index[one.part] for one in named}
        fallen = {back for number in numbers for back in parts.carries[number]}
        assert numbers | fallen == set(range(len(parts.parts))) - kept_in(vine.passing)
        assert not numbers & fallen
        may_stay = kept_in(left for left, _ in vine.allowed)
        assert all(one.by_must == (parts.index[one.part] not in may_stay) for one in named)
        found += len(named)
    assert found


def test_the_best_pruning_that_keeps_a_piece_is_the_best() -> None:
    rng = random.Random(900)
    for _ in range(VINES_IN_A_BATCH):
        vine = tried(rng)
        sheet = compile_sheet(vine.parts, LIMITS, vine.target)
        for number in range(len(vine.parts.parts)):
            keeping = [points for left, points in vine.allowed if left.states[number]]
            best = best_keeping(sheet, number)
            assert (best is None) == (not keeping)
            if best is not None:
                assert lost(judge(best, LIMITS, vine.target)) == min(keeping)
