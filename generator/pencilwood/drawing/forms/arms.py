"""How forms with arms are drawn; they differ in the wood that stands on the arms or hangs."""

from __future__ import annotations

from pencilwood.drawing.forms.looks import FormLooks, Stems
from pencilwood.drawing.wood.frame import (
    arm_tips,
    draw_frame,
    draw_frame_targets,
    foot_on_arm,
    frame_wood,
    under_arm_mm,
)


def arm_looks(stems: Stems) -> FormLooks:
    """Arms on both sides of the head, or on one, with this wood on them."""
    return FormLooks(
        frame=draw_frame,
        frame_wood=frame_wood,
        frame_targets=draw_frame_targets,
        foot=foot_on_arm,
        under_mm=under_arm_mm,
        stems=stems,
        corners=arm_tips,
    )
