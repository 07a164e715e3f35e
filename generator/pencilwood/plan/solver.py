"""The cheapest pruning of a vine that breaks no must-rule, found exactly.

Best-first search along the line of positions. A state is (next position, last spur, buds so
far, large wounds so far). The bound prices each bud and each wound (a Lagrange multiplier
each), which makes it so tight that few states are ever opened; it never exceeds the true cost,
so the first finished state is a cheapest one.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from heapq import heappop, heappush
from itertools import count

from pencilwood.plan.bound import FORBIDDEN, Problem, best_bound
from pencilwood.plan.options import Cost, Option, PositionOptions, in_fixed_order
from pencilwood.score.judge import Charge
from pencilwood.score.sheet import Sheet, Steps, Weigh
from pencilwood.vine.wood import WoodLeft

POINT = 1_000_000_000
"""Cost of one point; what is smaller only decides between prunings that score the same."""


def points_only(charges: tuple[Charge, ...]) -> int | None:
    """The plan's own weighing: points, and no must-rule broken."""
    if any(charge.must for charge in charges):
        return None
    return POINT * sum(charge.points for charge in charges)


def solve(sheet: Sheet, weigh: Weigh = points_only) -> WoodLeft:
    """The wood left by the cheapest pruning. Something can always be left: nothing at all."""
    problem = pose(sheet, weigh)
    states = [0] * len(sheet.parts.parts)
    for option in search(problem):
        for number, state in option.states:
            states[number] = state
    return WoodLeft(sheet.parts, tuple(states))


def pose(sheet: Sheet, weigh: Weigh) -> Problem:
    """Look up every cost of a sheet."""
    costs = [_or_forbidden(weigh(sheet.ledger[n])) for n in range(len(sheet.ledger))]
    finder = PositionOptions(sheet, _piece_cost(sheet, costs))
    options = [in_fixed_order(finder.of(position.name)) for position in sheet.parts.positions]
    most_buds = sum(max((key[1] for key, _ in here), default=0) for here in options)
    most_wounds = sum(max((key[2] for key, _ in here), default=0) for here in options)
    return Problem(
        options=options,
        between=_between(sheet, costs),
        buds=_by_amount(sheet.buds, costs, most_buds),
        wounds=_by_amount(sheet.wounds, costs, most_wounds),
    )


def _piece_cost(sheet: Sheet, costs: Sequence[int]) -> Cost:
    parts = sheet.parts.parts
    # Between prunings of equal score the plan keeps spurs rather than drop them, near the arm
    # rather than high, and gives the second bud to the thicker cane.
    leaning = [
        min(25, max(0, part.bud_height_mm(1)) // 20) - 60 if part.is_cane else 0 for part in parts
    ]

    def cost(number: int, state: int, living_above: bool) -> int | None:
        found = costs[sheet.pieces[number][state][living_above]]
        if found >= FORBIDDEN:
            return None
        if state == 0 or not parts[number].is_cane:
            return found
        second_bud = 2 * parts[number].piece.thickness_mm if state == 1 else 0
        return found + leaning[number] + second_bud

    return cost


def _between(sheet: Sheet, costs: Sequence[int]) -> list[list[int]]:
    xs, ys = sheet.x_mm, sheet.y_mm
    first, last = sheet.ends_mm
    marks = [first, *ys, last]
    longest_mm = sheet.parts.vine.arm_length_mm
    blank_costs = _by_amount(sheet.blank, costs, longest_mm)
    crowded_costs = _by_amount(sheet.crowded, costs, longest_mm)
    table: list[list[int]] = []
    for row, mark in enumerate(marks[:-1]):
        costs_after: list[int] = []
        for column in range(row + 1, len(marks)):
            blank = blank_costs[marks[column] - mark]
            inside = row > 0 and column < len(marks) - 1
            crowded = crowded_costs[xs[column - 1] - xs[row - 1]] if inside else 0
            costs_after.append(blank + crowded)
        table.append([FORBIDDEN] * (row + 1) + costs_after)
    return table


def _by_amount(table: Steps, costs: Sequence[int], most: int) -> list[int]:
    """The cost of every amount from 0 to `most`."""
    spread: list[int] = []
    for limit, entry in table:
        upto = most if limit is None else min(limit, most)
        spread.extend([costs[entry]] * (upto + 1 - len(spread)))
    return spread


def _or_forbidden(cost: int | None) -> int:
    return FORBIDDEN if cost is None else cost


State = tuple[int, int, int]
"""Mark of the last spur (0 is the line's left end), buds so far, large wounds so far."""

Path = tuple["Path", Option] | None


def search(problem: Problem) -> list[Option]:
    """The cheapest option at each position, taken together."""
    bound = best_bound(problem)
    positions = len(problem.options)
    order = count()
    start: State = (0, 0, 0)
    path: Path = None
    # Among equal bounds the state furthest along the line comes first.
    heap = [(bound.of(0, 0, start), 0, next(order), 0, start, path)]
    seen: set[tuple[int, State]] = set()
    while heap:
        _, behind, _, cost, state, path = heappop(heap)
        position = -behind
        if position > positions:
            return _unroll(path)
        if (position, state) in seen:
            continue
        seen.add((position, state))
        for added, after, option in _steps(problem, position, state):
            total = cost + added
            lower = total if position == positions else bound.of(position + 1, total, after)
            if lower < FORBIDDEN:
                longer = path if option is None else (path, option)
                heappush(heap, (lower, behind - 1, next(order), total, after, longer))
    raise AssertionError("a vine can always be pruned to nothing")


def _steps(
    problem: Problem, position: int, state: State
) -> Iterator[tuple[int, State, Option | None]]:
    """What can come next: added cost, state after it, and the option taken."""
    last, buds, wounds = state
    if position == len(problem.options):
        closing = problem.between[last][position + 1]
        yield closing + problem.buds[buds] + problem.wounds[wounds], state, None
        return
    mark = position + 1
    joined = problem.between[last][mark]
    for (living, more_buds, more_wounds), option in problem.options[position]:
        after = (mark if living else last, buds + more_buds, wounds + more_wounds)
        yield option.cost + (joined if living else 0), after, option


def _unroll(path: Path) -> list[Option]:
    options: list[Option] = []
    while path is not None:
        path, option = path
        options.append(option)
    return options[::-1]
