"""What the tests of growing vines share: a usual summer, and vines after random cuts."""

from __future__ import annotations

import random

from hypothesis import strategies as st

from pencilwood.rules import BANDS
from pencilwood.vine.bands import default_limits
from pencilwood.vine.forms.cordon import TWO_ARM_CORDON
from pencilwood.vine.growth import Summer, place_of
from pencilwood.vine.model import Position, Side, Vine
from pencilwood.vine.wood import WoodLeft, divide
from prunings import cut_at_random
from vines import arm, cane, old, random_vine, vine

LIMITS = default_limits(BANDS)
SUMMER = Summer("test", 100, 1, LIMITS["large wound from"], LIMITS["stub above the bud"])
SEEDS = st.integers(0, 2**32 - 1)
GROWTH_MM = 6000
"""What the shoots of a side that is made new grow together."""


def pruned(seed: int, most_positions: int = 8) -> WoodLeft:
    """A random vine after random cuts, with something left."""
    rng = random.Random(seed)
    while True:
        parts = divide(random_vine(rng, positions=rng.randint(1, most_positions)))
        left, _ = cut_at_random(parts, rng)
        # A file holds no arm of less than 10 cm.
        if any(left.states) and all(arm.length_mm >= 100 for arm in parts.vine.arms):
            return left


def at_place(one: Vine) -> dict[tuple[Side, int], Position]:
    return {place_of(position): position for position in one.positions_along_line()}


def worn_out() -> Vine:
    """A left arm with a bare stretch and a young cane on the head; a whole right arm."""
    spur = (old("m", 50), cane("a", 9, on="m", at_mm=15))
    return vine(
        TWO_ARM_CORDON,
        arm(Side.LEFT, 660, (40, [cane("a", 7, 6, internode_mm=50)]), (140, spur), (600, spur)),
        arm(Side.RIGHT, 640, (130, spur), (250, spur), (370, spur)),
    )
