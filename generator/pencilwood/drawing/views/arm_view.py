"""The arms of a small vine and the wood left on them, large: what a rule's example is about."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from pencilwood.drawing.plate import Frame, Plate
from pencilwood.drawing.scene.tied_canes import Laid
from pencilwood.drawing.scene.wood_text import plate_of
from pencilwood.drawing.wood.stems import THICKER
from pencilwood.vine.model import Growth, rise_mm
from pencilwood.vine.wood import Part, WoodLeft
from pencilwood.words import say

_BESIDE_MM = 110.0
_PAST_MM = 90.0
_LEAST_AHEAD_MM = 380.0
_BEHIND_MM = 210.0
_PAST_END_MM = 30.0


def window_on_arms(left: WoodLeft, laid: Sequence[Laid] = ()) -> Frame:
    """Room for all the wood that is left; what is cut off may run beyond the edge.

    `laid` are canes tied along the wire, which need no room above it but beside it. A vine with
    more than one view is shown whole.
    """
    plate = plate_of(left.parts, laid)
    if plate.second is not None:
        return plate.frame
    feet = [plate.foot(position) for position in left.parts.positions]
    level = min(foot.y for foot in feet)
    heights = _heights_mm(left, {one.part for one in laid})
    ahead, behind = max(heights) + _PAST_MM, _PAST_MM - min(heights)
    if left.parts.vine.form.growth is Growth.DOWN:
        ahead, behind = behind, ahead
    top, bottom = plate.around_arm(max(_LEAST_AHEAD_MM, ahead), max(_BEHIND_MM, behind), level)
    inside = [point for stem in plate.stems.values() for point in stem.curve.points]
    inside = [point for point in inside if top <= point.y <= bottom]
    xs = [
        *(foot.x for foot in feet),
        *(point.x for point in (*inside, *plate.reaching)),
        *_tips(plate),
    ]
    return Frame(min(xs) - _BESIDE_MM, top, max(xs) + _BESIDE_MM, bottom)


def window_on_rest(left: WoodLeft, laid: Sequence[Laid] = ()) -> Frame:
    """The whole vine, only as high and as low as what is left of it and the wires need."""
    plate = plate_of(left.parts, laid)
    lying = {one.part for one in laid}
    ends = [
        (stem.curve.at(along_mm), stem.half_mm(0) + _PAST_END_MM)
        for view in plate.views
        for part, state in zip(left.parts.parts, left.states, strict=True)
        if state and part.name not in lying
        for stem in (view.stem(part),)
        for along_mm in (part.start_mm, part.start_mm + length_left_mm(part, state))
    ]
    return plate.frame_around([*ends, *((tip, _PAST_END_MM) for tip in plate.reaching)])


def scale_words(language: str) -> str:
    """What the whole drawing says of its scale; a part has no room for it."""
    return say(language, "drawing.thicker", times=THICKER)


def _heights_mm(left: WoodLeft, lying: Collection[str]) -> list[int]:
    """Heights above the arm of the far ends of all wood that is left; 0 is always there."""
    return [0] + [
        part.base_height_mm + rise_mm(part.piece.lean, length_left_mm(part, state))
        for part, state in zip(left.parts.parts, left.states, strict=True)
        if state and part.name not in lying
    ]


def length_left_mm(part: Part, state: int) -> int:
    """How much of a part is left in a state of the wood."""
    if part.is_cane and state < part.most:
        return (state + 1) * part.piece.internode_mm
    return part.end_mm - part.start_mm


def _tips(plate: Plate) -> list[float]:
    """The head and the ends of the arms, which stand at 0 and at their length either way."""
    signs = {"left": -1.0, "right": 1.0}
    return [0.0, *(signs[arm.side] * arm.length_mm for arm in plate.vine.arms)]
