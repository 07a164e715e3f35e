"""Where each letter has the most room: beside its wood, or farther away with a line to it."""

from __future__ import annotations

import math
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property

from pencilwood.drawing.ink.curves import STEP_MM
from pencilwood.drawing.ink.looks import POSITION_MM
from pencilwood.drawing.ink.points import XY, Point, between, is_inside
from pencilwood.drawing.names.place_names import along_leads, along_names
from pencilwood.drawing.names.taken import CELL_MM, Cell, Choice, Taken, roomiest
from pencilwood.drawing.plate import Frame, Heights, Plate
from pencilwood.drawing.wood.canes import BUD_ROOM_MM, bud_middle
from pencilwood.drawing.wood.stems import Stem
from pencilwood.vine.model import Growth, Lean

_CANE_SHARES = (0.55, 0.75, 0.4, 1.5, 1.3, 1.7, 2.5, 2.3, 3.5, 4.5)
_OLD_MM = 70.0
_OLD_SHARES = (0.5, 0.7, 0.3, 0.85, 0.15, 1.3, 2.0)
"""Of so much of older wood, or of all of it where it is shorter: what is cut off is higher up."""
_CANE_FAR, _OLD_FAR = (0.55, 1.5, 2.5, 3.5, 4.5), (0.5, 0.85, 0.2, 1.3, 2.0)
"""From where along the wood a line may lead to a letter."""
_AWAY = (0.85, 1.1, 1.6, 2.2, 2.9, 3.7)
"""How far from the edge of its wood a letter with a line stands."""
_FARTHER = (*_AWAY, 4.6, 5.6, 6.8, 8.0, 9.5)
_TURNS = (0.0, math.pi / 5, -math.pi / 5)
_MOST_TIGHT = 40
"""With more letters without room the picture is full, and more slanted lines cost seconds."""
_MORE_TURNS = tuple(side * step * math.pi / 14 for step in range(7) for side in (1, -1))
"""Where no room is so near, a line goes more aslant; to wood that a text names, farther too."""
_ON_THE_WAY = (0.4, 0.7)
"""Where on its way such a line must meet no other wood."""
_LINE_ROOM_MM = 2.5
_BAR_MM = 3.0
_LEAD_STEPS = 12
_OVER_BODY_MM = 9.0
"""What it costs to stand on the arm."""
_NAME_HALF = 0.4
"""Half the height of the capitals of a name with a rim, compared with its letters."""
_SEEN_FROM_MM = 25.0
_NEAR_FOOT_MM = 3.0
"""What it costs to stand where other wood begins: it would seem to be the letter of that wood."""
_LEFT_ALONE_MM = 1.5
"""What it costs a letter that a text names to stand on the left: beside letters on the right it
would seem to be the neighbour's."""
# All of these are compared with the height of a letter.
_BESIDE = 0.4
_HALF = 0.5
_ENOUGH = 0.45
_TIGHT = 0.3
"""With less room than that around its middle a letter would lie on wood or on another one."""
_LINE_CLEAR = 0.4
"""How far a line keeps from the middle of any other letter."""
_CLEAR_OF_FOOT = 0.9
"""How far its middle is from where other wood begins on its own."""
_FOOT = 0.45
"""How far below its middle a letter reaches, with a rim."""


@dataclass(frozen=True)
class Beside:
    """What letters share a picture with, and which are wanted."""

    only: frozenset[str] | None = None
    """Stems that the text names; None for all of them."""
    bars: tuple[XY, ...] = ()
    """Places along the marks of cuts."""
    within: Frame | None = None
    """What is seen of the vine."""
    first: Collection[str] = ()
    """Stems that a text beside it names: their letters are the last to be left out."""
    moved: Mapping[str, Stem] = field(default_factory=dict)
    """Stems that run otherwise than they grew, as canes along the wire."""


_ALONE = Beside()


@dataclass(frozen=True)
class LetterPlace:
    """Where a letter stands."""

    middle: XY
    foot: XY | None = None
    """Where on its wood the line to it begins; None for a letter that is beside its wood."""
    is_tight: bool = False
    """Whether there is room for it nowhere."""


def place_letters(
    plate: Plate, letter_mm: float, beside: Beside = _ALONE
) -> dict[str, LetterPlace]:
    """For every stem that is wanted the place of its letter, with room for one that is so high."""
    placing = _Placing(plate, letter_mm, beside)
    return placing.places() if placing.wanted else {}


