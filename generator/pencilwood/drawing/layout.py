"""Lays out the wood of one position: where each piece starts and which way it goes."""

from __future__ import annotations

import math

from pencilwood.drawing.curves import trace
from pencilwood.drawing.grain import Grain
from pencilwood.drawing.headings import Heading
from pencilwood.drawing.points import Point
from pencilwood.drawing.standing import BARE_TIP_MM, Standing
from pencilwood.drawing.stems import Stem
from pencilwood.vine.model import Lean, Piece, Position, Side

_PART_MM = 55.0
"""How far canes take to turn upright after they have parted."""
_MOST_TILT_RAD = 0.16


def lay_out(position: Position, foot: Point, under_mm: float) -> tuple[Stem, ...]:
    """The stems of one position; `foot` is on top of the arm, its underside `under_mm` below."""
    return tuple(_Layout(position, foot, under_mm).stems())


class _Layout:
    """Lays out one position: first which cane stands where, then the curves."""

    def __init__(self, position: Position, foot: Point, under_mm: float) -> None:
        self.position = position
        self.foot = foot
        self.under_mm = under_mm
        self.outward = -1 if position.side is Side.LEFT else 1
        self.standing = Standing(position)
        self.aims = self.standing.aims

    def stems(self) -> list[Stem]:
        roots = [piece for piece in self.position.pieces if piece.grows_from is None]
        upright = [piece for piece in roots if piece.lean is Lean.UP]
        self.standing.arrange(upright, self.foot.x)
        found: list[Stem] = []
        for root in roots:
            foot = self.foot
            if root.lean is Lean.DOWN:
                foot = Point(foot.x, foot.y + self.under_mm)
            elif root in upright and len(upright) > 1:
                foot = Point(foot.x + (self.aims[root.letter] - foot.x) * 0.45, foot.y)
            self._grow(root, foot, roots, found)
        return found

    def _grow(self, piece: Piece, foot: Point, siblings: list[Piece], found: list[Stem]) -> None:
        curve = trace(foot, piece.length_mm, self._heading(piece, foot, siblings))
        stem = Stem(self.position.name + piece.letter, piece, curve)
        found.append(stem)
        growing = [other for other in self.position.pieces if other.grows_from == piece.letter]
        if piece.lean is not Lean.UP:
            upright = [child for child in growing if child.lean is Lean.UP]
            self.standing.arrange(upright, curve.at(piece.length_mm).x)
        for child in growing:
            self._grow(child, self._joint(stem, child), growing, found)

    def _joint(self, stem: Stem, child: Piece) -> Point:
        """Where a piece grows out: at the side of older wood, unless it sits on its tip."""
        middle = stem.curve.at(child.at_mm)
        if stem.piece.length_mm - child.at_mm < BARE_TIP_MM:
            return middle
        toward = self.aims[child.letter] - middle.x if child.lean is Lean.UP else 0.0
        if abs(toward) < 1:
            return middle
        side = 1 if toward > 0 else -1
        return stem.curve.beside(child.at_mm, side * stem.half_mm(child.at_mm) * 0.6)

    def _heading(self, piece: Piece, foot: Point, siblings: list[Piece]) -> Heading:
        grain = Grain(self.position.name + piece.letter)
        if piece.lean is Lean.UP:
            aside = self.aims[piece.letter] - foot.x
            if not piece.is_cane:
                lean = aside / max(piece.length_mm, 60)
                lean = max(-_MOST_TILT_RAD, min(_MOST_TILT_RAD, lean))
                return Heading(grain, lean, 0.0, _PART_MM, 0)
            within_mm = max(_PART_MM, abs(aside) * 1.4)
            start = aside / within_mm
            end = grain.within(-0.02, 0.02, "end")
            return Heading(grain, end, start, within_mm, piece.internode_mm)
        same = [other.letter for other in siblings if other.lean is piece.lean]
        spread = (same.index(piece.letter) - (len(same) - 1) / 2) * 0.22
        if piece.lean is Lean.DOWN:
            end, start, within_mm = 0.96 * math.pi - abs(spread), -0.5 * math.pi, 40.0
        else:
            end, start, within_mm = math.pi / 4 + spread, 0.12, 90.0
        side = -self.outward if piece.lean is Lean.IN else self.outward
        tied = piece.is_cane and piece.lean is not Lean.DOWN
        return Heading(grain, end * side, start * side, within_mm, piece.internode_mm, tied)
