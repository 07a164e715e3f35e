"""Lays out the wood of one position: where each piece starts and which way it goes."""

from __future__ import annotations

import math

from pencilwood.drawing.ink.curves import trace
from pencilwood.drawing.ink.grain import Grain
from pencilwood.drawing.ink.points import Point
from pencilwood.drawing.wood.headings import Heading, heading
from pencilwood.drawing.wood.standing import BARE_TIP_MM, Standing
from pencilwood.drawing.wood.stems import Stem
from pencilwood.vine.model import Growth, Lean, Piece, Position, Side, Vine

_PART_MM = 55.0
"""How far canes take to turn upright after they have parted."""
_MOST_TILT_RAD = 0.16
_BEND_RISE = 1.371
"""How far wood rises that turns from upright to level, in units of its turning length: the
integral of sin(u)/u from 0 to a right angle."""
_Back = tuple[float, float, float]
"""Where wood that leans down ends up pointing, how far aside of that it starts, in radians; and
within how many millimetres it turns."""
_IN_A_BOW: _Back = (0.96 * math.pi, -0.5 * math.pi, 40.0)
_TURNED_BACK: _Back = (0.99 * math.pi, -0.35 * math.pi, 16.0)


def lay_out(vine: Vine, position: Position, foot: Point, under_mm: float) -> tuple[Stem, ...]:
    """The stems of one position; `foot` is on top of the arm, its underside `under_mm` below."""
    return tuple(_Layout(position, foot, under_mm, Growth.UP, _wire_up_mm(vine)).stems())


def lay_out_flat(vine: Vine, position: Position, foot: Point) -> tuple[Stem, ...]:
    """The same from above: what leans down turns back at its foot, and does not hang in a bow."""
    layout = _Layout(position, foot, 0.0, Growth.UP, _wire_up_mm(vine), back=_TURNED_BACK)
    return tuple(layout.stems())


def lay_out_hanging(
    vine: Vine, position: Position, foot: Point, under_mm: float
) -> tuple[Stem, ...]:
    """The same where shoots are trained to hang: leaning canes bend over and hang as well."""
    return tuple(_Layout(position, foot, under_mm, Growth.DOWN, _wire_up_mm(vine)).stems())


def _wire_up_mm(vine: Vine) -> int:
    """How far above the arms or the head the fruiting wire is."""
    return vine.trellis.fruiting_wire_mm - vine.cordon_height_mm


