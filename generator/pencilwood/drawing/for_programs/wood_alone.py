"""The wood of a vine without its frame, for a page that has the frame in another drawing."""

from __future__ import annotations

from collections.abc import Mapping

from pencilwood.drawing.ink.shapes import Group
from pencilwood.drawing.ink.writer import COARSE, element, write
from pencilwood.drawing.names.labels import draw_letters
from pencilwood.drawing.scene.stages import Stages
from pencilwood.drawing.scene.wood_drawing import draw_hanging, draw_parts
from pencilwood.drawing.scene.wood_text import plate_of
from pencilwood.vine.wood import Parts


def draw_wood_alone(parts: Parts, prefix: str, stages: Stages, data: Mapping[str, str]) -> str:
    """The groups of all parts as SVG text, in the same layers as in a whole drawing.

    Nobody is shown it as it is: it has neither a title nor a view box.
    """
    plate = plate_of(parts)
    letters = draw_letters(plate).of
    layers = (
        Group(draw_parts(plate, prefix, stages, letters), {"class": "pw-wood-all"}),
        Group(draw_hanging(plate, prefix, stages, letters), {"class": "pw-wood-front"}),
    )
    root = {"class": "pw-vine", **{f"data-{key}": value for key, value in data.items()}}
    return element("svg", root, "".join(write(layer, COARSE) for layer in layers))
