"""A score looked up on the scoring sheet, as the browser does it: nothing but looking and adding.

`pencilwood.score.judge` reads the same score from the vine itself; tests hold the two together.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from functools import cached_property
from itertools import pairwise

from pencilwood.score.judge import Charge
from pencilwood.score.sheet import Sheet, Steps

UNBEARABLE = 10**9
"""Stands for the loss of a broken must-rule, which no score makes up for."""


class LookUp:
    """Adds up prunings of one vine from its scoring sheet."""

    def __init__(self, sheet: Sheet) -> None:
        self._sheet = sheet
        self._tables = {
            name: _Table(steps)
            for name, steps in (
                ("crowded", sheet.crowded),
                ("blank", sheet.blank),
                ("buds", sheet.buds),
                ("wounds", sheet.wounds),
            )
        }

        self._tallies = [_Table(one.steps) for one in sheet.tallies]

    @cached_property
    def _points(self) -> list[tuple[int, bool]]:
        ledger = self._sheet.ledger
        return [
            (sum(c.points for c in ledger[n]), any(c.must for c in ledger[n]))
            for n in range(len(ledger))
        ]

    @cached_property
    def least_lost(self) -> tuple[tuple[int, ...], ...]:
        """For each part, by its state, the points that it loses whatever is left elsewhere.

        Where that breaks a must-rule, more than any score can bear.
        """
        return tuple(
            tuple(min(self._weight(without), self._weight(living)) for without, living in piece)
            for piece in self._sheet.pieces
        )

    def _weight(self, number: int) -> int:
        points, breaks_must = self._points[number]
        return UNBEARABLE if breaks_must else points

    @cached_property
    def _alive(self) -> list[tuple[int, ...]]:
        """For each position the numbers of its living canes."""
        parts = self._sheet.parts
        return [
            tuple(
                n
                for n in parts.of_position(position.name)
                if parts.parts[n].is_cane and parts.parts[n].piece.is_alive
            )
            for position in parts.positions
        ]

    @cached_property
    def _canes(self) -> tuple[int, ...]:
        return tuple(n for n, part in enumerate(self._sheet.parts.parts) if part.is_cane)

    @cached_property
    def _large_wounds(self) -> tuple[tuple[int, int], ...]:
        """Parts that leave a large wound, each with the part it grows from."""
        sheet = self._sheet
        parent = sheet.parts.parent
        return tuple((n, parent[n]) for n in range(len(parent)) if sheet.makes_large_wound(n))

    def lists(self, states: Sequence[int]) -> list[int]:
        """Numbers of the charge lists that apply to these states of the parts."""
        sheet, tables = self._sheet, self._tables
        found: list[int] = []
        for piece, state, above in zip(sheet.pieces, states, sheet.parts.above, strict=True):
            without, with_living = piece[state]
            living = without != with_living and any(states[other] for other in above)
            found.append(with_living if living else without)
        spurs = [index for index, canes in enumerate(self._alive) if any(states[n] for n in canes)]
        x_mm, y_mm = sheet.x_mm, sheet.y_mm
        found.extend(tables["crowded"][x_mm[other] - x_mm[one]] for one, other in pairwise(spurs))
        if sheet.around_mm:
            found.extend(self._around(spurs))
        else:
            first, last = sheet.ends_mm
            marks = [first, *(y_mm[index] for index in spurs), last]
            found.extend(tables["blank"][other - one] for one, other in pairwise(marks))
        found.append(tables["buds"][sum(states[number] for number in self._canes)])
        found.append(tables["wounds"][self._wounds(states)])
        for tally, table in zip(sheet.tallies, self._tallies, strict=True):
            found.append(
                table[sum(c[state] for c, state in zip(tally.counts, states, strict=True))]
            )
        return found

    def _around(self, spurs: Sequence[int]) -> list[int]:
        """Around a head: the gap that closes the ring, and every stretch between two spurs."""
        x_mm, around_mm = self._sheet.x_mm, self._sheet.around_mm
        crowded, blank = self._tables["crowded"], self._tables["blank"]
        if len(spurs) < 2:
            return [blank[around_mm]]
        closing_mm = x_mm[spurs[0]] + around_mm - x_mm[spurs[-1]]
        gaps = [x_mm[other] - x_mm[one] for one, other in pairwise(spurs)]
        return [crowded[closing_mm], *(blank[gap_mm] for gap_mm in (*gaps, closing_mm))]

    def _wounds(self, states: Sequence[int]) -> int:
        return sum(
            states[number] == 0 and (below < 0 or states[below] > 0)
            for number, below in self._large_wounds
        )

    def charges(self, states: Sequence[int]) -> list[Charge]:
        """The charges themselves, without their places."""
        return [charge for number in self.lists(states) for charge in self._sheet.ledger[number]]

    def tally(self, states: Sequence[int]) -> tuple[int, bool]:
        """Points lost, and whether a must-rule is broken."""
        lost, must = 0, False
        for number in self.lists(states):
            points, breaks_must = self._points[number]
            lost += points
            must = must or breaks_must
        return lost, must

    def score(self, states: Sequence[int], plan_lost: int, pass_mark: int) -> int:
        """The score, as `pencilwood.score.judge.score` defines it."""
        lost, must = self.tally(states)
        points = max(0, 100 - max(0, lost - plan_lost))
        return min(points, pass_mark - 1) if must else points


class _Table:
    """A steps table: the row whose limit is the first not below the amount."""

    def __init__(self, steps: Steps) -> None:
        self._limits = [limit for limit, _ in steps[:-1] if limit is not None]
        self._entries = [entry for _, entry in steps]

    def __getitem__(self, amount: int) -> int:
        return self._entries[bisect_left(self._limits, amount)]
