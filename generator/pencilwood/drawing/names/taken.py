"""What room is left beside wood and names that have their place already."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterable, Sequence

from pencilwood.drawing.ink.points import XY

CELL_MM = 40.0

Circle = tuple[float, float, float]
"""Its middle, x and y, and its radius."""
Cell = tuple[int, int]
Choice = tuple[XY, float]
"""A place for a letter, and what it costs to stand there."""


class Taken:
    """Places where wood or a name is already, quick to ask by neighbourhood."""

    def __init__(self, enough_mm: float) -> None:
        """`enough_mm` is so much room that more makes a place no better."""
        self.enough_mm = enough_mm
        self._cells: dict[Cell, list[Circle]] = defaultdict(list)
        self._largest_mm = 0.0

    def add(self, middle: XY, radius_mm: float) -> None:
        """Take a circle."""
        self._cells[self.cell(middle)].append((*middle, radius_mm))
        self._largest_mm = max(self._largest_mm, radius_mm)

    def room_mm(self, middle: XY, wanted_mm: float) -> float:
        """Distance to the nearest taken place, `enough_mm` at most.

        Where it is not more than `wanted_mm`, any distance that is not may be told.
        """
        # What is farther away leaves room enough, whatever its size.
        column, row = self.cell(middle)
        x, y = middle
        far_mm = min(self._largest_mm + self.enough_mm, 2 * CELL_MM)
        room_mm = self.enough_mm
        cells, hypot = self._cells, math.hypot
        rows = _cells_within(y, row, far_mm)
        for across in _cells_within(x, column, far_mm):
            for down in rows:
                for at_x, at_y, radius_mm in cells.get((across, down), ()):
                    here_mm = hypot(x - at_x, y - at_y) - radius_mm
                    if here_mm < room_mm:
                        room_mm = here_mm
                if room_mm <= wanted_mm:
                    return room_mm
        return room_mm

    def has_room(self, middle: XY, wanted_mm: float) -> bool:
        """Whether nothing is nearer than so much."""
        own = column, row = self.cell(middle)
        # Where there is no room, mostly something in the same cell is in the way.
        if self._is_in_the_way(own, middle, wanted_mm):
            return False
        x, y = middle
        far_mm = min(self._largest_mm + wanted_mm, 2 * CELL_MM)
        rows = _cells_within(y, row, far_mm)
        return not any(
            self._is_in_the_way((across, down), middle, wanted_mm)
            for across in _cells_within(x, column, far_mm)
            for down in rows
        )

    def _is_in_the_way(self, cell: Cell, middle: XY, wanted_mm: float) -> bool:
        x, y = middle
        for at_x, at_y, radius_mm in self._cells.get(cell, ()):
            if math.hypot(x - at_x, y - at_y) - radius_mm < wanted_mm:
                return True
        return False

    def asked_of(self, middles: Iterable[XY]) -> set[Cell]:
        """The cells that are looked at when these places are asked for."""
        return {
            (across, down)
            for column, row in set(map(self.cell, middles))
            for across in range(column - 2, column + 3)
            for down in range(row - 2, row + 3)
        }

    @staticmethod
    def cell(middle: XY) -> Cell:
        """The cell that a place is in."""
        x, y = middle
        return math.floor(x / CELL_MM), math.floor(y / CELL_MM)


def _cells_within(middle: float, cell: int, far_mm: float) -> range:
    """The cells that begin or end so near, of the two on each side."""
    first = max(cell - 2, math.floor((middle - far_mm) / CELL_MM))
    last = min(cell + 2, math.floor((middle + far_mm) / CELL_MM))
    return range(first, last + 1)


def roomiest(choices: Sequence[Choice], taken: Taken) -> tuple[XY, float]:
    """The first of the places with the most room for what they cost, and its room."""
    best, most_mm, its_cost_mm = choices[0][0], -math.inf, 0.0
    for place, cost_mm in choices:
        if most_mm >= taken.enough_mm - cost_mm:
            continue  # It cannot have more.
        room_mm = taken.room_mm(place, most_mm + cost_mm)
        if room_mm - cost_mm > most_mm:
            best, most_mm, its_cost_mm = place, room_mm - cost_mm, cost_mm
    return best, most_mm + its_cost_mm
