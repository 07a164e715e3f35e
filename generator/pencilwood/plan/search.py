"""The cheapest way along a line of positions, found exactly.

Best-first search. A state is (next position, last spur, buds, large wounds and tallies so far).
The bound prices each bud and each wound (a Lagrange multiplier each), which makes it so tight
that few states are ever opened; it never exceeds the true cost, so the first finished state is
a cheapest one.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from heapq import heappop, heappush
from itertools import count

from pencilwood.plan.bound import FORBIDDEN, Problem, State, best_bound
from pencilwood.plan.options import Option, added

Path = tuple["Path", Option] | None


@dataclass(frozen=True)
class Found:
    """A cheapest pruning: its cost, and the option taken at each position."""

    cost: int
    options: list[Option]


def search(problem: Problem) -> Found:
    """The cheapest options of all positions, taken together. Something must be allowed."""
    found = search_below(problem, FORBIDDEN)
    if found is None:
        raise AssertionError("a vine can always be pruned to nothing")
    return found


def search_below(problem: Problem, most: int) -> Found | None:
    """The same, if it costs less than `most`."""
    bound = best_bound(problem)
    positions = len(problem.options)
    order = count()
    start: State = (0, 0, 0, (0,) * len(problem.tallies))
    path: Path = None
    # Among equal bounds the state furthest along the line comes first.
    heap = [(bound.of(0, 0, start), 0, next(order), 0, start, path)]
    seen: set[tuple[int, State]] = set()
    # A state that many ways lead to waits in the heap once, unless a cheaper way is found.
    cheapest: dict[tuple[int, State], int] = {}
    while heap:
        _, behind, _, cost, state, path = heappop(heap)
        position = -behind
        if position > positions:
            return Found(cost, _unroll(path))
        if (position, state) in seen:
            continue
        seen.add((position, state))
        for more, after, option in _steps(problem, position, state):
            total = cost + more
            if total >= cheapest.get((position + 1, after), FORBIDDEN):
                continue
            cheapest[position + 1, after] = total
            lower = total if position == positions else bound.of(position + 1, total, after)
            if lower < most:
                longer = path if option is None else (path, option)
                heappush(heap, (lower, behind - 1, next(order), total, after, longer))
    return None


def _steps(
    problem: Problem, position: int, state: State
) -> Iterator[tuple[int, State, Option | None]]:
    """What can come next: added cost, state after it, and the option taken."""
    last, buds, wounds, tallies = state
    if position == len(problem.options):
        closing = problem.between[last][position + 1]
        totals = problem.buds[buds] + problem.wounds[wounds] + problem.cost_of_tallies(tallies)
        yield closing + totals, state, None
        return
    mark = position + 1
    joined = problem.between[last][mark]
    for (living, more_buds, more_wounds, more), option in problem.options[position]:
        after = (
            mark if living else last,
            buds + more_buds,
            wounds + more_wounds,
            added(tallies, more),
        )
        yield option.cost + (joined if living else 0), after, option


def _unroll(path: Path) -> list[Option]:
    options: list[Option] = []
    while path is not None:
        path, option = path
        options.append(option)
    return options[::-1]
