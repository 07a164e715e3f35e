"""A vine as the rough pass leaves it, so that long canes do not hide what a drawing is about."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from pencilwood.vine.model import Piece, Vine


def after_rough_pass(vine: Vine, most: int, long: Mapping[str, int] | None = None) -> Vine:
    """The same vine with at most so many buds on each cane; `long` has other numbers by name."""
    wanted = long or {}
    arms = tuple(
        replace(
            arm,
            positions=tuple(
                replace(
                    position,
                    pieces=tuple(
                        _short(one, wanted.get(position.name + one.letter, most))
                        for one in position.pieces
                    ),
                )
                for position in arm.positions
            ),
        )
        for arm in vine.arms
    )
    return replace(vine, arms=arms)


def _short(piece: Piece, most: int) -> Piece:
    if not piece.is_cane or piece.buds <= most:
        return piece
    return replace(piece, buds=most, length_mm=(most + 1) * piece.internode_mm)
