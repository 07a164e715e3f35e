"""What can be done at one spur position, and the cheapest way to do it.

Within a position the charge of a piece depends on its own state and on whether living wood is
left above it, so the options are built from the last part of the position to the first.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from operator import add
from typing import NamedTuple

from pencilwood.score.sheet import Sheet

Cost = Callable[[int, int, bool], int | None]
"""(part, state, living wood above) -> cost, None when forbidden."""

Tallies = tuple[int, ...]
"""How many are left of each thing that the vine's form counts; empty for most forms."""

Key = tuple[bool, int, int, Tallies]
"""Whether a living bud is left; buds left; large wounds made; tallies."""


class Option(NamedTuple):
    """The cheapest way to reach a key, and the states of the parts it takes."""

    cost: int
    states: tuple[tuple[int, int], ...]


Options = dict[Key, Option]


class PositionOptions:
    """Works out the options of positions of one vine."""

    def __init__(self, sheet: Sheet, cost: Cost) -> None:
        self._sheet = sheet
        self._cost = cost
        self._children: dict[int, list[int]] = {}
        for number, below in enumerate(sheet.parts.parent):
            self._children.setdefault(below, []).append(number)
        self._none: Tallies = (0,) * len(sheet.tallies)
        self._of_parts: dict[tuple[int, bool], Options] = {}

    def of(self, position: str) -> Options:
        """Every (spur, buds, wounds) that can be reached here, at its least cost."""
        roots = [
            number
            for number in self._sheet.parts.of_position(position)
            if self._sheet.parts.parent[number] < 0
        ]
        return self._of_siblings(roots, False)

    def _of_siblings(self, siblings: Sequence[int], living_later: bool) -> Options:
        reached: Options = {(False, 0, 0, self._none): Option(0, ())}
        for number in reversed(siblings):
            grown: Options = {}
            by_flag = {flag: self._of_part(number, flag) for flag in (False, True)}
            for (living, buds, wounds, tallies), so_far in reached.items():
                choices = by_flag[living or living_later]
                for (also_living, more_buds, more_wounds, more), choice in choices.items():
                    key = (
                        living or also_living,
                        buds + more_buds,
                        wounds + more_wounds,
                        added(tallies, more),
                    )
                    keep_cheapest(grown, key, so_far.cost + choice.cost, so_far, choice)
            reached = grown
        return reached

    def _of_part(self, number: int, living_later: bool) -> Options:
        """The same of one part and what grows from it; looked up once, asked for many times."""
        # No wood above an outermost cane can be living.
        is_outermost = not (self._sheet.parts.above[number] or self._sheet.parts.carries[number])
        key = number, living_later and not is_outermost
        if key not in self._of_parts:
            self._of_parts[key] = self._worked_out(*key)
        return self._of_parts[key]

    def _worked_out(self, number: int, living_later: bool) -> Options:
        part = self._sheet.parts.parts[number]
        options: Options = {}
        self._add_gone(options, number, living_later)
        if part.is_cane:
            for buds in range(1, part.most + 1):
                cost = self._cost(number, buds, living_later)
                if cost is not None:
                    key = (part.piece.is_alive, buds, 0, self._counted(number, buds))
                    options[key] = Option(cost, ((number, buds),))
            return options
        for key, grown in self._of_siblings(self._children.get(number, ()), living_later).items():
            cost = self._cost(number, 1, key[0])
            if cost is not None:
                own = Option(cost, ((number, 1),))
                key = (*key[:3], added(key[3], self._counted(number, 1)))
                keep_cheapest(options, key, grown.cost + cost, grown, own)
        return options

    def _add_gone(self, options: Options, number: int, living_later: bool) -> None:
        """Taking the part off: everything that grows from it is gone too."""
        total = 0
        for fallen in (number, *self._sheet.parts.carries[number]):
            above = living_later and self._sheet.parts.parts[fallen].is_cane
            cost = self._cost(fallen, 0, above)
            if cost is None:
                return
            total += cost
        fallen_states = tuple((one, 0) for one in (number, *self._sheet.parts.carries[number]))
        wounds = int(self._sheet.makes_large_wound(number))
        options[False, 0, wounds, self._none] = Option(total, fallen_states)

    def _counted(self, number: int, state: int) -> Tallies:
        tallies = self._sheet.tallies
        return tuple(tally.counts[number][state] for tally in tallies) if tallies else self._none


def added(one: Tallies, other: Tallies) -> Tallies:
    """Both tallies together."""
    return tuple(map(add, one, other)) if one else one


def keep_cheapest(options: Options, key: Key, cost: int, one: Option, other: Option) -> None:
    """Put a joined option in, unless something as cheap is there already."""
    known = options.get(key)
    if known is None or cost < known.cost:
        options[key] = Option(cost, one.states + other.states)


def in_fixed_order(options: Mapping[Key, Option]) -> list[tuple[Key, Option]]:
    """The options in a fixed order, so that equal plans come out the same every time."""
    return sorted(options.items(), key=lambda item: (item[1].cost, item[0]))
