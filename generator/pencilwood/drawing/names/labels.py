"""The letters beside the wood, where the most room is: nothing stands on the wood."""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Iterator

from pencilwood.drawing.ink.looks import INK, PAPER, PENCIL
from pencilwood.drawing.ink.points import Point, between
from pencilwood.drawing.ink.shapes import Attributes, Group, Ink, Run, Thing, Words
from pencilwood.drawing.names.letter_places import Beside, LetterPlace, place_letters
from pencilwood.drawing.plate import Plate

LETTER = "pw-letter"
"""The class of the letters, and of the lines that lead to some."""
LINE, TIGHT = "pw-letter-line", "pw-tight"
"""Of a line; of a letter for which there is no room."""
_NO_ROOM = f"{LETTER} {TIGHT}"
NAMED = "data-letter"
"""Of the letter of one piece that a text names, the name of the piece."""
LETTER_MM = 30.0
ROOM_MM = 40.0
"""Letters have room to be so high: a page shows them larger on paper."""
_SHORT_OF_LETTER = 0.45
"""How far from its middle the line ends, compared with the height of a letter."""
_BASELINE = 0.3
"""How far its foot is below its middle, compared with the same."""


def draw_letters(
    plate: Plate, letter_mm: float = LETTER_MM, beside: Beside | None = None
) -> dict[str, tuple[Thing, ...]]:
    """The letter of every stem, with the line to it if it has one, by the stem's name."""
    return {
        name: tuple(_drawn(place, plate.stems[name].piece.letter, letter_mm))
        for name, place in place_letters(plate, _room_mm(letter_mm), beside or Beside()).items()
    }


def draw_named_letters(plate: Plate, letter_mm: float, beside: Beside) -> Group:
    """Only the letters that a text beside the drawing names, as far as there is room."""
    placed = place_letters(plate, letter_mm, beside)
    return Group(
        tuple(
            Group(
                tuple(_drawn(place, plate.stems[name].piece.letter, letter_mm, at_any_size=True)),
                {NAMED: name},
            )
            for name, place in placed.items()
            if not place.is_tight
        ),
        {"class": "pw-letters"},
    )


def letters_named(drawing: str) -> set[str]:
    """The wood whose letter such a drawing shows."""
    return set(re.findall(rf'{NAMED}="(\w+)"', drawing))


def has_letter_without_room(drawing: str) -> bool:
    """Whether a drawing of a whole vine has a letter with no room; told sooner than which."""
    return f'class="{_NO_ROOM}"' in drawing


def without_letter(
    plate: Plate, letter_mm: float, beside_of: Callable[[Plate], Beside]
) -> Iterator[str]:
    """The wood whose letter has no room in any view of the vine."""
    room_mm = _room_mm(letter_mm)
    views = [place_letters(view, room_mm, beside_of(view)) for view in plate.views]
    return (name for name in views[0] if all(view[name].is_tight for view in views))


def _room_mm(letter_mm: float) -> float:
    return ROOM_MM if letter_mm == LETTER_MM else letter_mm


def _drawn(
    place: LetterPlace, letter: str, letter_mm: float, *, at_any_size: bool = False
) -> Iterator[Thing]:
    """`at_any_size` keeps a letter on its middle where a page shows it much smaller."""
    if place.foot is not None:
        short = _SHORT_OF_LETTER * letter_mm / math.dist(place.foot, place.middle)
        run = Run((place.foot, between(place.middle, place.foot, short)))
        pen: Attributes = {"fill": "none", "stroke": PENCIL, "stroke-width": 2.0}
        yield Ink((run,), {"class": f"{LETTER} {LINE}", **pen})
    look: Attributes = {
        "class": _NO_ROOM if place.is_tight else LETTER,
        "font-size": letter_mm,
        "font-style": "italic",
        "fill": INK,
        "stroke": PAPER,
        "stroke-width": letter_mm * 0.2,
        "paint-order": "stroke",
        "text-anchor": "middle",
    }
    x, y = place.middle
    if at_any_size:
        yield Words(Point(x, y), letter, {**look, "dy": f"{_BASELINE}em"})
    else:
        yield Words(Point(x, y + letter_mm * _BASELINE), letter, look)
