"""The cuts that a plan tells turn the uncut vine into the wood that it leaves, in every form."""

from __future__ import annotations

import random
from collections.abc import Callable

import pytest

from cane_vines import random_cane_vine
from heads import random_head
from high_cordons import random_high_vine
from pencilwood.plan.explain import explain
from pencilwood.rules import bands_of
from pencilwood.score.judge import target_for
from pencilwood.score.sheet import compile_sheet
from pencilwood.vine.bands import default_limits
from pencilwood.vine.model import Vine
from pencilwood.vine.passes import Pass, Stub, after_cuts, after_each_pass
from pencilwood.vine.wood import Part, Parts, WoodLeft, divide, uncut
from vines import random_vine

GROWN: dict[str, Callable[[random.Random], Vine]] = {
    "cordon": random_vine,
    "canes": random_cane_vine,
    "head": random_head,
    "high": random_high_vine,
}


def some_wood(parts: Parts, rng: random.Random, rough_buds: int) -> WoodLeft:
    """What a pruner could leave; many canes as long as the rough pass leaves them."""
    states: list[int] = []
    for part, below in zip(parts.parts, parts.parent, strict=True):
        may_stay = below < 0 or states[below] > 0
        states.append(_state(part, rng, rough_buds) if may_stay else 0)
    return WoodLeft(parts, tuple(states))


def _state(part: Part, rng: random.Random, rough_buds: int) -> int:
    likely = [0, part.most, rough_buds - 1, rough_buds, rough_buds, rough_buds + 1]
    return min(part.most, rng.choice([*likely, rng.randint(0, part.most)]))


@pytest.mark.parametrize("name", GROWN)
@pytest.mark.parametrize("seed", range(8))
def test_the_cuts_leave_what_the_plan_leaves(name: str, seed: int) -> None:
    rng = random.Random(seed)
    parts = divide(GROWN[name](rng))
    form = parts.vine.form
    limits = default_limits(bands_of(form))
    rough_buds = limits["buds after the rough pass at most"]
    sheet = compile_sheet(parts, limits, target_for(parts.vine, limits))
    left = some_wood(parts, rng, rough_buds)
    cuts = [one.done for one in explain(sheet, left, {}).cuts]
    assert after_cuts(uncut(parts), cuts).states == left.states
    assert {one.in_pass for one in cuts} <= set(form.passes)
    assert all(one.stub is Stub.RIGHT for one in cuts)
    if Pass.ROUGH in form.passes:
        rough = after_each_pass(parts, cuts)[Pass.ROUGH]
        stay = [
            part.name
            for part, state in zip(parts.parts, left.states, strict=True)
            if part.is_cane and state > rough_buds
        ]
        # No cane is cut twice as long as the rough pass leaves it, and none that stays longer.
        assert all(rough.state(name) == uncut(parts).state(name) for name in stay)
        assert all(
            rough.state(part.name) <= rough_buds
            for part in parts.parts
            if part.is_cane and part.name not in stay
        )
