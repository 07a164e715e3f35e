"""The cheapest pruning of a vine that breaks no must-rule, found exactly.

The scoring sheet's charges become costs here; `search` finds the cheapest way along the line,
`ring` the cheapest one around a head.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import cached_property

from pencilwood.plan.bound import FORBIDDEN, Problem
from pencilwood.plan.options import Cost, Key, Option, PositionOptions, in_fixed_order
from pencilwood.plan.ring import search_around
from pencilwood.plan.search import search
from pencilwood.score.judge import Charge, Judged
from pencilwood.score.sheet import Sheet, Steps, Weigh
from pencilwood.vine.measures import away_mm
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
    return Solver(sheet).best(weigh)


Costs = tuple[int, ...]
Ranked = Sequence[tuple[Key, Option]]


class Solver:
    """Prunes one vine by one weighing after the other.

    Somebody who does not know a rule sees most positions as everybody does, so what can be done at
    a position is worked out once for all weighings that price its wood alike.
    """

    def __init__(self, sheet: Sheet) -> None:
        self.sheet = sheet
        self.judged: Judged = {}
        """For who judges the prunings found; see `judge`."""
        self._known: dict[tuple[str, Costs], Ranked] = {}

    def best(self, weigh: Weigh = points_only) -> WoodLeft:
        """The wood left by the cheapest pruning."""
        problem = self.pose(weigh)
        found = search_around(problem) if problem.closing else search(problem)
        states = [0] * len(self.sheet.parts.parts)
        for option in found.options:
            for number, state in option.states:
                states[number] = state
        return WoodLeft(self.sheet.parts, tuple(states))

    def pose(self, weigh: Weigh) -> Problem:
        """Look up every cost of the sheet."""
        sheet = self.sheet
        costs = [_or_forbidden(weigh(sheet.ledger[n])) for n in range(len(sheet.ledger))]
        options = self._options(costs)
        most_buds = sum(max((key[1] for key, _ in here), default=0) for here in options)
        most_wounds = sum(max((key[2] for key, _ in here), default=0) for here in options)
        return Problem(
            options=options,
            between=_between_around(sheet, costs) if sheet.around_mm else _between(sheet, costs),
            buds=_by_amount(sheet.buds, costs, most_buds),
            wounds=_by_amount(sheet.wounds, costs, most_wounds),
            tallies=tuple(
                _by_amount(one.steps, costs, sum(map(max, one.counts))) for one in sheet.tallies
            ),
            closing=_closing(sheet, costs) if sheet.around_mm else (),
        )

    def _options(self, costs: Sequence[int]) -> list[Ranked]:
        """By position: what can be done there."""
        finder = PositionOptions(self.sheet, _piece_cost(self.sheet, costs, self._leaning))
        found: list[Ranked] = []
        for name, met in self._met:
            key = name, tuple([costs[number] for number in met])
            if key not in self._known:
                self._known[key] = in_fixed_order(finder.of(name))
            found.append(self._known[key])
        return found

    @cached_property
    def _met(self) -> list[tuple[str, list[int]]]:
        """Each position, and the charge lists that its wood can meet."""
        parts = self.sheet.parts
        pieces = self.sheet.pieces
        return [
            (
                position.name,
                sorted({n for number in parts.of_position(position.name)
                        for lists in pieces[number] for n in lists}),
            )
            for position in parts.positions
        ]  # fmt: skip

    @cached_property
    def _leaning(self) -> list[int]:
        """For each part what speaks for leaving a bud of it, where the score is the same."""
        # Spurs are kept rather than dropped, near the arm rather than far.
        vine = self.sheet.parts.vine
        return [
            min(25, max(0, away_mm(vine, part)) // 20) - 60 if part.is_cane else 0
            for part in self.sheet.parts.parts
        ]


def _piece_cost(sheet: Sheet, costs: Sequence[int], leaning: Sequence[int]) -> Cost:
    parts = sheet.parts.parts

    def cost(number: int, state: int, living_above: bool) -> int | None:
        found = costs[sheet.pieces[number][state][living_above]]
        if found >= FORBIDDEN:
            return None
        if state == 0 or not parts[number].is_cane:
            return found
        # The second bud goes to the thicker cane.
        second_bud = 2 * parts[number].piece.thickness_mm if state == 1 else 0
        return found + leaning[number] + second_bud

    return cost


def _between(sheet: Sheet, costs: Sequence[int]) -> list[list[int]]:
    xs, ys = sheet.x_mm, sheet.y_mm
    first, last = sheet.ends_mm
    marks = [first, *ys, last]
    longest_mm = sheet.parts.vine.line_length_mm
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


def _between_around(sheet: Sheet, costs: Sequence[int]) -> list[list[int]]:
    """Neighbours around a head; what closes the ring depends on the first spur as well."""
    gap = _gap_costs(sheet, costs)
    count, xs = len(sheet.x_mm), sheet.x_mm
    blank = _by_amount(sheet.blank, costs, sheet.around_mm)
    table = [[FORBIDDEN, *[0] * count, blank[sheet.around_mm]]]
    for row in range(count):
        after = [gap[xs[column] - xs[row]] for column in range(row + 1, count)]
        table.append([FORBIDDEN] * (row + 2) + [*after, 0])
    return table


def _closing(sheet: Sheet, costs: Sequence[int]) -> list[list[int]]:
    """First spur -> last spur -> cost of the stretch from the last on to the first again."""
    gap = _gap_costs(sheet, costs)
    blank = _by_amount(sheet.blank, costs, sheet.around_mm)
    return [
        [
            blank[sheet.around_mm] if last == first else gap[sheet.around_mm - abs(at - start)]
            for last, at in enumerate(sheet.x_mm)
        ]
        for first, start in enumerate(sheet.x_mm)
    ]


def _gap_costs(sheet: Sheet, costs: Sequence[int]) -> list[int]:
    blank = _by_amount(sheet.blank, costs, sheet.around_mm)
    crowded = _by_amount(sheet.crowded, costs, sheet.around_mm)
    return [one + other for one, other in zip(blank, crowded, strict=True)]


def _by_amount(table: Steps, costs: Sequence[int], most: int) -> list[int]:
    """The cost of every amount from 0 to `most`."""
    spread: list[int] = []
    for limit, entry in table:
        upto = most if limit is None else min(limit, most)
        spread.extend([costs[entry]] * (upto + 1 - len(spread)))
    return spread


def _or_forbidden(cost: int | None) -> int:
    return FORBIDDEN if cost is None else cost
