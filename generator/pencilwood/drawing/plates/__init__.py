"""The plates of the chapters: labelled parts, tools, ladders, drawn by the hand of the vines."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from pencilwood.drawing.ink.looks import PAPER
from pencilwood.drawing.ink.points import Point
from pencilwood.drawing.ink.shapes import Box, Group
from pencilwood.drawing.ink.svg_root import svg_root
from pencilwood.drawing.ink.writer import COARSE, element, escape, number, write
from pencilwood.drawing.plates.board import WIDTH, Board, Scene
from pencilwood.drawing.plates.canes import parts_of_a_cane, wood_ages, wood_health
from pencilwood.drawing.plates.cuts import cut_and_stub, hand_on_the_arm
from pencilwood.drawing.plates.ladders import leaning_ladder, tripod_ladder
from pencilwood.drawing.plates.leaves import leaf_room
from pencilwood.drawing.plates.spring import shoot_thinning
from pencilwood.drawing.plates.tools import tool_sizes
from pencilwood.drawing.plates.vines import parts_of_the_vine, three_passes
from pencilwood.drawing.plates.which_cane import which_cane
from pencilwood.kept import kept_text
from pencilwood.units import UnitSystem

PLATES: Mapping[str, Callable[[Board], Scene]] = {
    "cut-and-stub": cut_and_stub,
    "hand-on-the-arm": hand_on_the_arm,
    "leaf-room": leaf_room,
    "leaning-ladder": leaning_ladder,
    "parts-of-a-cane": parts_of_a_cane,
    "parts-of-the-vine": parts_of_the_vine,
    "shoot-thinning": shoot_thinning,
    "three-passes": three_passes,
    "tool-sizes": tool_sizes,
    "tripod-ladder": tripod_ladder,
    "which-cane": which_cane,
    "wood-ages": wood_ages,
    "wood-health": wood_health,
}
TALL = 1.5
"""A plate that is higher than this, for its width, is shown narrower: it has to fit on a screen."""


def draw_plate(name: str, prefix: str, language: str, units: UnitSystem = "metric") -> str:
    """A plate as SVG text; every id in it begins with `prefix`."""
    facts = [name, prefix, language, units]
    return kept_text("plate", facts, lambda: _drawn(name, prefix, language, units))


def _drawn(name: str, prefix: str, language: str, units: UnitSystem) -> str:
    board = Board(name, prefix, language, units)
    scene = PLATES[name](board)
    paper = Box(Point(0, 0), WIDTH, scene.height, {"class": "pw-paper", "fill": PAPER})
    inside = (
        element("title", {"id": f"{prefix}-title"}, escape(board.say("title")))
        + element("desc", {"id": f"{prefix}-desc"}, escape(board.say("text")))
        + write(Group((paper, *scene.things)), COARSE)
    )
    box = f"0 0 {number(WIDTH)} {number(scene.height)}"
    tall = " pw-plate-tall" if scene.height > TALL * WIDTH else ""
    rows = " pw-plate-rows" if scene.rows else ""
    root = svg_root("plate", prefix, language, box, f"pw-vine pw-plate{tall}{rows}")
    if scene.rows:
        root = {**root, "preserveAspectRatio": "xMinYMin slice"}
    return element("svg", root, inside)
