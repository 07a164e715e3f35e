"""The cheapest way around a head: a line that closes on its first spur.

Which spur comes first is tried out: with it fixed, everything before it is empty, and the cost
of closing the ring depends on the last spur only, as at the end of a line.
"""

from __future__ import annotations

from dataclasses import replace

from pencilwood.plan.bound import FORBIDDEN, Problem
from pencilwood.plan.search import Found, search, search_below


def search_around(problem: Problem) -> Found:
    """The cheapest options of all positions around a head, taken together."""
    best = search(_from_first(problem, None))
    for first in range(len(problem.options)):
        better = search_below(_from_first(problem, first), best.cost)
        best = better or best
    return best


def _from_first(problem: Problem, first: int | None) -> Problem:
    """The problem when this position's spur comes first; None keeps no spur at all."""
    count = len(problem.options)
    empty_before = count if first is None else first
    options = [
        here
        if place > empty_before
        else [(key, option) for key, option in here if key[0] is (place == first)]
        for place, here in enumerate(problem.options)
    ]
    if first is None:
        return replace(problem, options=options)
    starts = [FORBIDDEN] * (count + 2)
    starts[first + 1] = 0
    between = [starts]
    for last, row in enumerate(problem.between[1:]):
        between.append([*row[:-1], problem.closing[first][last]])
    return replace(problem, options=options, between=between)
