"""Whose wood is near a place of a drawing, and whose a line would cross."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

from pencilwood.drawing.ink.curves import STEP_MM
from pencilwood.drawing.ink.points import XY
from pencilwood.drawing.names.taken import Cell, Taken
from pencilwood.drawing.wood.stems import Stem

_HIDDEN_STEPS = 4


@dataclass(frozen=True)
class WhoseWood:
    """Points along all wood, quick to ask by neighbourhood whose is near."""

    stems: Mapping[str, Stem]

    @cached_property
    def _cells(self) -> dict[Cell, list[tuple[float, float, float, str]]]:
        cells: dict[Cell, list[tuple[float, float, float, str]]] = defaultdict(list)
        for name, stem in self.stems.items():
            # Where it begins, the wood that it grows from is seen.
            first = 0 if stem.piece.grows_from is None else _HIDDEN_STEPS
            for number in range(first, int(stem.piece.length_mm / STEP_MM) + 1):
                x, y = stem.curve.bends[number]
                cells[Taken.cell((x, y))].append((x, y, stem.half_mm(number * STEP_MM), name))
        return cells

    def near(self, at: XY, reach: int = 1) -> Iterator[tuple[float, str]]:
        """How far the wood around a place is from its edge on, and whose it is."""
        column, row = Taken.cell(at)
        for across in range(column - reach, column + reach + 1):
            for down in range(row - reach, row + reach + 1):
                for x, y, half_mm, name in self._cells.get((across, down), ()):
                    yield math.hypot(x - at[0], y - at[1]) - half_mm, name

    def over(self, at: XY, clear_mm: float) -> set[str]:
        """Whose wood a line that passes there would cross."""
        return {name for away_mm, name in self.near(at) if away_mm < clear_mm}
