"""A score looked up on the scoring sheet, as the browser does it: nothing but looking and adding.

`pencilwood.score.judge` reads the same score from the vine itself; tests hold the two together.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator, Sequence
from functools import cached_property
from itertools import pairwise

from pencilwood.score.judge import Charge
from pencilwood.score.sheet import Sheet, Steps


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

    @cached_property
    def _points(self) -> list[tuple[int, bool]]:
        ledger = self._sheet.ledger
        return [
            (sum(c.points for c in ledger[n]), any(c.must for c in ledger[n]))
            for n in range(len(ledger))
        ]

    def lists(self, states: Sequence[int]) -> Iterator[int]:
        """Numbers of the charge lists that apply to these states of the parts."""
        sheet, parts = self._sheet, self._sheet.parts
        for number, state in enumerate(states):
            living = any(states[other] for other in parts.above[number])
            yield sheet.pieces[number][state][living]
        spurs = [
            index
            for index, position in enumerate(parts.positions)
            if any(
                states[n] and parts.parts[n].is_cane and parts.parts[n].piece.is_alive
                for n in parts.of_position(position.name)
            )
        ]
        for one, other in pairwise(spurs):
            yield self._tables["crowded"][sheet.x_mm[other] - sheet.x_mm[one]]
        first, last = sheet.ends_mm
        marks = [first, *(sheet.y_mm[index] for index in spurs), last]
        for one, other in pairwise(marks):
            yield self._tables["blank"][other - one]
        buds = sum(s for s, part in zip(states, parts.parts, strict=True) if part.is_cane)
        yield self._tables["buds"][buds]
        yield self._tables["wounds"][self._wounds(states)]

    def _wounds(self, states: Sequence[int]) -> int:
        parent = self._sheet.parts.parent
        return sum(
            1
            for number, state in enumerate(states)
            if state == 0
            and self._sheet.makes_large_wound(number)
            and (parent[number] < 0 or states[parent[number]])
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
