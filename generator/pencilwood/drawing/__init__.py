"""The drawing of a vine, made from its measurements: geometry, scene, SVG, and words."""

from pencilwood.drawing.describe import describe_vine, part_facts, part_label, summarise_vine
from pencilwood.drawing.scene.cutpoints import CutPoint
from pencilwood.drawing.views.arm_view import scale_words, window_on_arms
from pencilwood.drawing.views.pruned import draw_pruned
from pencilwood.drawing.vine_drawing import (
    cutpoint_positions,
    draw_passes,
    draw_state,
    draw_vine,
)

__all__ = [
    "CutPoint",
    "cutpoint_positions",
    "describe_vine",
    "draw_passes",
    "draw_pruned",
    "draw_state",
    "draw_vine",
    "part_facts",
    "part_label",
    "scale_words",
    "summarise_vine",
    "window_on_arms",
]
