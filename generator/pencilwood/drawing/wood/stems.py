"""One piece of wood as it is drawn.

Lengths along the wood are true to scale. Thickness is drawn `THICKER` times as large, because
true canes would be hairlines on a phone.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property

from pencilwood.drawing.ink.curves import Curve, HalfWidth
from pencilwood.drawing.ink.grain import Grain
from pencilwood.vine.model import Piece

THICKER = 2
"""How many times too thick all wood is drawn; every drawing says so."""

_TAPERS_WITHIN_MM = 900.0
_THINNEST_HALF_MM = 1.6
_STUB_MM, _STUB_SHARE = 20.0, 0.5
"""As the rules ask for, and of short internodes so large a share at most."""


@dataclass(frozen=True)
class Stem:
    """One piece of wood as it is drawn."""

    name: str
    """Position and letter: `L1a`."""
    piece: Piece
    curve: Curve
    knots_mm: tuple[int, ...] = ()
    """How far along older wood something grows from it, so that it is knobbly there."""

    @cached_property
    def grain(self) -> Grain:
        """The irregularity of this piece."""
        return Grain(self.name)

    @property
    def stub_mm(self) -> float:
        """Wood left above the bud when the cane is cut there; it clears the drawn bud's tip."""
        return min(_STUB_MM, self.piece.internode_mm * _STUB_SHARE)

    def half_mm(self, along_mm: float) -> float:
        """Half the drawn thickness; canes swell a little at each bud and taper to their tip."""
        half = self._halves_mm.get(along_mm)
        if half is None:
            half = self._halves_mm[along_mm] = self._half_mm(along_mm)
        return half

    @cached_property
    def _halves_mm(self) -> dict[float, float]:
        """By distance along the wood: both edges, the buds and the cuts ask for the same ones."""
        return {}

    @cached_property
    def _half_mm(self) -> HalfWidth:
        if self.piece.is_cane:
            return _cane_half_mm(self.piece, self.taper)
        half = self.piece.thickness_mm * THICKER / 2
        return lambda along_mm: half * self._knobbly(along_mm)

    @cached_property
    def taper(self) -> float:
        """How much thinner a cane is at its tip, as a share; a short piece hardly tapers."""
        return 0.5 * min(1.0, self.piece.length_mm / _TAPERS_WITHIN_MM)

    @cached_property
    def _phases(self) -> tuple[float, float]:
        return self.grain.within(0, 6.3, "rough", 1), self.grain.within(0, 6.3, "rough", 2)

    def _knobbly(self, along_mm: float) -> float:
        """Old wood flares at its foot and is thicker where something grows from it."""
        first, second = self._phases
        rough = 0.045 * math.sin(along_mm / 8 + first) + 0.035 * math.sin(along_mm / 21 + second)
        flare = 0.35 * math.exp(-max(along_mm, 0.0) / 16)
        knobs = sum(0.2 * math.exp(-(((along_mm - at) / 13) ** 2)) for at in self.knots_mm)
        return 1.0 + rough + flare + min(knobs, 0.25)


def _cane_half_mm(piece: Piece, taper: float) -> HalfWidth:
    """Half the drawn thickness of a cane; a vine asks for it thousands of times."""
    half, length_mm = piece.thickness_mm * THICKER / 2, max(piece.length_mm, 1)
    internode_mm, exp = piece.internode_mm, math.exp

    def half_mm(along_mm: float) -> float:
        share = along_mm / length_mm
        if share < 0.0:
            share = 0.0
        elif share > 1.0:
            share = 1.0
        nearest = round(along_mm / internode_mm) * internode_mm
        swell = 0.2 * exp(-(((along_mm - nearest) / 9) ** 2)) + 0.96
        swollen = half * (1 - taper * share) * swell
        return swollen if swollen > _THINNEST_HALF_MM else _THINNEST_HALF_MM

    return half_mm
