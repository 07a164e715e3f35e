"""Letters beside the wood stand clear of the arm, however short the wood is."""

from __future__ import annotations

import pytest

from pencilwood.drawing.labels import LETTER_MM, place_letters
from pencilwood.drawing.plate import Plate
from pencilwood.vine.forms.cordon import TWO_ARM_CORDON
from pencilwood.vine.model import Piece, Side
from pencilwood.vine.wood import divide
from vines import arm, cane, vine


@pytest.mark.parametrize("long_mm", [8, 15, 24, 60])
def test_the_arm_cuts_no_letter(long_mm: int) -> None:
    old = Piece("m", 2, long_mm, 14)
    arms = [arm(side, 500, (250, [old, cane("a", 6)])) for side in (Side.LEFT, Side.RIGHT)]
    shown = vine(TWO_ARM_CORDON, *arms)
    for _, y in place_letters(Plate(divide(shown))).values():
        assert y + LETTER_MM * 0.5 < -shown.cordon_height_mm
