"""A vine as it stands in the file, values still missing here and there, before it is checked."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from pencilwood.cases import vine_keys as keys
from pencilwood.cases.fields import Row
from pencilwood.places import Place
from pencilwood.vine.model import LETTER_OF_SIDE, Side

SIDE_OF_LETTER = {letter: side for side, letter in LETTER_OF_SIDE.items()}
"""What the letter of a position's name says of where it is."""


@dataclass(frozen=True)
class PieceDraft:
    """One row of a position's wood. None stands for what could not be read."""

    name: str
    """Position and letter: `L1a`."""
    letter: str
    is_cane: bool
    row: Row
    age_years: int | None
    length_mm: int | None
    thickness_mm: int | None

    @property
    def place(self) -> Place:
        """Where the piece stands in the file."""
        return self.row.place

    @property
    def grows_from(self) -> str | None:
        """Letter of the piece below; None for the arm."""
        return self.row.get(keys.FROM)


@dataclass(frozen=True)
class PositionDraft:
    """One position of the file."""

    name: str
    side: Side
    number: int
    at_mm: int | None
    place: Place
    pieces: tuple[PieceDraft, ...]
    whole: bool
    """Whether every piece has a letter that could be read."""


def draft_positions(vine: Row) -> tuple[PositionDraft, ...]:
    """The positions of a `vine:` block whose names could be read."""
    rows = vine.get(keys.POSITIONS) or ()
    return tuple(draft for row in rows for draft in _position(row.value))


def _position(row: Row) -> Iterator[PositionDraft]:
    name = row.get(keys.POSITION)
    if name is None:
        return
    side = SIDE_OF_LETTER[name[0]]
    wood = row.get(keys.WOOD) or ()
    pieces = tuple(piece for one in wood for piece in _piece(name, one.value))
    whole = len(pieces) == len(wood) > 0
    yield PositionDraft(name, side, int(name[1:]), row.get(keys.AT), row.place, pieces, whole)


def _piece(position: str, row: Row) -> Iterator[PieceDraft]:
    is_cane = row.has(keys.CANE)
    letter = row.get(keys.CANE if is_cane else keys.OLD)
    if letter is None:
        return
    name = position + letter
    if not is_cane:
        thickness_mm = row.get(keys.OLD_THICKNESS)
        length_mm = row.get(keys.OLD_LENGTH)
        yield PieceDraft(name, letter, False, row, row.get(keys.AGE), length_mm, thickness_mm)
        return
    yield PieceDraft(name, letter, True, row, 1, _cane_length_mm(row), row.get(keys.CANE_THICKNESS))


def _cane_length_mm(row: Row) -> int | None:
    """A cane ends one internode above its last bud."""
    buds, internode_mm = row.get(keys.BUDS), row.get(keys.INTERNODE)
    return None if buds is None or internode_mm is None else (buds + 1) * internode_mm
