"""Prunings for tests: one at random, and every one there is."""

from __future__ import annotations

import itertools
import math
import random
from collections.abc import Callable, Iterator

from pencilwood.vine.model import Vine
from pencilwood.vine.passes import DoneCut, Stub, Tool
from pencilwood.vine.wood import Parts, Shortening, ThinningOut, WoodLeft, divide, uncut
from vines import random_vine


def cut_at_random(parts: Parts, rng: random.Random) -> tuple[WoodLeft, list[DoneCut]]:
    """A vine after random cuts, and the cuts."""
    left, done = uncut(parts), []
    for _ in range(rng.randint(0, 2 * len(parts.parts))):
        standing = [p for p in parts.parts if left.state(p.name)]
        if not standing:
            break
        part = rng.choice(standing)
        buds = left.state(part.name)
        shorten = part.is_cane and buds > 1 and rng.random() < 0.6
        cut = Shortening(part.name, rng.randint(1, buds - 1)) if shorten else ThinningOut(part.name)
        left = left.cut(cut)
        in_pass = rng.choice(parts.vine.form.passes)
        done.append(DoneCut(cut, in_pass, rng.choice(list(Tool)), rng.choice(list(Stub))))
    return left, done


def small_vine(rng: random.Random, most_prunings: int) -> Parts:
    """A vine with few enough prunings to try them all."""

    def grow() -> Vine:
        return random_vine(rng, positions=rng.randint(1, 3), most_canes=2, most_buds=3)

    return first_small(grow, most_prunings)


def first_small(grow: Callable[[], Vine], most_prunings: int) -> Parts:
    """The first vine grown with few enough prunings to try them all."""
    while True:
        parts = divide(grow())
        if math.prod(part.most + 1 for part in parts.parts) <= most_prunings:
            return parts


def every_pruning(parts: Parts) -> Iterator[WoodLeft]:
    """Everything that cuts can leave of a vine."""
    for states in itertools.product(*(range(part.most + 1) for part in parts.parts)):
        if all(
            below < 0 or states[below] or not state
            for below, state in zip(parts.parent, states, strict=True)
        ):
            yield WoodLeft(parts, states)
