"""The letters beside the wood, where the most room is: nothing stands on the wood."""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass

from pencilwood.drawing.ink.looks import INK, PAPER, PENCIL
from pencilwood.drawing.ink.points import Point, between
from pencilwood.drawing.ink.shapes import Attributes, Dot, Group, Ink, Run, Thing, Words
from pencilwood.drawing.names.letter_places import Beside, LetterPlace, place_letters
from pencilwood.drawing.names.name_lines import line_end
from pencilwood.drawing.names.whole_names import DOT_MM, whole_names
from pencilwood.drawing.plate import Plate

LETTER = "pw-letter"
"""The class of the letters, and of the lines that lead to some."""
LINE, TIGHT = "pw-letter-line", "pw-tight"
"""Of a line; of a letter for which there is no room."""
_NO_ROOM = f"{LETTER} {TIGHT}"
WHOLE, NOT_ON_PAPER = "pw-whole-name", "pw-not-on-paper"
"""Of the whole name that paper shows instead of a letter in a crowd; of that letter."""
NAMED = "data-letter"
"""Of the letter of one piece that a text names, the name of the piece."""
LETTER_MM = 30.0
ROOM_MM = 40.0
"""Letters have room to be so high: a page shows them larger on paper."""
_SHORT_OF_LETTER = 0.45
"""How far from its middle the line ends, compared with the height of a letter."""
_BASELINE = 0.3
"""How far its foot is below its middle, compared with the same."""


@dataclass(frozen=True)
class Letters:
    """The letters of all wood."""

    of: Mapping[str, tuple[Thing, ...]]
    """By the name of a stem its letter, with the line to it if it has one."""
    whole: tuple[Group, ...] = ()
    """Whole names for paper, over all wood."""


def draw_letters(
    plate: Plate, letter_mm: float = LETTER_MM, beside: Beside | None = None
) -> Letters:
    """The letter of every stem.

    Wood that a text names has its whole name too, for paper, where a letter would not tell it.
    """
    beside = beside or Beside()
    placed = place_letters(plate, _room_mm(letter_mm), beside)
    whole = whole_names(plate, _room_mm(letter_mm), beside, placed)
    letters = {
        name: tuple(
            _drawn(place, plate.stems[name].piece.letter, letter_mm, on_paper=name not in whole)
        )
        for name, place in placed.items()
    }
    if not whole:
        return Letters(letters)
    names = tuple(_whole_name(place, name, letter_mm) for name, place in whole.items())
    return Letters(letters, (Group(names, {"class": "pw-whole-names"}),))


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
    views = [_without(view, room_mm, beside_of(view)) for view in plate.views]
    return (name for name in views[0] if all(name in view for view in views))


def _without(plate: Plate, room_mm: float, beside: Beside) -> list[str]:
    placed = place_letters(plate, room_mm, beside)
    whole = whole_names(plate, room_mm, beside, placed)
    return [name for name, one in placed.items() if one.is_tight and name not in whole]


def _room_mm(letter_mm: float) -> float:
    return ROOM_MM if letter_mm == LETTER_MM else letter_mm


def _drawn(
    place: LetterPlace,
    letter: str,
    letter_mm: float,
    *,
    at_any_size: bool = False,
    on_paper: bool = True,
) -> Iterator[Thing]:
    """`at_any_size` keeps a letter on its middle where a page shows it much smaller."""
    marked = "" if on_paper else f" {NOT_ON_PAPER}"
    if place.foot is not None:
        short = _SHORT_OF_LETTER * letter_mm / math.dist(place.foot, place.middle)
        run = Run((place.foot, between(place.middle, place.foot, short)))
        yield Ink((run,), {"class": f"{LETTER} {LINE}{marked}", **_PEN})
    look = {"class": (_NO_ROOM if place.is_tight else LETTER) + marked, **_look(letter_mm)}
    x, y = place.middle
    if at_any_size:
        yield Words(Point(x, y), letter, {**look, "dy": f"{_BASELINE}em"})
    else:
        yield Words(Point(x, y + letter_mm * _BASELINE), letter, look)


def _whole_name(place: LetterPlace, name: str, letter_mm: float) -> Group:
    foot = Point(*(place.foot or place.middle))
    run = Run((foot, line_end(place, name, _room_mm(letter_mm))))
    dot: Attributes = {"class": LETTER, "fill": INK, "stroke": PAPER, "stroke-width": 1.0}
    x, y = place.middle
    look = {"class": LETTER, **_look(letter_mm), "dy": f"{_BASELINE}em"}
    return Group(
        (
            Ink(
                (run,), {"class": f"{LETTER} pw-halo", **_PEN, "stroke": PAPER, "stroke-width": 6.0}
            ),
            Ink((run,), {"class": f"{LETTER} {LINE}", **_PEN}),
            Dot(foot, DOT_MM, dot),
            Words(Point(x, y), name, look),
        ),
        {"class": WHOLE, NAMED: name},
    )


_PEN: Attributes = {"fill": "none", "stroke": PENCIL, "stroke-width": 2.0}


def _look(letter_mm: float) -> dict[str, str | float]:
    return {
        "font-size": letter_mm,
        "font-style": "italic",
        "fill": INK,
        "stroke": PAPER,
        "stroke-width": letter_mm * 0.2,
        "paint-order": "stroke",
        "text-anchor": "middle",
    }
