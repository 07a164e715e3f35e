"""How far from the middle a name below the arm is clear of the trunk, in large letters too."""

from __future__ import annotations

from dataclasses import dataclass

from pencilwood.drawing.ink.looks import POSITION_MM
from pencilwood.drawing.names.crowded_names import LARGER_ON_PHONES, half_wide_mm
from pencilwood.drawing.plate import Plate
from pencilwood.drawing.wood.stems import THICKER

LARGEST_ON_PHONES_MM = 88.0
"""How high the names of the widest vine from near are on a phone."""
LOWER_ON_PHONES = 0.4
"""How much lower large names stand on a phone, compared with their height: so the line from the
place does not run into them. chapters.css gives it."""
_CLEAR_OF_TRUNK_MM = 20.0
"""Between the bark and a name in the large letters of a small screen."""
_CLEAR_OF_KNEE_MM = 12.0
"""The same, where the trunk bends into the arm."""
_ROUND_KNEE_MM = 6.0
"""The outline of that bend has its points so far apart, or farther."""
_CAPITAL_SHARE = 0.75


@dataclass(frozen=True)
class AroundTrunk:
    """Where the wood ends on either side, and how much larger than drawn the names may be."""

    left_mm: float
    right_mm: float
    times: float

    def beside(self, name: str, x: float) -> float:
        """Where the middle of the name stands, whose place is at `x`."""
        half = half_wide_mm(name) * self.times
        return max(x, self.right_mm + half) if x > 0 else min(x, -self.left_mm - half)


def around_trunk(plate: Plate, phone_mm: float, foot_y: float) -> AroundTrunk:
    """Around the trunk for names with such a foot that phones show `phone_mm` high.

    Larger letters begin nearer to the arm, where the trunk is wider.
    """
    bark = plate.vine.trunk_thickness_mm * THICKER / 2 * 1.15 + _CLEAR_OF_TRUNK_MM
    if phone_mm <= POSITION_MM:
        return AroundTrunk(bark, bark, phone_mm / POSITION_MM or LARGER_ON_PHONES)
    top_y = foot_y - phone_mm * (_CAPITAL_SHARE - LOWER_ON_PHONES)
    runs = plate.looks.frame_wood(plate.vine).runs
    xs = [x for run in runs for x, y in run.points if y > top_y - _ROUND_KNEE_MM]
    left, right = -min(xs, default=0.0), max(xs, default=0.0)
    return AroundTrunk(
        max(bark, left + _CLEAR_OF_KNEE_MM),
        max(bark, right + _CLEAR_OF_KNEE_MM),
        max(phone_mm / POSITION_MM, LARGER_ON_PHONES),
    )
