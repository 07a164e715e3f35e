"""Whether a vine can be passed by habit or by luck."""

from __future__ import annotations

import math
import random
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from pencilwood.score.lookup import LookUp
from pencilwood.vine.wood import Parts

TRIES = 2000
"""Random prunings tried for each case."""

HIGHEST_CHANCE = 0.01
"""The most that a random pruning may pass, as a share."""


@dataclass(frozen=True)
class Luck:
    """How many random prunings passed, with the interval that holds the true chance."""

    tries: int
    passes: int

    @property
    def interval(self) -> tuple[float, float]:
        """95 % score interval of the share (E. B. Wilson, 1927; the reference is from memory).

        Its values are tested against scipy.
        """
        return wilson(self.passes, self.tries)


def wilson(passes: int, tries: int, z: float = 1.959963984540054) -> tuple[float, float]:
    """Both ends of the score interval for `passes` out of `tries`; z = 1.96 for 95 %."""
    share = passes / tries
    middle = share + z * z / (2 * tries)
    spread = z * math.sqrt(share * (1 - share) / tries + z * z / (4 * tries * tries))
    scale = 1 + z * z / tries
    # At the very ends rounding leaves a speck where the interval reaches 0 or 1 exactly.
    low = 0.0 if passes == 0 else (middle - spread) / scale
    return low, 1.0 if passes == tries else (middle + spread) / scale


def habits(parts: Parts) -> Mapping[str, tuple[int, ...]]:
    """What somebody leaves who follows one habit everywhere, by the name of the habit."""
    return {
        "leave-everything": tuple(part.most for part in parts.parts),
        "remove-everything": (0,) * len(parts.parts),
        "remove-all-canes": tuple(0 if part.is_cane else 1 for part in parts.parts),
        "all-to-one-bud": tuple(min(part.most, 1) for part in parts.parts),
        "all-to-two-buds": tuple(min(part.most, 2) if part.is_cane else 1 for part in parts.parts),
        "all-to-five-buds": tuple(min(part.most, 5) if part.is_cane else 1 for part in parts.parts),
    }


Row = tuple[int, bool, int, tuple[int, ...]]
"""For each part what it grows from, whether it is a cane, its state when uncut, and by its state
the least that it loses whatever is left elsewhere."""


def random_states(parts: Parts, chance: random.Random) -> tuple[int, ...]:
    """What random cuts leave.

    A fifth of the old wood and half of the canes come off; the other canes keep one to five buds.
    """
    nothing_lost = tuple((0,) * (part.most + 1) for part in parts.parts)
    return prune_at_random(rows_of(parts, nothing_lost), chance, 0) or ()


def rows_of(parts: Parts, least_lost: Sequence[tuple[int, ...]]) -> list[Row]:
    """What random cuts go by, part by part; see `LookUp.least_lost`."""
    return [
        (below, part.is_cane, part.most, least)
        for below, part, least in zip(parts.parent, parts.parts, least_lost, strict=True)
    ]


def prune_at_random(
    rows: Sequence[Row], chance: random.Random, may_lose: int
) -> tuple[int, ...] | None:
    """What random cuts leave; None as soon as the cuts made so far lose more than `may_lose`.

    Nothing that is left elsewhere gives a lost point back, so such a pruning has failed.
    """
    draw = chance.random
    states: list[int] = []
    for below, is_cane, most, least in rows:
        if below >= 0 and states[below] == 0:
            state = 0
        elif not is_cane:
            state = int(draw() >= 0.2)
        else:
            # From 0 to 9: the lower half comes off, each of 1 to 5 buds has the same chance.
            state = int(10 * draw()) - 4
            if state < 0:
                state = 0
            elif state > most:
                state = most
        may_lose -= least[state]
        if may_lose < 0:
            return None
        states.append(state)
    return tuple(states)


def try_luck(
    look_up: LookUp, parts: Parts, plan_lost: int, pass_mark: int, seed: str, tries: int = TRIES
) -> Luck:
    """Prune at random `tries` times; the same seed tries the same prunings.

    A pruning that can no longer pass is not finished: most have failed after a few pieces of wood.
    """
    chance = random.Random(seed)  # noqa: S311 - no secret; the same every time
    rows = rows_of(parts, look_up.least_lost)
    may_lose = plan_lost + 100 - pass_mark
    passes = 0
    for _ in range(tries):
        states = prune_at_random(rows, chance, may_lose)
        if states is not None:
            passes += look_up.score(states, plan_lost, pass_mark) >= pass_mark
    return Luck(tries, passes)
