"""Which cane of a position stands where, from left to right, so that none hides another.

Upright canes of one position first part like a V and then run side by side, as canes do that
are tied up. The highest stands in the middle, the lower ones to its sides. Canes that hang
where shoots are trained to hang do the same downward.
"""

from __future__ import annotations

from pencilwood.drawing.ink.grain import Grain
from pencilwood.drawing.wood.stems import THICKER
from pencilwood.vine.model import Lean, Piece, Position

BARE_TIP_MM = 20
"""Old wood that goes on so far beyond the last piece on it stands there itself."""
_TALL_MM = 120
"""Old wood so long stands upright itself; what grows from its side gives way."""
_GAPS_MM = {1: 0.0, 2: 46.0, 3: 38.0}
_SMALLEST_GAP_MM = 28.0


class Standing:
    """The places where the upright pieces of one position stand, or those that hang."""

    def __init__(self, position: Position, lean: Lean = Lean.UP) -> None:
        self.position = position
        self.lean = lean
        self.grain = Grain(position.name)
        self.aims: dict[str, float] = {}
        """By letter, x on the drawing."""

    def arrange(self, roots: list[Piece], middle_x: float) -> None:
        """Give every upright piece, and all upright wood above it, the place where it stands."""
        order: list[str] = []
        for number, root in enumerate(roots):
            block = self._block(root)
            order = order + block if (number + self._flip(root)) % 2 else block + order
        gap = _GAPS_MM.get(len(order), _SMALLEST_GAP_MM)
        middle = (len(order) - 1) / 2
        if len(roots) == 1 and roots[0].length_mm >= _TALL_MM and not roots[0].is_cane:
            middle = order.index(self._core(roots[0]))
        for number, letter in enumerate(order):
            self.aims[letter] = middle_x + (number - middle) * gap
        for root in roots:
            self._aim_at(root)
        self._clear_of_wood(order, middle_x)

    def _core(self, piece: Piece) -> str:
        """Letter of what goes on straight above a piece."""
        growing = self._upright_on(piece)
        bare = not growing or piece.length_mm - growing[0].at_mm >= BARE_TIP_MM
        return piece.letter if bare else self._core(growing[0])

    def _clear_of_wood(self, order: list[str], middle_x: float) -> None:
        """Push aside what would stand behind the thick old wood that it grows from."""
        by_letter = {piece.letter: piece for piece in self.position.pieces}
        for side in (-1, 1):
            pushed = 0.0
            there = [letter for letter in order if (self.aims[letter] - middle_x) * side > 0]
            for letter in sorted(there, key=lambda one: abs(self.aims[one] - middle_x)):
                piece = by_letter[letter]
                aim = self.aims[letter] + side * pushed
                below = by_letter.get(piece.grows_from or "")
                if below and below.letter in self.aims and _goes_on(below, piece):
                    room = (below.thickness_mm * 1.15 + piece.thickness_mm) * THICKER / 2 + 14
                    short = room - (aim - self.aims[below.letter]) * side
                    pushed += max(0.0, short)
                    aim += side * max(0.0, short)
                self.aims[letter] = aim

    def _block(self, piece: Piece) -> list[str]:
        """Letters that stand side by side above a piece: the highest in the middle."""
        growing = self._upright_on(piece)
        bare = not growing or piece.length_mm - growing[0].at_mm >= BARE_TIP_MM
        block = [piece.letter] if bare else self._block(growing[0])
        for number, child in enumerate(growing if bare else growing[1:]):
            other = self._block(child)
            block = block + other if (number + self._flip(piece)) % 2 else other + block
        return block

    def _aim_at(self, piece: Piece) -> float:
        growing = self._upright_on(piece)
        aims = [self._aim_at(child) for child in growing]
        if piece.letter not in self.aims:
            self.aims[piece.letter] = aims[0]
        return self.aims[piece.letter]

    def _upright_on(self, piece: Piece) -> list[Piece]:
        growing = [
            other
            for other in self.position.pieces
            if other.grows_from == piece.letter and other.lean is self.lean
        ]
        return sorted(growing, key=lambda child: (-child.at_mm, child.letter))

    def _flip(self, piece: Piece) -> int:
        return int(self.grain.share("flip" + piece.letter) * 2)


def _goes_on(below: Piece, piece: Piece) -> bool:
    """Whether old wood goes on well beyond the place where a piece grows from it."""
    return below.length_mm - piece.at_mm >= _TALL_MM / 3