class _Layout:
    """Lays out one position: first which cane stands where, then the curves."""

    def __init__(
        self,
        position: Position,
        foot: Point,
        under_mm: float,
        growth: Growth,
        wire_up_mm: int,
        back: _Back = _IN_A_BOW,
    ) -> None:
        self.position = position
        self.foot = foot
        self.under_mm = under_mm
        self.growth = growth
        self.wire_up_mm = wire_up_mm
        self.back = back
        self.outward = -1 if position.side is Side.LEFT else 1
        leans = (Lean.UP,) if growth is Growth.UP else (Lean.UP, Lean.DOWN)
        self.standing = {lean: Standing(position, lean) for lean in leans}
        """By lean: the wood that runs side by side; what else leans goes its own way."""

    def stems(self) -> list[Stem]:
        roots = [piece for piece in self.position.pieces if piece.grows_from is None]
        for lean in self.standing:
            self._arrange(lean, roots, self.foot.x)
        found: list[Stem] = []
        for root in roots:
            self._grow(root, self._foot(root, roots), roots, found)
        return found

    def _arrange(self, lean: Lean, pieces: list[Piece], middle_x: float) -> None:
        alike = [piece for piece in pieces if piece.lean is lean]
        if alike:
            self.standing[lean].arrange(alike, middle_x)

    def _aim(self, piece: Piece) -> float | None:
        """Where a piece runs beside others, x on the drawing."""
        standing = self.standing.get(piece.lean)
        return standing.aims[piece.letter] if standing else None

    def _foot(self, root: Piece, roots: list[Piece]) -> Point:
        y = self.foot.y + (self.under_mm if root.lean is Lean.DOWN else 0.0)
        aim = self._aim(root)
        if aim is None or sum(other.lean is root.lean for other in roots) == 1:
            return Point(self.foot.x, y)
        return Point(self.foot.x + (aim - self.foot.x) * 0.45, y)

    def _grow(self, piece: Piece, foot: Point, siblings: list[Piece], found: list[Stem]) -> None:
        curve = trace(foot, piece.length_mm, self._heading(piece, foot, siblings))
        growing = [other for other in self.position.pieces if other.grows_from == piece.letter]
        knots_mm = tuple(child.at_mm for child in growing)
        stem = Stem(self.position.name + piece.letter, piece, curve, knots_mm)
        found.append(stem)
        for lean in self.standing:
            if piece.lean is Lean.ALONG:
                for child in growing:
                    self._arrange(lean, [child], curve.at(child.at_mm).x)
            elif piece.lean is not lean:
                self._arrange(lean, growing, curve.at(piece.length_mm).x)
        for child in growing:
            self._grow(child, self._joint(stem, child), growing, found)

    def _joint(self, stem: Stem, child: Piece) -> Point:
        """Where a piece grows out: at the side of older wood, unless it sits on its tip."""
        middle = stem.curve.at(child.at_mm)
        if stem.piece.length_mm - child.at_mm < BARE_TIP_MM:
            return middle
        aim = self._aim(child)
        toward = 0.0 if aim is None else aim - middle.x
        if abs(toward) < 1:
            return middle
        side = 1 if toward > 0 else -1
        if abs(stem.curve.heading_rad(child.at_mm)) > math.pi / 2:
            side = -side  # To the right of who walks down is the left of the drawing.
        return Point(*stem.curve.beside(child.at_mm, side * stem.half_mm(child.at_mm) * 0.6))

    def _heading(self, piece: Piece, foot: Point, siblings: list[Piece]) -> Heading:
        aim = self._aim(piece)
        if aim is not None:
            return self._beside_others(piece, aim - foot.x)
        if piece.lean is Lean.ALONG:
            return self._along_wire(piece)
        same = [other.letter for other in siblings if other.lean is piece.lean]
        spread = (same.index(piece.letter) - (len(same) - 1) / 2) * 0.22
        if piece.lean is Lean.DOWN:
            end, start, within_mm = self.back
            end -= abs(spread)
        else:
            end, start, within_mm = math.pi / 4 + spread, 0.12, 90.0
        side = -self.outward if piece.lean is Lean.IN else self.outward
        tied = piece.is_cane and piece.lean is not Lean.DOWN
        return heading(
            self._grain(piece),
            end * side,
            start * side,
            within_mm,
            piece.internode_mm,
            self.growth if tied else None,
        )

    def _along_wire(self, piece: Piece) -> Heading:
        """Up from the foot to the wire, in a bend, and outward along it."""
        rise_mm = self.wire_up_mm if piece.grows_from is None else 0
        start, within_mm = (-math.pi / 2, rise_mm / _BEND_RISE) if rise_mm > 0 else (0.0, 1.0)
        side = self.outward
        grain = self._grain(piece)
        return heading(grain, math.pi / 2 * side, start * side, within_mm, piece.internode_mm)

    def _beside_others(self, piece: Piece, aside: float) -> Heading:
        """Upright, or the same turned upside down for wood that hangs."""
        grain = self._grain(piece)
        if piece.is_cane:
            within_mm = max(_PART_MM, abs(aside) * 1.4)
            start, end = aside / within_mm, grain.within(-0.02, 0.02, "end")
        else:
            lean = aside / max(piece.length_mm, 60)
            start, end = 0.0, max(-_MOST_TILT_RAD, min(_MOST_TILT_RAD, lean))
            within_mm = _PART_MM
        if piece.lean is Lean.DOWN:
            start, end = -start, math.pi - end
        return heading(grain, end, start, within_mm, piece.internode_mm)

    def _grain(self, piece: Piece) -> Grain:
        return Grain(self.position.name + piece.letter)
