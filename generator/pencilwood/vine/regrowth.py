"""The wood of one position from one winter to the next: what still stands, and new letters."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import product
from string import ascii_lowercase

from pencilwood.vine.model import Piece
from pencilwood.vine.wood import WoodLeft

SHORTEST_WOOD_MM = 5
"""No cut leaves a shorter end of old wood."""

Standing = tuple[Piece, int]
"""A piece that is left, as it was measured, and the length to which it was cut."""

_FIRST_OLD = ascii_lowercase.index("m")


@dataclass(frozen=True)
class Sprout:
    """A bud that pushes."""

    grows_from: str | None
    """Letter of the piece it grows from; None for the arm."""
    at_mm: int
    weight: int
    """Its part of the position's growth beside the other shoots'."""


def standing_wood(left: WoodLeft, position: str, stub_mm: int) -> tuple[Standing, ...]:
    """Every piece that is left at a position, a piece before what grows from it."""
    cut: dict[str, Standing] = {}
    for number in left.parts.of_position(position):
        part, state = left.parts.parts[number], left.states[number]
        if state == 0:
            continue
        whole_mm = part.piece.length_mm
        if not part.is_cane:
            length_mm = max(part.end_mm, min(SHORTEST_WOOD_MM, whole_mm))
        elif state < part.most:
            length_mm = min(state * part.piece.internode_mm + stub_mm, whole_mm)
        else:
            length_mm = whole_mm
        cut[part.piece.letter] = part.piece, length_mm
    # The end of a piece that is too short to be a part of its own stays with the last part.
    return tuple(
        (piece, piece.length_mm if _is_whole(left, position, piece) else length_mm)
        for piece, length_mm in cut.values()
    )


def _is_whole(left: WoodLeft, position: str, piece: Piece) -> bool:
    return all(
        left.states[number] == left.parts.parts[number].most
        for number in left.parts.of_position(position)
        if left.parts.parts[number].piece.letter == piece.letter
    )


def labelled(old: Sequence[Piece], canes: Sequence[Piece]) -> tuple[Piece, ...]:
    """Old wood as m, n, o... and canes as a, b, c... from the foot upward, as trainers do."""
    letters = dict(zip((piece.letter for piece in old), _letters(_FIRST_OLD), strict=False))
    order = {piece.letter: number for number, piece in enumerate(old)}
    in_order = sorted(canes, key=lambda cane: (order.get(cane.grows_from or "", -1), cane.at_mm))
    return (
        *(_named(piece, letters[piece.letter], letters) for piece in old),
        *(
            _named(cane, letter, letters)
            for cane, letter in zip(in_order, _letters(0), strict=False)
        ),
    )


def _named(piece: Piece, letter: str, letters: dict[str, str]) -> Piece:
    below = None if piece.grows_from is None else letters[piece.grows_from]
    return replace(piece, letter=letter, grows_from=below)


def _letters(first: int) -> Iterator[str]:
    """One letter each from the alphabet's `first` on, then two letters each."""
    ours = ascii_lowercase[first:] if first else ascii_lowercase[:_FIRST_OLD]
    yield from ours
    yield from ("".join(pair) for pair in product(ours, repeat=2))
