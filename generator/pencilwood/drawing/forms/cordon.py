"""Draws cordons: arms along the wire on both sides of the head, or on one."""

from __future__ import annotations

from pencilwood.drawing.forms.arms import arm_looks
from pencilwood.drawing.wood.layout import lay_out

CORDON = arm_looks(lay_out)
