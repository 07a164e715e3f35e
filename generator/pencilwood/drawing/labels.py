"""The letters beside the wood, where the most room is: nothing stands on the wood."""

from __future__ import annotations

import math
from collections.abc import Collection, Iterator, Sequence

from pencilwood.drawing.canes import BUD_ROOM_MM, bud_middle
from pencilwood.drawing.curves import STEP_MM
from pencilwood.drawing.looks import INK, PAPER, POSITION_MM
from pencilwood.drawing.place_names import named, named_above
from pencilwood.drawing.plate import Heights, Plate
from pencilwood.drawing.points import XY, Point
from pencilwood.drawing.shapes import Attributes, Words
from pencilwood.drawing.stems import Stem
from pencilwood.drawing.taken import CELL_MM, ENOUGH_MM, Cell, Taken
from pencilwood.vine.model import Growth

LETTER = "pw-letter"
"""The class of the letters."""
LETTER_MM = 30.0
_CANE_SHARES = (0.55, 0.75, 0.4, 1.5, 1.3, 1.7, 2.5, 2.3, 3.5, 4.5)
_OLD_MM = 70.0
_OLD_SHARES = (0.5, 0.7, 0.3, 0.85, 0.15, 1.3, 2.0)
"""Of so much of older wood, or of all of it where it is shorter: what is cut off is higher up."""

_FOOT_SHARE = 0.6
"""How far below its middle a letter reaches, with a rim, compared with its height."""

Choice = tuple[XY, float]
"""A place for a letter, and what it costs to stand there."""


def place_letters(plate: Plate) -> dict[str, XY]:
    """For every stem the middle of its letter, where the most room is beside its lower end."""
    if not plate.stems:
        return {}
    taken = Taken()
    feet = {one.name: plate.foot(one).y for one in plate.parts.positions}
    up = plate.vine.form.growth is Growth.UP
    choices = {
        stem.name: [
            (_above_arm(place, feet[stem.name[: -len(stem.piece.letter)]]) if up else place, cost)
            for place, cost in _beside(stem)
        ]
        for stem in plate.stems.values()
    }
    asked = taken.asked_of(place for each in choices.values() for place, _ in each)
    rows = [row for _, row in asked]
    heights = (min(rows) - 1) * CELL_MM, (max(rows) + 2) * CELL_MM
    for stem in plate.stems.values():
        _take(stem, taken, asked, heights)
    for middle in _names_above(plate):
        taken.add(middle, POSITION_MM * 0.55)
    places: dict[str, XY] = {}
    for stem in plate.stems.values():
        places[stem.name] = best = _roomiest(choices[stem.name], taken)
        taken.add(best, LETTER_MM * 0.5)
    return places


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


def _roomiest(choices: Sequence[Choice], taken: Taken) -> XY:
    """The first of the places with the most room for what they cost, the cheapest come first."""
    best, most_mm = choices[0][0], -math.inf
    for place, cost_mm in choices:
        if most_mm >= ENOUGH_MM - cost_mm:
            break  # None that follows can have more.
        room_mm = taken.room_mm(place, most_mm + cost_mm)
        if room_mm - cost_mm > most_mm:
            best, most_mm = place, room_mm - cost_mm
    return best


def _names_above(plate: Plate) -> Iterator[Point]:
    """Middles of the names that stand where upright wood may be."""
    for _, _, foot in named(plate) if named_above(plate) else ():
        yield Point(foot.x, foot.y - POSITION_MM * 0.3)


def _beside(stem: Stem) -> Iterator[Choice]:
    """Places for a letter, the cheapest first."""
    if stem.piece.is_cane:
        along = [stem.piece.internode_mm * share for share in _CANE_SHARES]
    else:
        along = [min(stem.piece.length_mm, _OLD_MM) * share for share in _OLD_SHARES]
    for rank, at in enumerate(along):
        if at > stem.piece.length_mm:
            continue
        for side in (1, -1):
            off = stem.half_mm(at) + LETTER_MM * 0.5
            yield stem.curve.beside(at, side * off), rank * 0.6


def _above_arm(place: XY, arm_y: float) -> XY:
    """The place, lifted where the arm would cut the letter of wood shorter than it is high."""
    x, y = place
    lowest_y = arm_y - LETTER_MM * _FOOT_SHARE
    return (x, lowest_y) if lowest_y < y < arm_y else place


def draw_letters(plate: Plate) -> dict[str, Words]:
    """The letter of every stem, by the stem's name."""
    look: Attributes = {
        "class": LETTER,
        "font-size": LETTER_MM,
        "font-style": "italic",
        "fill": INK,
        "stroke": PAPER,
        "stroke-width": 6.0,
        "paint-order": "stroke",
        "text-anchor": "middle",
    }
    return {
        name: Words(Point(x, y + LETTER_MM * 0.3), plate.stems[name].piece.letter, look)
        for name, (x, y) in place_letters(plate).items()
    }
