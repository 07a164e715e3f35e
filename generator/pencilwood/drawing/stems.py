"""Where every piece of wood runs on the drawing, and how thick it is drawn.

Lengths along the wood are true to scale. Thickness is drawn `THICKER` times as large, because
true canes would be hairlines on a phone. Upright canes of one position first part like a V and
then run side by side, as canes do that are tied up, so that they do not hide one another.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property

from pencilwood.drawing.curves import Curve, trace
from pencilwood.drawing.grain import Grain
from pencilwood.drawing.points import Point
from pencilwood.vine.model import Lean, Piece, Position, Side

THICKER = 2
"""How many times too thick all wood is drawn; every drawing says so."""
BARE_TIP_MM = 20
PART_MM = 55.0
"""How far canes take to turn upright after they have parted."""
_GAPS_MM = {1: 0.0, 2: 46.0, 3: 38.0}
_SMALLEST_GAP_MM = 28.0


@dataclass(frozen=True)
class Stem:
    """One piece of wood as it is drawn."""

    name: str
    """Position and letter: `L1a`."""
    piece: Piece
    curve: Curve

    @cached_property
    def grain(self) -> Grain:
        """The irregularity of this piece."""
        return Grain(self.name)

    @property
    def stub_mm(self) -> float:
        """Wood left above the bud when the cane is cut there."""
        return min(12.0, self.piece.internode_mm * 0.22)

    def half_mm(self, along_mm: float) -> float:
        """Half the drawn thickness; canes swell at each bud and taper, old wood flares below."""
        half = self.piece.thickness_mm * THICKER / 2
        share = min(max(along_mm / max(self.piece.length_mm, 1), 0.0), 1.0)
        if not self.piece.is_cane:
            rough = self.grain.within(-0.09, 0.09, "rough", int(along_mm // 14))
            return half * (1.0 + rough + 0.3 * math.exp(-max(along_mm, 0.0) / 18))
        nearest = round(along_mm / self.piece.internode_mm) * self.piece.internode_mm
        swell = 0.45 * math.exp(-(((along_mm - nearest) / 8) ** 2)) + 0.92
        return max(half * (1 - 0.45 * share) * swell, 1.6)


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
        self.grain = Grain(position.name)
        self.aims: dict[str, float] = {}

    def stems(self) -> list[Stem]:
        roots = [piece for piece in self.position.pieces if piece.grows_from is None]
        upright = [piece for piece in roots if piece.lean is Lean.UP]
        self._aim(upright, self.foot.x)
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
            self._aim(upright, curve.at(piece.length_mm).x)
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

    def _aim(self, roots: list[Piece], middle_x: float) -> None:
        """Give every upright piece the place where it shall stand, from left to right."""
        order: list[str] = []
        for number, root in enumerate(roots):
            block = self._block(root)
            order = order + block if (number + self._flip(root)) % 2 else block + order
        gap = _GAPS_MM.get(len(order), _SMALLEST_GAP_MM)
        for number, letter in enumerate(order):
            self.aims[letter] = middle_x + (number - (len(order) - 1) / 2) * gap
        for root in roots:
            self._aim_below(root)

    def _block(self, piece: Piece) -> list[str]:
        """Letters that stand side by side above a piece: the highest in the middle."""
        growing = self._upright_on(piece)
        bare = not growing or piece.length_mm - growing[0].at_mm >= BARE_TIP_MM
        block = [piece.letter] if bare else self._block(growing[0])
        for number, child in enumerate(growing if bare else growing[1:]):
            other = self._block(child)
            block = block + other if (number + self._flip(piece)) % 2 else other + block
        return block

    def _aim_below(self, piece: Piece) -> float:
        growing = self._upright_on(piece)
        aims = [self._aim_below(child) for child in growing]
        if piece.letter not in self.aims:
            self.aims[piece.letter] = aims[0]
        return self.aims[piece.letter]

    def _upright_on(self, piece: Piece) -> list[Piece]:
        growing = [
            other
            for other in self.position.pieces
            if other.grows_from == piece.letter and other.lean is Lean.UP
        ]
        return sorted(growing, key=lambda child: (-child.at_mm, child.letter))

    def _flip(self, piece: Piece) -> int:
        return int(self.grain.share("flip" + piece.letter) * 2)

    def _heading(self, piece: Piece, foot: Point, siblings: list[Piece]) -> _Heading:
        grain = Grain(self.position.name + piece.letter)
        if piece.lean is Lean.UP:
            aside = self.aims[piece.letter] - foot.x
            if not piece.is_cane:
                lean = max(-0.16, min(0.16, aside / max(piece.length_mm, 60)))
                return _Heading(grain, lean, 0.0, PART_MM, 0)
            start = max(-0.8, min(0.8, aside / PART_MM))
            return _Heading(
                grain, grain.within(-0.02, 0.02, "end"), start, PART_MM, piece.internode_mm
            )
        same = [other.letter for other in siblings if other.lean is piece.lean]
        spread = (same.index(piece.letter) - (len(same) - 1) / 2) * 0.22
        if piece.lean is Lean.DOWN:
            end, start, within_mm = 0.96 * math.pi - abs(spread), -0.5 * math.pi, 40.0
        else:
            end, start, within_mm = math.pi / 4 + spread, 0.12, 90.0
        side = -self.outward if piece.lean is Lean.IN else self.outward
        return _Heading(grain, end * side, start * side, within_mm, piece.internode_mm)


@dataclass(frozen=True)
class _Heading:
    """Where a piece points along its way: turns from its start, zigzags from bud to bud."""

    grain: Grain
    end_rad: float
    start_rad: float
    """What its start points aside of its end."""
    within_mm: float
    internode_mm: int

    def __call__(self, along_mm: float) -> float:
        turn = self.end_rad + self.start_rad * math.exp(-along_mm / self.within_mm)
        slow = math.sin(along_mm / 85 + self._phase) * 0.035
        if not self.internode_mm:
            return turn + 2 * slow
        zigzag = 0.06 if int(along_mm // self.internode_mm) % 2 else -0.06
        return turn + slow + zigzag * self._first_side

    @cached_property
    def _phase(self) -> float:
        return self.grain.share("phase") * 2 * math.pi

    @cached_property
    def _first_side(self) -> int:
        return first_bud_side(self.grain)


def first_bud_side(grain: Grain) -> int:
    """The side of a cane's first bud, -1 for left; the buds above alternate."""
    return grain.sign("buds")
