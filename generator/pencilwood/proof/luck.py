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


def random_states(parts: Parts, chance: random.Random) -> tuple[int, ...]:
    """What random cuts leave.

    A fifth of the old wood and half of the canes come off; the other canes keep one to five buds.
    """
    return _random_states(_rows(parts), chance)


def _rows(parts: Parts) -> list[tuple[int, bool, int]]:
    """For each part what it grows from, whether it is a cane, and its state when uncut."""
    return [
        (below, part.is_cane, part.most)
        for below, part in zip(parts.parent, parts.parts, strict=True)
    ]


def _random_states(rows: Sequence[tuple[int, bool, int]], chance: random.Random) -> tuple[int, ...]:
    states: list[int] = []
    for below, is_cane, most in rows:
        if below >= 0 and states[below] == 0:
            states.append(0)
        elif not is_cane:
            states.append(int(chance.random() >= 0.2))
        elif chance.random() < 0.5:
            states.append(0)
        else:
            states.append(min(most, chance.randint(1, 5)))
    return tuple(states)


def try_luck(
    look_up: LookUp, parts: Parts, plan_lost: int, pass_mark: int, seed: str, tries: int = TRIES
) -> Luck:
    """Prune at random `tries` times; the same seed tries the same prunings."""
    chance = random.Random(seed)  # noqa: S311 - no secret; the same every time
    rows = _rows(parts)
    passes = sum(
        look_up.score(_random_states(rows, chance), plan_lost, pass_mark) >= pass_mark
        for _ in range(tries)
    )
    return Luck(tries, passes)
