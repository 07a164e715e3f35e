"""Draws high cordons: arms along the one high wire, wood that hangs below them."""

from __future__ import annotations

from pencilwood.drawing.forms.arms import arm_looks
from pencilwood.drawing.wood.layout import lay_out_hanging

HIGH_CORDON = arm_looks(lay_out_hanging)