@dataclass(frozen=True)
class _Placing:
    plate: Plate
    letter_mm: float
    beside: Beside

    @cached_property
    def _stems(self) -> Mapping[str, Stem]:
        return {**self.plate.stems, **self.beside.moved}

    @cached_property
    def wanted(self) -> Mapping[str, Stem]:
        """The stems that get a letter."""
        only = self.beside.only
        return {name: one for name, one in self._stems.items() if only is None or name in only}

    def places(self) -> dict[str, LetterPlace]:
        """Beside the wood first; then those with no room there, farther away."""
        near = {name: list(self._beside(stem)) for name, stem in self.wanted.items()}
        taken = self._taken(place for each in near.values() for place, _ in each)
        found: dict[str, LetterPlace] = {}
        for name, choices in near.items():
            seen = [one for one in choices if self._is_seen(one[0])]
            middle, room_mm = roomiest(seen, taken) if seen else (choices[0][0], 0.0)
            found[name] = LetterPlace(middle, is_tight=room_mm < self.letter_mm * _TIGHT)
            taken.add(middle, self.letter_mm * _HALF)
        tight = [name for name, one in found.items() if one.is_tight]
        return found | dict(self._led(tight, found)) if tight else found

    def _led(
        self, tight: Sequence[str], found: Mapping[str, LetterPlace]
    ) -> Iterator[tuple[str, LetterPlace]]:
        """The same for letters without room, with a line to where there is some."""
        far = {name: self._far_choices(name, few=len(tight) <= _MOST_TIGHT) for name in tight}
        taken = self._taken(one.middle for each in far.values() for one in each)
        letters = [one.middle for name, one in found.items() if name not in far]
        for middle in letters:
            taken.add(middle, self.letter_mm * _HALF)
        for name in sorted(tight, key=lambda name: name not in self.beside.first):
            free = next((one for one in far[name] if self._is_free(one, taken, letters)), None)
            if free is not None:
                taken.add(free.middle, self.letter_mm * _HALF)
                letters.append(free.middle)
                for at in _on_lead(free):
                    taken.add(at, _LINE_ROOM_MM)
                yield name, free

    def _far_choices(self, name: str, *, few: bool) -> list[LetterPlace]:
        stem, aways = self._stems[name], _FARTHER if name in self.beside.first else _AWAY
        more = self._far(stem, aways, _MORE_TURNS) if few else ()
        return [*self._far(stem, _AWAY, _TURNS), *more]

    def _is_free(self, place: LetterPlace, taken: Taken, letters: Sequence[XY]) -> bool:
        least_mm = self.letter_mm * _TIGHT
        if place.foot is None or not self._is_seen(place.middle):
            return False
        if not taken.has_room(place.middle, least_mm):
            return False
        way = [between(place.foot, place.middle, share) for share in _ON_THE_WAY]
        if not all(taken.has_room(one, _LINE_ROOM_MM) for one in way):
            return False
        clear_mm = self.letter_mm * _LINE_CLEAR
        if any(math.dist(at, letter) < clear_mm for at in _on_lead(place) for letter in letters):
            return False
        # A line may not come out below the arm, where names of places stand.
        line = (place.middle, *_on_lead(place))
        return not any(is_inside(at, run) for at in line for run in self._body)

    def _is_seen(self, middle: XY) -> bool:
        """Whether a letter there is inside the picture."""
        one, aside = self.beside.within, self.letter_mm * _HALF
        return one is None or (
            one.left + aside < middle[0] < one.right - aside
            and one.top + aside < middle[1] < one.bottom - aside
        )

    @cached_property
    def _body(self) -> list[Sequence[XY]]:
        return [run.points for run in self.plate.looks.frame_wood(self.plate.vine).runs]

    def _taken(self, asked_for: Iterable[XY]) -> Taken:
        """Wood, buds and names around the places that will be asked for."""
        taken = Taken(self.letter_mm * _ENOUGH)
        asked = taken.asked_of(asked_for)
        rows = [row for _, row in asked]
        heights = (min(rows) - 1) * CELL_MM, (max(rows) + 2) * CELL_MM
        for stem in self._stems.values():
            _take(stem, taken, asked, heights)
        for at in self.beside.bars:
            taken.add(at, _BAR_MM)
        for middle in along_names(self.plate):
            taken.add(middle, POSITION_MM * _NAME_HALF)
        for at in along_leads(self.plate):
            taken.add(at, _BAR_MM)
        return taken

    def _beside(self, stem: Stem) -> Iterator[Choice]:
        """Places for a letter."""
        for rank, at in enumerate(_along(stem, _CANE_SHARES, _OLD_SHARES)):
            if at > stem.piece.length_mm:
                continue
            for side in (1, -1):
                off = stem.half_mm(at) + self.letter_mm * _BESIDE
                place = self._above_arm(stem, stem.curve.beside(at, side * off))
                cost_mm = rank * 0.6
                if side < 0 and self.beside.only is not None:
                    cost_mm += _LEFT_ALONE_MM
                if self._is_over_body(stem, place):
                    cost_mm += _OVER_BODY_MM
                if self._is_near_foot(stem, place):
                    cost_mm += _NEAR_FOOT_MM
                yield place, cost_mm

    def _far(
        self, stem: Stem, aways: Sequence[float], turns: Sequence[float]
    ) -> Iterator[LetterPlace]:
        """Places for a letter with a line, the nearest first."""
        along = [at for at in _along(stem, _CANE_FAR, _OLD_FAR) if at <= stem.piece.length_mm]
        for away in aways:
            for at in along:
                heading = stem.curve.heading_rad(at)
                for side in (1, -1):
                    foot = Point(*stem.curve.beside(at, side * stem.half_mm(at)))
                    for turn in turns:
                        aside = heading + side * (math.pi / 2 - turn)
                        yield LetterPlace(foot.go(aside, away * self.letter_mm), foot)

    def _is_over_body(self, stem: Stem, place: XY) -> bool:
        """Whether the letter of wood that hangs off an arm would lie on the arm."""
        if self.plate.vine.form.growth is Growth.DOWN or stem.piece.lean is not Lean.DOWN:
            return False
        return any(is_inside(place, run) for run in self._body)

    def _is_near_foot(self, stem: Stem, place: XY) -> bool:
        """Whether something that grows from this wood begins there."""
        far_mm = self.letter_mm * _CLEAR_OF_FOOT
        return any(math.dist(place, foot) < far_mm for foot in self._begin_on.get(stem.name, ()))

    @cached_property
    def _begin_on(self) -> dict[str, list[XY]]:
        """By the name of a piece where all that grows from it begins."""
        return {
            position.name + below: [
                _beginning(self._stems[position.name + one.letter])
                for one in position.pieces
                if one.grows_from == below
            ]
            for position in self.plate.parts.positions
            for below in {one.grows_from for one in position.pieces if one.grows_from}
        }

    def _above_arm(self, stem: Stem, place: XY) -> XY:
        """The place, lifted where the arm would cut the letter of wood shorter than it is high."""
        if self.plate.vine.form.growth is not Growth.UP:
            return place
        x, y = place
        arm_y = self._feet[stem.name]
        lowest_y = arm_y - self.letter_mm * _FOOT
        return (x, lowest_y) if lowest_y < y < arm_y else place

    @cached_property
    def _feet(self) -> dict[str, float]:
        """How high the position of each stem is."""
        return {
            position.name + piece.letter: self.plate.foot(position).y
            for position in self.plate.parts.positions
            for piece in position.pieces
        }


