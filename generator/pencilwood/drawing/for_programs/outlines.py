"""The outline of every piece of wood on a drawing, for a program that lets pieces be tapped."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from pencilwood.drawing.ink.curves import outline, steps
from pencilwood.drawing.ink.points import XY, between
from pencilwood.drawing.ink.shapes import Ink
from pencilwood.drawing.plate import Frame, Plate
from pencilwood.drawing.scene.wood_drawing import drawn_from_mm, drawn_to_mm, nearest_first
from pencilwood.drawing.scene.wood_text import plate_of
from pencilwood.vine.wood import Part, Parts

_BEND_EVERY_MM = 40.0
_CLOSE_TOGETHER_MM = 90.0
"""So far from their feet canes stand close to each other and to the wood that bears them."""

Outlines = Mapping[str, tuple[XY, ...]]
"""Name of a part, or of trunk, head or an arm -> corners, in millimetres as on the drawing."""


def outlines(parts: Parts, *, with_frame: bool, wider_mm: float = 0.0) -> Outlines:
    """Each piece's outline as it is drawn; what lies over other wood comes first.

    Away from their feet, canes are at least `wider_mm` to each side of their middle, so that a
    finger finds them.
    """
    plate = plate_of(parts)
    hanging, standing = nearest_first(plate)
    named = {name: _of_part(plate, parts.parts[parts.index[name]], wider_mm) for name in hanging}
    if with_frame:
        named |= _of_frame(plate)
    for name in standing:
        named[name] = _of_part(plate, parts.parts[parts.index[name]], wider_mm)
    return named


def _of_part(plate: Plate, part: Part, wider_mm: float) -> tuple[XY, ...]:
    stem = plate.stem(part)
    if not part.is_cane:
        start, end = drawn_from_mm(part), drawn_to_mm(part)
        return tuple(outline(stem.curve, steps(start, end, _BEND_EVERY_MM), stem.half_mm))
    along = steps(0.0, float(part.piece.length_mm), _BEND_EVERY_MM)

    def half_mm(at: float) -> float:
        return max(stem.half_mm(at), wider_mm if at > _CLOSE_TOGETHER_MM else 0.0)

    return tuple(outline(stem.curve, along, half_mm))


def _of_frame(plate: Plate) -> dict[str, tuple[XY, ...]]:
    """Head, arms and trunk, each as far as the head, so that none hides another."""
    targets = plate.looks.frame_targets(plate.vine)
    drawn = [thing for thing in targets.things if isinstance(thing, Ink)]
    named = {str(ink.attributes["data-frame"]): ink.runs[0].points for ink in reversed(drawn)}
    head = named.get("head")
    if head is None:
        return named
    xs, ys = [x for x, _ in head], [y for _, y in head]
    ends = {
        "left arm": (0, min(xs), -1),
        "right arm": (0, max(xs), 1),
        "trunk": (1, max(ys), 1),
    }
    return {
        name: tuple(_on_one_side(points, *ends[name])) if name in ends else points
        for name, points in named.items()
    }


def within(points: Sequence[XY], window: Frame) -> list[XY]:
    """What of an outline lies within a window (Sutherland and Hodgman's way of clipping)."""
    kept = list(points)
    for axis, edge, side in (
        (0, window.left, 1),
        (0, window.right, -1),
        (1, window.top, 1),
        (1, window.bottom, -1),
    ):
        kept = _on_one_side(kept, axis, edge, side)
    return kept


def _on_one_side(points: Sequence[XY], axis: int, edge: float, side: int) -> list[XY]:
    """What of an outline lies beyond an edge; `side` 1 keeps the larger values, -1 the smaller."""
    kept: list[XY] = []
    for here, after in zip(points, [*points[1:], *points[:1]], strict=True):
        inside = (here[axis] - edge) * side >= 0
        if inside:
            kept.append(here)
        if inside != ((after[axis] - edge) * side >= 0):
            kept.append(between(here, after, (edge - here[axis]) / (after[axis] - here[axis])))
    return kept
