"""Draws high cordons: arms along the one high wire, wood that hangs below them."""

from __future__ import annotations

from pencilwood.drawing.forms.looks import FormLooks
from pencilwood.drawing.frame import (
    arm_tips,
    draw_frame,
    draw_frame_targets,
    foot_on_arm,
    under_arm_mm,
)
from pencilwood.drawing.layout import lay_out_hanging

HIGH_CORDON = FormLooks(
    frame=draw_frame,
    frame_targets=draw_frame_targets,
    foot=foot_on_arm,
    under_mm=under_arm_mm,
    stems=lay_out_hanging,
    corners=arm_tips,
)