def _on_lead(place: LetterPlace) -> Iterator[Point]:
    """Places along the line to a letter."""
    foot = place.foot or place.middle
    for step in range(1, _LEAD_STEPS):
        yield between(foot, place.middle, step / _LEAD_STEPS)


def _beginning(stem: Stem) -> XY:
    """Where it is seen to begin, at the edge of thick wood."""
    return stem.curve.at(min(_SEEN_FROM_MM, stem.piece.length_mm))


def _along(stem: Stem, of_cane: Sequence[float], of_old: Sequence[float]) -> list[float]:
    if stem.piece.is_cane:
        return [stem.piece.internode_mm * share for share in of_cane]
    return [min(stem.piece.length_mm, _OLD_MM) * share for share in of_old]


def _take(stem: Stem, taken: Taken, asked: Collection[Cell], heights: Heights) -> None:
    """The wood and the buds of a stem; `heights` are around all letters, most wood is above."""
    top, bottom = heights
    bends = stem.curve.bends
    for number in range(int(stem.piece.length_mm / STEP_MM) + 1):
        if top < bends[number][1] < bottom and taken.cell(bends[number]) in asked:
            taken.add(bends[number], stem.half_mm(number * STEP_MM))
    for bud in range(1, stem.piece.buds + 1):
        # Its middle is less than a cell away from the wood.
        y = bends[min(int(bud * stem.piece.internode_mm / STEP_MM), len(bends) - 1)][1]
        if top - CELL_MM < y < bottom + CELL_MM:
            taken.add(bud_middle(stem, bud), BUD_ROOM_MM)
