"""One position of a vine, large: the wood that stands there and the piece of arm below it."""

from __future__ import annotations

from dataclasses import dataclass, replace

from pencilwood.drawing.ink.looks import INK, POSITION_MM
from pencilwood.drawing.ink.points import Point
from pencilwood.drawing.ink.shapes import Attributes, Group, Ink, Run, Words
from pencilwood.drawing.names.place_names import boxes_of_names
from pencilwood.drawing.plate import Frame, Plate, Window
from pencilwood.drawing.scene.stages import Stages
from pencilwood.drawing.scene.wood_shown import WoodShown
from pencilwood.drawing.scene.wood_text import plate_of
from pencilwood.drawing.vine_drawing import Paper, draw_vine
from pencilwood.units import format_length
from pencilwood.vine.measures import away_mm
from pencilwood.vine.model import Growth, Vine
from pencilwood.vine.wood import Parts, WoodLeft, divide

CLOSE_UP = "pw-close-up"
_BESIDE_MM = 130.0
_AHEAD_MM = 430.0
_BEHIND_MM = 130.0
"""Room for the name of a place, away from its wood."""
_MARGIN_MM = 24.0
_SCALE_MM = 100
_CLEAR_OF_SCALE_MM = 14.0
_BEHIND_HEAD_MM = 330.0
"""Names of places around a head stand in rows below it."""
_LETTER_MM = 24.0
"""Letters are no higher on any page, so that they stand near their own wood."""
_NAME_MM = 16.5
"""About so high chapters.css shows its name on every screen; the words of the scale are as high."""
_NEIGHBOURS_MM, _AHEAD_OF_WOOD_MM = 230.0, 420.0


@dataclass(frozen=True)
class PlaceShown:
    """One position of a vine, uncut or with what is gone shown as a ghost."""

    parts: Parts
    """All wood of the vine, of which the position is drawn alone."""
    position: str
    left: WoodLeft | None = None
    """What is left of the vine; None where nothing has been cut."""


def draw_close_up(shown: PlaceShown, paper: Paper) -> str:
    """A position as SVG text; its edges and its scale are added to the paper."""
    position, left = shown.position, shown.left
    alone = divide(_only(shown.parts.vine, position))
    stages = Stages.leaving(None if left is None else _left_at(alone, left))
    window = _window(plate_of(alone), position)
    near = replace(
        paper,
        window=Window(window),
        over=_scale(plate_of(alone), position, window, paper),
        css_class=CLOSE_UP,
    )
    wood = WoodShown(alone, stages, letter_mm=_LETTER_MM, phone_mm=_NAME_MM)
    return draw_vine(wood, near)


def window_on_place(parts: Parts, position: str) -> Frame:
    """A window on a position with the feet of its neighbours, far enough for all its old wood."""
    plate = plate_of(parts)
    here = [part for part in parts.parts if part.position.name == position]
    foot = plate.foot(here[0].position)
    far_mm = max(0, *(away_mm(parts.vine, part, 0) for part in here))
    behind_mm = _BEHIND_MM if plate.second is None else _BEHIND_HEAD_MM
    top, bottom = plate.around_arm(far_mm + _AHEAD_OF_WOOD_MM, behind_mm)
    return Frame(foot.x - _NEIGHBOURS_MM, top, foot.x + _NEIGHBOURS_MM, bottom)


def _only(vine: Vine, position: str) -> Vine:
    """The same vine with the wood of one position alone."""
    arms = tuple(
        replace(arm, positions=tuple(one for one in arm.positions if one.name == position))
        for arm in vine.arms
    )
    return replace(vine, arms=arms)


def _left_at(alone: Parts, left: WoodLeft) -> WoodLeft:
    states = tuple(left.states[left.parts.index[part.name]] for part in alone.parts)
    return WoodLeft(alone, states)


def _scale(plate: Plate, position: str, window: Frame, paper: Paper) -> Group | None:
    """A length to compare with, beside the name, on the side away from the trunk.

    None on a form that has its names elsewhere.
    """
    if not _has_scale(plate):
        return None
    here = next(one for one in plate.parts.positions if one.name == position)
    outward = 1 if plate.foot(here).x > 0 else -1
    edge = window.right if outward > 0 else window.left
    far = edge - outward * _MARGIN_MM
    (name,) = boxes_of_names(plate)
    y = name.top + (name.bottom - name.top) * 0.72
    near = far - outward * _SCALE_MM
    ends = (Point(near, y - 8), Point(near, y), Point(far, y), Point(far, y - 8))
    bar: Attributes = {
        "class": "pw-scale-line", "fill": "none", "stroke": INK, "stroke-width": 2.4,
    }  # fmt: skip
    look: Attributes = {
        "class": "pw-words pw-close-scale", "font-size": _NAME_MM, "fill": INK, "stroke": "none",
        "text-anchor": "middle",
    }  # fmt: skip
    middle = Point((near + far) / 2, y - 10)
    return Group((
        Ink((Run(ends, smooth=False),), bar),
        Words(middle, format_length(_SCALE_MM, paper.units, paper.language), look),
    ))  # fmt: skip


def _has_scale(plate: Plate) -> bool:
    return plate.looks.name_foot is None and plate.second is None


def _with_scale(left: float, right: float, name: Frame, *, outward: int) -> tuple[float, float]:
    """Wide enough for the scale beside a name, which the trunk may have pushed outward."""
    room_mm = _CLEAR_OF_SCALE_MM + _SCALE_MM + _MARGIN_MM
    if outward > 0:
        return left, max(right, name.right + room_mm)
    return min(left, name.left - room_mm), right


def _window(plate: Plate, position: str) -> Frame:
    """Room for the foot of every piece and for the name; canes go on beyond the edge."""
    here = next(one for one in plate.parts.positions if one.name == position)
    foot = plate.foot(here)
    hangs = plate.vine.form.growth is Growth.DOWN
    highest, lowest = plate.around_arm(_AHEAD_MM, 0.0, foot.y)
    near_ends = [
        point
        for stem in plate.stems.values()
        for point in stem.curve.points
        if (point.y <= lowest if hangs else point.y >= highest)
    ]
    xs = [foot.x - _BESIDE_MM, foot.x + _BESIDE_MM, *(point.x for point in near_ends)]
    if plate.looks.name_foot is not None:
        name_x = plate.looks.name_foot(plate.vine, here).x
        xs += [name_x - POSITION_MM, name_x + POSITION_MM]
    left, right = min(xs) - _MARGIN_MM, max(xs) + _MARGIN_MM
    ys = [point.y for point in near_ends] or [lowest if hangs else highest]
    (name,) = boxes_of_names(plate)
    if _has_scale(plate):
        left, right = _with_scale(left, right, name, outward=1 if foot.x > 0 else -1)
    if hangs:
        top = min(name.top, *ys) - _MARGIN_MM
        return Frame(left, top, right, min(lowest, max(ys)) + _MARGIN_MM)
    # A name in a close-up is smaller than on a whole vine, and ends sooner under its line.
    bottom = max(name.bottom - POSITION_MM * 0.25, *ys) + _MARGIN_MM / 2
    return Frame(left, max(highest, min(ys)) - _MARGIN_MM, right, bottom)
