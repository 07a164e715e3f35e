"""One piece of wood as it is drawn.

Lengths along the wood are true to scale. Thickness is drawn `THICKER` times as large, because
true canes would be hairlines on a phone.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property

from pencilwood.drawing.curves import Curve
from pencilwood.drawing.grain import Grain
from pencilwood.vine.model import Piece

THICKER = 2
"""How many times too thick all wood is drawn; every drawing says so."""


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
