"""The drawing of a vine, made from its measurements: geometry, scene, SVG, and words."""

from pencilwood.drawing.describe import describe_vine, part_facts, part_label, summarise_vine
from pencilwood.drawing.scene.cutpoints import CutPoint
from pencilwood.drawing.scene.wood_shown import WoodShown
from pencilwood.drawing.views.arm_view import scale_words, window_on_arms
from pencilwood.drawing.views.pruned import draw_pruned
from pencilwood.drawing.vine_drawing import Paper, draw_vine

__all__ = [
    "CutPoint",
    "Paper",
    "WoodShown",
    "describe_vine",
    "draw_pruned",
    "draw_vine",
    "part_facts",
    "part_label",
    "scale_words",
    "summarise_vine",
    "window_on_arms",
]
