"""Where a finger or a mouse cuts: above every bud but the last, and at the foot of every part."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from pencilwood.drawing.ink.points import Point
from pencilwood.drawing.plate import Plate
from pencilwood.drawing.wood.canes import cut_place_mm
from pencilwood.drawing.wood.stems import Stem
from pencilwood.vine.wood import Part

APART_MM = 24.0
"""Cut points of one position keep at least so far apart where the wood leaves room."""
_TRY_EVERY_MM = 3.0


@dataclass(frozen=True)
class CutPoint:
    """One place to cut; `buds` that stay, or None for the foot of the part."""

    part: str
    buds: int | None
    middle: Point
    view: str = ""
    """Of a form with more than one view the one it lies in."""


def cut_points_of_views(plate: Plate) -> tuple[CutPoint, ...]:
    """Every cut point of every view."""
    return tuple(point for view in plate.views for point in cut_points(view))


def cut_points(plate: Plate) -> tuple[CutPoint, ...]:
    """Every cut point of one view, position by position, in the order of the parts."""
    points: list[CutPoint] = []
    for position in plate.parts.positions:
        numbers = plate.parts.of_position(position.name)
        points.extend(_at_position(plate, [plate.parts.parts[number] for number in numbers]))
    view = plate.looks.view
    return tuple(replace(point, view=view) for point in points) if view else tuple(points)


def _at_position(plate: Plate, parts: list[Part]) -> list[CutPoint]:
    above_buds = [
        CutPoint(part.name, buds, plate.stem(part).curve.at(cut_place_mm(plate.stem(part), buds)))
        for part in parts
        if part.is_cane
        for buds in range(1, part.piece.buds)
    ]
    taken = [point.middle for point in above_buds]
    feet: Mapping[str, CutPoint] = {}
    # Short old wood has little room to give way, so that canes come last.
    for part in sorted(parts, key=lambda part: part.is_cane):
        middle = _foot(plate.stem(part), part, taken)
        taken.append(middle)
        feet = {**feet, part.name: CutPoint(part.name, None, middle)}
    ordered: list[CutPoint] = []
    for part in parts:
        ordered.append(feet[part.name])
        ordered.extend(point for point in above_buds if point.part == part.name)
    return ordered


def _foot(stem: Stem, part: Part, taken: list[Point]) -> Point:
    """The lowest free place of a part; the freest one when none is free."""
    room = stem.piece.internode_mm if part.is_cane else part.end_mm - part.start_mm
    best, best_room = stem.curve.at(part.start_mm), -1.0
    for step in range(int(room / _TRY_EVERY_MM) + 1):
        place = stem.curve.at(part.start_mm + step * _TRY_EVERY_MM)
        free = min((place.away_from(other) for other in taken), default=APART_MM)
        if free >= APART_MM:
            return place
        if free > best_room:
            best, best_room = place, free
    return best
