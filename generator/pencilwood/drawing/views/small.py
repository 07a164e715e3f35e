"""A small drawing for lists: the same geometry as silhouettes, a few kilobytes a vine."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from itertools import chain

from pencilwood.drawing.ink.curves import outline, same_way_round, steps
from pencilwood.drawing.ink.looks import CANE, DEAD, FRAME, INK, OLD, PENCIL
from pencilwood.drawing.ink.points import Point
from pencilwood.drawing.ink.shapes import Attributes, Ink, Run
from pencilwood.drawing.ink.writer import SMALL, element, number, write
from pencilwood.drawing.plate import Frame, Plate
from pencilwood.drawing.scene.wood_text import plate_of
from pencilwood.drawing.wood.stems import Stem
from pencilwood.vine.model import Condition
from pencilwood.vine.wood import Parts

_BENDS = 5
_MARGIN_MM = 60
_TRUNK_SHARE = 0.45
"""So much of the trunk shows below the arms: what the picture is about is above it."""
_WIDER_MM = 2.5
"""Added to each side of a cane, which would be a hairline on a picture as small as a stamp."""


def draw_small(parts: Parts) -> str:
    """A vine as a small SVG file with neither words nor ids; lengths are true to one scale.

    The page shows through: its paper is light or dark, and a picture cannot know which.
    """
    plate = plate_of(parts)
    window = _window(plate)
    box = " ".join(number(value) for value in window.box)
    root = {"xmlns": "http://www.w3.org/2000/svg", "viewBox": box}
    wood = [*_wires(plate, window), *_silhouettes(plate), *_body(plate)]
    return element("svg", root, "".join(write(ink, SMALL) for ink in wood))


def _window(plate: Plate) -> Frame:
    """Around all wood that can be cut, and the upper part of what no cut removes."""
    vine = plate.vine
    bends = (stem.curve.bends[::5] for stem in plate.stems.values())
    tips = (stem.curve.bends[-1] for stem in plate.stems.values())
    corners = [*plate.looks.corners(vine), *chain.from_iterable(bends), *tips]
    xs, ys = zip(*corners, strict=True)
    left, right = min(0, *xs), max(0, *xs)
    top = min(-vine.cordon_height_mm, *ys)
    low = max(-vine.cordon_height_mm * (1 - _TRUNK_SHARE), *ys)
    around = _MARGIN_MM
    return Frame(left - around, top - around, right + around, low + around)


def _wires(plate: Plate, window: Frame) -> Iterator[Ink]:
    trellis = plate.vine.trellis
    heights = [trellis.fruiting_wire_mm, *trellis.catch_wires_mm, trellis.top_wire_mm]
    runs = tuple(
        Run((Point(window.left, -height_mm), Point(window.right, -height_mm)))
        for height_mm in sorted({0, *heights} if not trellis.has_no_wire else {0})
    )
    yield Ink(runs, {"fill": "none", "stroke": PENCIL, "stroke-width": 4})


def _body(plate: Plate) -> Iterator[Ink]:
    """Trunk, head and arms, without their bark."""
    look: Attributes = {"fill": FRAME, "stroke": INK, "stroke-width": 9, "paint-order": "stroke"}
    yield Ink(plate.looks.frame_wood(plate.vine).runs, look)


def _silhouettes(plate: Plate) -> Iterator[Ink]:
    """Canes, then the older wood that covers their feet; all of one colour in one go."""
    runs: dict[tuple[bool, str], list[Run]] = defaultdict(list)
    for stem in plate.stems.values():
        piece = stem.piece
        living = CANE if piece.is_cane else OLD
        colour = DEAD if piece.condition is Condition.DEAD else living
        runs[not piece.is_cane, colour].append(_silhouette(stem))
    for (is_old, colour), same in sorted(runs.items()):
        line: Attributes = {"stroke": INK, "stroke-width": 5} if is_old else {}
        yield Ink(tuple(same), {"fill": colour, **line})


def _silhouette(stem: Stem) -> Run:
    piece = stem.piece
    along = steps(0, piece.length_mm, max(piece.length_mm / _BENDS, 40))
    half = piece.thickness_mm + (_WIDER_MM if piece.is_cane else 0.0)
    taper = 0.5 if piece.is_cane else 0.1
    edge = outline(stem.curve, along, lambda at: half * (1 - taper * at / along[-1]))
    return Run(tuple(same_way_round(edge)), closed=True)
