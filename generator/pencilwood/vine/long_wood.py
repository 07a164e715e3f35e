"""Canes that fruit at full length: what is counted of them, and where they begin."""

from __future__ import annotations

from collections.abc import Mapping

from pencilwood.vine.bands import Limits
from pencilwood.vine.model import Lean, Piece, Position, Side, Vine
from pencilwood.vine.wood import Part

FRUITING_CANES = "fruiting canes"
RENEWAL_SPURS: Mapping[Side, str] = {
    Side.LEFT: "renewal spurs on the left",
    Side.RIGHT: "renewal spurs on the right",
}
"""Counted on each side of the head, where next winter's cane is to grow."""
LONG_WOOD_WORDS = "cane"
"""Texts about such vines are filed under this where they differ from those for arms."""
_OUTWARD_THOUSANDTHS = {Lean.ALONG: 1000, Lean.OUT: 707, Lean.IN: -707}


def is_fruiting_cane(_position: Position, piece: Piece, state: int, limits: Limits) -> bool:
    """Whether so many buds make a living cane one that fruits."""
    least = limits["buds on a fruiting cane at least"]
    return piece.is_cane and piece.is_alive and state >= least


def is_spur_on_left(position: Position, piece: Piece, state: int, limits: Limits) -> bool:
    """Whether so few buds make a living cane left of the head a spur."""
    return position.side is Side.LEFT and _is_spur(piece, state, limits)


def is_spur_on_right(position: Position, piece: Piece, state: int, limits: Limits) -> bool:
    """The same right of the head."""
    return position.side is Side.RIGHT and _is_spur(piece, state, limits)


def _is_spur(piece: Piece, state: int, limits: Limits) -> bool:
    return piece.is_cane and piece.is_alive and 0 < state <= limits["buds on a spur at most"]


def from_head_mm(part: Part) -> int:
    """How far from the middle of the head a piece begins, along the wire."""
    by_letter = {piece.letter: piece for piece in part.position.pieces}
    piece, way_mm = part.piece, part.position.at_mm
    while piece.grows_from is not None:
        below = by_letter[piece.grows_from]
        way_mm += piece.at_mm * _OUTWARD_THOUSANDTHS.get(below.lean, 0) // 1000
        piece = below
    return way_mm


def above_wire_mm(vine: Vine, part: Part) -> int:
    """How high above the fruiting wire a piece begins; 0 and less at the wire and below it."""
    return vine.cordon_height_mm + part.base_height_mm - vine.trellis.fruiting_wire_mm
