"""A lower bound on what the rest of the line must still cost.

Buds and large wounds are counted over the whole vine, so they tie the positions together. The
bound cuts that tie: each bud and each wound gets a price (a Lagrange multiplier), which turns
the totals into sums over positions. Whatever the prices, the bound never exceeds the true cost;
`best_bound` looks for the prices that make it highest.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from operator import getitem

from pencilwood.plan.options import Key, Option, Tallies

FORBIDDEN = 10**15
"""Stands for a cost that cannot be paid; sums of a few of them stay above it."""


State = tuple[int, int, int, Tallies]
"""Mark of the last spur (0 is the line's left end), buds, large wounds and tallies so far."""


@dataclass(frozen=True)
class Problem:
    """One vine, with every cost looked up."""

    options: Sequence[Sequence[tuple[Key, Option]]]
    """By position: what can be done there."""
    between: Sequence[Sequence[int]]
    """Cost of two marks being neighbours: mark 0 is the line's left end, mark i + 1 the spur at
    position i, and the last mark is the line's right end."""
    buds: Sequence[int]
    """Cost of the total of buds left, by total."""
    wounds: Sequence[int]
    """Cost of the number of large wounds, by number."""
    closing: Sequence[Sequence[int]] = ()
    """Around a head: first spur -> last spur -> cost of their being neighbours."""
    tallies: Sequence[Sequence[int]] = ()
    """For each thing that the form counts, the cost of its number, by number."""

    def cost_of_tallies(self, tallies: Tallies) -> int:
        """What these numbers cost together."""
        return sum(costs[count] for costs, count in zip(self.tallies, tallies, strict=True))


@dataclass(frozen=True)
class Bound:
    """The bound for one pair of prices."""

    bud_price: int
    wound_price: int
    rest: Sequence[Sequence[int]]
    """position -> last mark -> least cost of the rest of the line at these prices."""
    buds_rest: Sequence[int]
    """buds so far -> least cost of any total that can still come, less its buds at the price."""
    wounds_rest: Sequence[int]
    tallies_rest: Sequence[Sequence[int]] = ()
    """For each tally: so far -> least cost of any number that can still come."""

    def of(self, position: int, cost: int, state: State) -> int:
        """The least that a pruning through this state can cost."""
        last, buds, wounds, tallies = state
        counted = sum(map(getitem, self.tallies_rest, tallies)) if tallies else 0
        return (
            cost
            + counted
            + self.rest[position][last]
            + buds * self.bud_price
            + self.buds_rest[buds]
            + wounds * self.wound_price
            + self.wounds_rest[wounds]
        )


def bound_at(problem: Problem, bud_price: int, wound_price: int) -> Bound:
    """The bound for given prices of a bud and of a wound."""
    positions = len(problem.options)
    between = problem.between
    rest: list[list[int]] = [[]] * (positions + 1)
    rest[positions] = [between[last][positions + 1] for last in range(positions + 1)]
    for position in range(positions - 1, -1, -1):
        cheapest = [FORBIDDEN, FORBIDDEN]
        for (living, buds, wounds, _), option in problem.options[position]:
            cost = option.cost + buds * bud_price + wounds * wound_price
            if cost < cheapest[living]:
                cheapest[living] = cost
        mark = position + 1
        after = rest[mark]
        spur = cheapest[True] + after[mark]
        empty = cheapest[False]
        rest[position] = [
            min(spur + between[last][mark], empty + after[last]) for last in range(mark)
        ]
    return Bound(
        bud_price,
        wound_price,
        rest,
        _least_from(problem.buds, bud_price),
        _least_from(problem.wounds, wound_price),
        [_least_from(costs, 0) for costs in problem.tallies],
    )


def _least_from(costs: Sequence[int], price: int) -> list[int]:
    """For each amount so far, the least of cost minus price over it and all larger amounts."""
    least = [FORBIDDEN] * len(costs)
    best = FORBIDDEN
    for amount in range(len(costs) - 1, -1, -1):
        best = min(best, costs[amount] - amount * price)
        least[amount] = best
    return least


def best_bound(problem: Problem) -> Bound:
    """The highest bound that a short search over both prices finds.

    The best prices usually are the slopes of the totals' own cost tables, so these are tried
    first; then each price is refined while the other is held.
    """
    bound = max(
        (
            bound_at(problem, bud_price, wound_price)
            for bud_price in _slopes(problem.buds)
            for wound_price in _slopes(problem.wounds)
        ),
        key=_root,
    )
    held = bound.wound_price
    steepest = max(map(abs, _slopes(problem.buds)))
    if steepest:
        refined = _climb(lambda price: bound_at(problem, price, held), -steepest, steepest)
        bound = max(bound, refined, key=_root)
    return bound


def _root(bound: Bound) -> int:
    nothing_yet = (0,) * len(bound.tallies_rest)
    return bound.of(0, 0, (0, 0, 0, nothing_yet))


def _slopes(costs: Sequence[int]) -> list[int]:
    """What one more bud or wound can change the cost by, as prices; 0 among them."""
    slopes = {
        before - after
        for before, after in pairwise(costs)
        if before < FORBIDDEN and after < FORBIDDEN
    }
    return sorted({0} | {-slope for slope in slopes})


_GOLDEN = 0.618
_TRIES = 5


def _climb(bound_for: Callable[[int], Bound], low: int, high: int) -> Bound:
    """The highest root bound between two prices, by golden section: it is concave there."""
    inner = int((high - low) * _GOLDEN)
    left, right = bound_for(high - inner), bound_for(low + inner)
    best = max(left, right, key=_root)
    for _ in range(_TRIES):
        if _root(left) < _root(right):
            low, left = high - inner, right
            inner = int((high - low) * _GOLDEN)
            right = bound_for(low + inner)
        else:
            high, right = low + inner, left
            inner = int((high - low) * _GOLDEN)
            left = bound_for(high - inner)
        best = max(best, left, right, key=_root)
    return best
