"""Whole names, `R1b`, of wood in a crowd, where a letter alone would not tell whose it is.

Paper has no close-up, and what is printed beside a drawing names wood as a whole. So a letter that
stands nearer to other wood, or that has a line to it already, is printed as the whole name, with
a line to a dot on its own wood.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property

from pencilwood.drawing.ink.curves import STEP_MM
from pencilwood.drawing.ink.looks import POSITION_MM
from pencilwood.drawing.ink.points import XY, Point, is_inside
from pencilwood.drawing.names.letter_places import Beside, LetterPlace
from pencilwood.drawing.names.name_lines import SIGN_WIDE, along_line, cross, signs_of
from pencilwood.drawing.names.place_names import along_leads, along_names
from pencilwood.drawing.names.taken import CELL_MM, Taken
from pencilwood.drawing.names.whose_wood import WhoseWood
from pencilwood.drawing.plate import Plate
from pencilwood.drawing.wood.canes import BUD_ROOM_MM, bud_middle
from pencilwood.drawing.wood.stems import Stem
from pencilwood.vine.model import Growth

_MOST_NAMES = 24
"""A picture with more names than that is full, and looking for room costs seconds."""
DOT_MM = 3.5
"""Half as wide as the dot on the wood at the end of a line."""
_LINE_CLEAR_MM = 2.0
"""So far a line keeps from the wood that it passes."""
_CROSSED_MM = 60.0
"""What it costs a line to cross other wood, compared with being longer."""
_ALONG_MM = 12.0
"""What each place on a line over other wood costs too: one that lies along a cane seems its own."""
_BY_OTHER_MM = 300.0
"""What it costs to stand by other wood, nearer than by its own; less, the farther away that is."""
_CROSSED_LINE_MM = 120.0
_HIGHER_COSTS = 0.3
"""What it costs to begin higher on the wood, away from where it is cut."""
_FIRST_MM, _UP_STEP_MM, _FINE_MM = 8.0, 32.0, 80.0
"""How far up the first place for a dot is, and the steps to the next ones, lower down smaller."""
_FEW_FEET = 6
_LEAST_UP_MM, _MOST_UP_MM = 12.0, 700.0
# All of these are compared with the height of a letter.
_NEARER = 0.15
"""By so much another piece is nearer to a letter than its own wood when it seems to be its."""
_SIGN_ROOM = 0.42
_AWAYS = (0.9, 1.4, 2.0, 2.7, 3.5, 4.4, 5.4, 6.5, 8.0, 9.5)
_TURNS = tuple(step * math.pi / 30 for step in range(-13, 14))


def whole_names(
    plate: Plate, letter_mm: float, beside: Beside, letters: Mapping[str, LetterPlace]
) -> dict[str, LetterPlace]:
    """For wood that a text names and whose letter does not tell it, the place of its name."""
    if not beside.first:
        return {}
    naming = _Naming(plate, letter_mm, beside)
    unclear = [
        name for name in beside.first if name in letters and naming.is_unclear(name, letters[name])
    ]
    return dict(naming.places(unclear[:_MOST_NAMES], letters)) if unclear else {}


@dataclass(frozen=True)
class _Naming:
    plate: Plate
    letter_mm: float
    beside: Beside
    _lines: list[tuple[XY, XY]] = field(default_factory=list)

    @cached_property
    def _stems(self) -> Mapping[str, Stem]:
        return {**self.plate.stems, **self.beside.moved}

    @cached_property
    def _wood(self) -> WhoseWood:
        return WhoseWood(self._stems)

    @cached_property
    def _body(self) -> list[Sequence[XY]]:
        return [run.points for run in self.plate.looks.frame_wood(self.plate.vine).runs]

    def is_unclear(self, name: str, place: LetterPlace) -> bool:
        """Whether a letter does not tell by where it stands whose it is."""
        if place.is_tight or place.foot is not None or name in self.beside.moved:
            return True
        own_mm = other_mm = math.inf
        for away_mm, whose in self._wood.near(place.middle, math.ceil(self.letter_mm / CELL_MM)):
            if whose == name:
                own_mm = min(own_mm, away_mm)
            else:
                other_mm = min(other_mm, away_mm)
        return other_mm < own_mm - self.letter_mm * _NEARER

    def places(
        self, unclear: Sequence[str], letters: Mapping[str, LetterPlace]
    ) -> Iterator[tuple[str, LetterPlace]]:
        """Where each name has room, with the line that crosses least."""
        choices = {name: list(self._choices(name)) for name in unclear}
        signs = [place for name in unclear for _, place in choices[name]]
        taken = self._taken(
            at for one in signs for at in signs_of(one.middle, "L1a", self.letter_mm)
        )
        others = [one for name, one in letters.items() if name not in choices and not one.is_tight]
        marks = [one.middle for one in others]
        self._lines.extend((one.foot, one.middle) for one in others if one.foot is not None)
        for middle in marks:
            taken.add(middle, self.letter_mm * _SIGN_ROOM)
        # The wood with the fewest places goes first.
        for name in sorted(unclear, key=lambda name: len(choices[name])):
            place = self._best(name, choices[name], taken, marks)
            if place is None or place.foot is None:
                continue
            self._lines.append((place.foot, place.middle))
            for at in signs_of(place.middle, name, self.letter_mm):
                taken.add(at, self.letter_mm * _SIGN_ROOM)
                marks.append(at)
            for at in along_line(place):
                taken.add(at, _LINE_CLEAR_MM)
            yield name, place

    def _choices(self, name: str) -> Iterator[tuple[float, LetterPlace]]:
        """Places for a name with what its line costs where it crosses nothing."""
        stem = self._stems[name]
        feet = list(self._feet(name))
        # Wood with few places for a dot has lines in more directions.
        turns = _TURNS if len(feet) < _FEW_FEET else _TURNS[1::4]
        half_wide_mm = self.letter_mm * SIGN_WIDE * len(name) / 2
        for at_mm, foot in feet:
            heading = stem.curve.heading_rad(at_mm)
            for away in _AWAYS:
                for side in (1, -1):
                    for turn in turns:
                        aside = heading + side * (math.pi / 2 - turn)
                        # The line ends at the edge of the name, which is wider than high.
                        far_mm = away * self.letter_mm + half_wide_mm * abs(math.sin(aside))
                        cost_mm = far_mm + at_mm * _HIGHER_COSTS
                        yield cost_mm, LetterPlace(foot.go(aside, far_mm), foot)

    def _feet(self, name: str) -> Iterator[tuple[float, Point]]:
        """Where a dot lies on this wood alone, with how far up that is."""
        stem = self._stems[name]
        up_mm = min(stem.piece.length_mm, _MOST_UP_MM, self._joints_mm.get(name, math.inf))
        at_mm = _FIRST_MM
        while at_mm <= up_mm:
            foot = stem.curve.at(at_mm)
            if not self._wood.over(foot, DOT_MM) - {name}:
                yield at_mm, foot
            at_mm += _UP_STEP_MM if at_mm > _FINE_MM else _FIRST_MM

    @cached_property
    def _joints_mm(self) -> dict[str, float]:
        """How far up older wood something grows from it: what is above lies over the dot."""
        joints_mm: dict[str, float] = {}
        for position in self.plate.parts.positions:
            for piece in position.pieces:
                if piece.grows_from is not None:
                    name = position.name + piece.grows_from
                    at_mm = max(piece.at_mm, _LEAST_UP_MM)
                    joints_mm[name] = min(joints_mm.get(name, math.inf), at_mm)
        return joints_mm

    @cached_property
    def _lowest_y(self) -> float:
        """Below that stand the names of places, and the lines to them."""
        if self.plate.view is not None or self.plate.vine.form.growth is not Growth.UP:
            return math.inf
        feet = (self.plate.foot(one).y for one in self.plate.parts.positions)
        return max(feet) - self.letter_mm * _SIGN_ROOM

    def _best(
        self,
        name: str,
        choices: Iterable[tuple[float, LetterPlace]],
        taken: Taken,
        marks: Sequence[XY],
    ) -> LetterPlace | None:
        best, least_mm = None, math.inf
        for cost_mm, place in sorted(choices, key=lambda one: one[0]):
            if cost_mm >= least_mm:
                break
            if not self._has_room(name, place, taken):
                continue
            spare_mm = least_mm - cost_mm
            crossed_mm = self._crossed_mm(name, place, marks, spare_mm)
            if crossed_mm < spare_mm:
                best, least_mm = place, cost_mm + crossed_mm
        return best

    def _has_room(self, name: str, place: LetterPlace, taken: Taken) -> bool:
        least_mm = self.letter_mm * _SIGN_ROOM
        signs = signs_of(place.middle, name, self.letter_mm)
        if place.middle[1] > self._lowest_y:
            return False
        if not all(taken.has_room(at, least_mm) for at in signs):
            return False
        one = self.beside.within
        return one is None or all(
            one.left + least_mm < x < one.right - least_mm
            and one.top + least_mm < y < one.bottom - least_mm
            for x, y in signs
        )

    def _crossed_mm(
        self, name: str, place: LetterPlace, marks: Sequence[XY], most_mm: float
    ) -> float:
        """What it costs that a line crosses others and other wood.

        Where that is not less than `most_mm`, no end may be told, as where it may not go at all.
        """
        own = place.foot or place.middle, place.middle
        lines_mm = sum(cross(*own, *other) for other in self._lines) * _CROSSED_LINE_MM
        lines_mm += self._by_other_mm(name, place)
        clear_mm = self.letter_mm * _SIGN_ROOM
        crossed: set[str] = set()
        for at in (*along_line(place), place.middle):
            if any(math.dist(at, mark) < clear_mm for mark in marks) or self._is_on_body(at):
                return math.inf
            over = self._wood.over(at, _LINE_CLEAR_MM) - {name}
            crossed |= over
            lines_mm += len(over) * _ALONG_MM
            if lines_mm + len(crossed) * _CROSSED_MM >= most_mm:
                return math.inf
        return lines_mm + len(crossed) * _CROSSED_MM

    def _by_other_mm(self, name: str, place: LetterPlace) -> float:
        """What it costs that a name stands nearer to other wood than to its own."""
        own_mm = other_mm = self.letter_mm
        for at in signs_of(place.middle, name, self.letter_mm):
            for away_mm, whose in self._wood.near(at, math.ceil(self.letter_mm / CELL_MM)):
                if whose == name:
                    own_mm = min(own_mm, away_mm)
                else:
                    other_mm = min(other_mm, away_mm)
        is_nearer = other_mm < own_mm
        return _BY_OTHER_MM * (1 - other_mm / self.letter_mm) if is_nearer else 0.0

    def _is_on_body(self, at: XY) -> bool:
        return at[1] > self._body_top and any(is_inside(at, run) for run in self._body)

    @cached_property
    def _body_top(self) -> float:
        return min((y for run in self._body for _, y in run), default=math.inf)

    def _taken(self, asked_for: Iterable[XY]) -> Taken:
        """Wood, buds, bars and the names of places."""
        taken = Taken(self.letter_mm * _SIGN_ROOM * 1.1)
        asked = taken.asked_of(asked_for)
        for stem in self._stems.values():
            for number in range(int(stem.piece.length_mm / STEP_MM) + 1):
                bend = stem.curve.bends[number]
                if taken.cell(bend) in asked:
                    taken.add(bend, stem.half_mm(number * STEP_MM))
            for bud in range(1, stem.piece.buds + 1):
                taken.add(bud_middle(stem, bud), BUD_ROOM_MM)
        for at in (*self.beside.bars, *along_leads(self.plate)):
            taken.add(at, _LINE_CLEAR_MM)
        for at in along_names(self.plate):
            taken.add(at, POSITION_MM * _SIGN_ROOM)
        return taken
