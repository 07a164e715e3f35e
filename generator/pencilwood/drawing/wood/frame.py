"""The wood that no cut of the exercise removes: trunk, head and arms, drawn as one body."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache

from pencilwood.drawing.ink.curves import Curve, HalfWidth, same_way_round, trace
from pencilwood.drawing.ink.grain import Grain
from pencilwood.drawing.ink.looks import FACE, FRAME, INK
from pencilwood.drawing.ink.points import Point
from pencilwood.drawing.ink.shapes import Attributes, Group, Ink, Run, Thing
from pencilwood.drawing.wood.bark import bark, older_wood
from pencilwood.drawing.wood.stems import THICKER
from pencilwood.vine.model import Arm, Position, Side, Vine

_KNEE_MM = 80.0
"""How far the bend from the trunk into an arm is rounded."""
_TIP_SHARE = 0.6
"""How thick an arm is drawn at its tip, compared with its start."""
_GROUND_FLARE = 0.45
BELOW_GROUND_MM = 14.0
_FACE = ((0, -1), (0.7, -0.7), (1, 0), (0.7, 0.7), (0, 1), (-0.4, 0.7), (-0.6, 0), (-0.4, -0.7))
"""Around a sawn face: outward and down, as shares of half its height."""


def arm_thickness_mm(arm: Arm, along_mm: float) -> float:
    """Drawn thickness of an arm at a distance from the head."""
    share = min(max(along_mm / arm.length_mm, 0.0), 1.0)
    return arm.thickness_mm * THICKER * (1 - (1 - _TIP_SHARE) * share)


def outward(side: Side) -> int:
    """-1 when the arm goes to the left."""
    return -1 if side is Side.LEFT else 1


def arm_of(vine: Vine, position: Position) -> Arm:
    """The arm a position is on."""
    return vine.arm_on(position.side)


def foot_on_arm(vine: Vine, position: Position) -> Point:
    """Where a position stands on the upper side of its arm."""
    return Point(outward(position.side) * position.at_mm, -vine.cordon_height_mm)


def under_arm_mm(vine: Vine, position: Position) -> float:
    """How far below its foot the underside of the arm is."""
    return arm_thickness_mm(arm_of(vine, position), position.at_mm)


def arm_tips(vine: Vine) -> list[Point]:
    """The tips of the arms."""
    height_mm = -vine.cordon_height_mm
    return [Point(outward(arm.side) * arm.length_mm, height_mm) for arm in vine.arms]


@dataclass(frozen=True)
class Limb:
    """A stretch of trunk or arm, from where it starts to where it ends along its curve."""

    name: str
    curve: Curve
    half_mm: HalfWidth
    start_mm: float
    end_mm: float
    shaded: int = 1


def draw_frame(vine: Vine, prefix: str) -> Group:
    """Trunk, head and arms."""
    stumps = [arm for arm in vine.arms if is_stump(vine, arm)]
    short = [f"arm {arm.side}" for arm in stumps]
    body = draw_body(vine, _limbs(vine), _joints(vine), prefix, short)
    fine: Attributes = {"class": "pw-bark", "fill": "none", "stroke-width": 1.5}
    strokes = (*_around_knees(vine), *_over_head(vine))
    faces = (sawn_face(vine, arm, float(arm.length_mm)) for arm in stumps)
    return Group((*body.things, Ink(strokes, fine), *faces), body.attributes)


def is_stump(vine: Vine, arm: Arm) -> bool:
    """Whether an arm was sawn off before it bends out of the trunk."""
    return arm.length_mm < vine.trunk_thickness_mm * THICKER / 2 + _KNEE_MM


def sawn_face(vine: Vine, arm: Arm, at_mm: float) -> Ink:
    """The pale face of an arm that was sawn off at this distance from the middle of the head."""
    side, half = outward(arm.side), arm_thickness_mm(arm, 0) / 2
    middle = half - vine.cordon_height_mm
    face = tuple(
        Point(side * (at_mm + aside * half * 0.4), middle + down * half) for aside, down in _FACE
    )
    cut: Attributes = {"class": "pw-face", "fill": FACE, "stroke": INK, "stroke-width": 2.6}
    return Ink((Run(face, closed=True),), cut)


def frame_wood(vine: Vine) -> Ink:
    """The same without its bark."""
    return body_wood(_limbs(vine), _joints(vine))


@lru_cache(maxsize=4)
def _limbs(vine: Vine) -> tuple[Limb, ...]:
    """The large and the small drawing of a vine ask for them."""
    return trunk(vine), *(arm_limb(vine, arm) for arm in vine.arms)


def _joints(vine: Vine) -> list[Run]:
    return [*_knees(vine), _head(vine)]


def body_wood(limbs: Sequence[Limb], joints: Sequence[Run]) -> Ink:
    """Limbs and the runs that join them, filled as one body of old wood."""
    runs = [older_wood(limb.curve, limb.start_mm, limb.end_mm, limb.half_mm) for limb in limbs]
    # The pen line below the colour: the lines inside the body are painted over.
    body: Attributes = {
        "class": "pw-frame-wood",
        "stroke-width": 4.4,
        "fill": FRAME,
        "paint-order": "stroke",
    }
    return Ink((*runs, *joints), body)


def draw_body(
    vine: Vine,
    limbs: Sequence[Limb],
    joints: Sequence[Run],
    prefix: str,
    without_bark: Sequence[str] = (),
) -> Group:
    """The same with the bark of the limbs, but for those of these names."""
    things: list[Thing] = [body_wood(limbs, joints)]
    for limb in limbs:
        if limb.name in without_bark:
            continue
        start, end = limb.start_mm, limb.end_mm
        if limb.name == "trunk":
            end -= _KNEE_MM * 0.6
        else:
            start += vine.trunk_thickness_mm * THICKER * 0.6 + _KNEE_MM * 0.5
        grain = Grain(limb.name)
        things.extend(bark(limb.curve, start, end, limb.half_mm, grain, shaded=limb.shaded))
    return Group(tuple(things), {"class": "pw-frame", "id": f"{prefix}-frame", "stroke": INK})


def draw_frame_targets(vine: Vine) -> Group:
    """Trunk, arms and head once more, unseen, each by itself, to be tapped by name."""
    arms = [arm_limb(vine, arm) for arm in vine.arms]
    runs = {f"{limb.name.removeprefix('arm ')} arm": outline_of(limb) for limb in arms}
    return unseen_targets({"trunk": outline_of(trunk(vine)), **runs, "head": _head(vine)})


def unseen_targets(runs: Mapping[str, Run]) -> Group:
    """What no cut removes, unseen, to be tapped by name."""
    unseen: Attributes = {"class": "pw-frame-target", "fill": INK, "fill-opacity": "0"}
    things = tuple(Ink((run,), {**unseen, "data-frame": name}) for name, run in runs.items())
    return Group(things, {"class": "pw-frame-targets"})


def outline_of(limb: Limb) -> Run:
    """The edge of a limb as its wood is drawn."""
    return older_wood(limb.curve, limb.start_mm, limb.end_mm, limb.half_mm)


def trunk(vine: Vine) -> Limb:
    """The trunk from the ground to the head."""
    half = vine.trunk_thickness_mm * THICKER / 2
    height = vine.cordon_height_mm
    grain = Grain("trunk")

    def heading(along_mm: float) -> float:
        return 0.07 * math.sin(2 * math.pi * along_mm / height)

    def half_mm(along_mm: float) -> float:
        flare = 1 + _GROUND_FLARE * math.exp(-max(along_mm, 0.0) / 70)
        swell = 1 + 0.12 * math.exp(-abs(height - along_mm) / 90)
        return half * (flare * swell + grain.within(-0.05, 0.05, "rough", int(along_mm // 28)))

    curve = trace(Point(0, 0), height, heading)
    top = height - _thickest_arm_mm(vine) * 0.45
    return Limb("trunk", curve, half_mm, -BELOW_GROUND_MM, top)


def _thickest_arm_mm(vine: Vine) -> float:
    return max(arm.thickness_mm for arm in vine.arms) * THICKER


def arm_limb(vine: Vine, arm: Arm) -> Limb:
    """An arm whose upper side lies level at the arm's height, where heights are measured from."""
    side = outward(arm.side)
    grain = Grain(f"arm {arm.side}")
    start = arm_thickness_mm(arm, 0)
    fall = math.atan2((start - arm_thickness_mm(arm, arm.length_mm)) / 2, arm.length_mm)
    level = (math.pi / 2 - fall) * side

    def half_mm(along_mm: float) -> float:
        half = arm_thickness_mm(arm, along_mm) / 2
        rough = grain.within(-0.05, 0.05, "rough", int(along_mm // 26))
        left = max(arm.length_mm - along_mm, 0.0)
        rounded = math.sqrt(min(1.0, 0.25 + left / (half * 1.2)))
        return half * (1 + rough) * rounded

    curve = trace(Point(0, -vine.cordon_height_mm + start / 2), arm.length_mm, lambda _: level)
    return Limb(f"arm {arm.side}", curve, half_mm, 0, arm.length_mm, shaded=side)


def _bending(vine: Vine) -> Iterator[Arm]:
    return (arm for arm in vine.arms if not is_stump(vine, arm))


def _knees(vine: Vine) -> Iterator[Run]:
    """The rounded bend between the trunk and each arm."""
    top = -vine.cordon_height_mm
    for arm in _bending(vine):
        side = outward(arm.side)
        corner_x = side * vine.trunk_thickness_mm * THICKER / 2 * 0.96
        corner_y = top + arm_thickness_mm(arm, 60) * 0.97
        points = [Point(0, corner_y + _KNEE_MM), Point(0, corner_y - 20)]
        for step in range(9):
            turn = math.pi / 2 * step / 8
            points.append(
                Point(
                    corner_x + side * _KNEE_MM * (1 - math.sin(turn)),
                    corner_y + _KNEE_MM * (1 - math.cos(turn)),
                )
            )
        yield Run(tuple(same_way_round(points)), closed=True, smooth=False)


def _around_knees(vine: Vine) -> Iterator[Run]:
    """Strokes of bark that bend from the trunk into each arm."""
    for arm in _bending(vine):
        side = outward(arm.side)
        middle = Point(
            side * (vine.trunk_thickness_mm * THICKER / 2 * 0.96 + _KNEE_MM),
            arm_thickness_mm(arm, 60) * 0.97 - vine.cordon_height_mm + _KNEE_MM,
        )
        room = min(vine.trunk_thickness_mm * THICKER / 2, arm_thickness_mm(arm, 0)) * 0.9
        for stroke, (begin, end) in enumerate(((5, 60), (25, 88), (0, 50), (40, 92), (8, 80))):
            far = _KNEE_MM + 7 + room * stroke / 5
            turns = [math.radians(begin + (end - begin) * step / 3) for step in range(4)]
            yield Run(
                tuple(
                    Point(middle.x - side * math.cos(turn) * far, middle.y - math.sin(turn) * far)
                    for turn in turns
                )
            )


def _head_size_mm(vine: Vine) -> tuple[Point, float, float]:
    """Middle of the head, half its width and half its height."""
    thick = _thickest_arm_mm(vine)
    middle = Point(0, -vine.cordon_height_mm + thick * 0.5)
    return middle, vine.trunk_thickness_mm * THICKER / 2 * 1.18, thick * 0.58


def _over_head(vine: Vine) -> Iterator[Run]:
    """Strokes of bark that bend over the knob."""
    middle, half_x, half_y = _head_size_mm(vine)
    for share, begin, end in ((0.3, -75, 30), (0.5, -50, 70), (0.68, -95, -15), (0.82, -30, 45)):
        turns = [math.radians(begin + (end - begin) * step / 3) for step in range(4)]
        yield Run(
            tuple(
                Point(
                    middle.x + math.sin(turn) * half_x * share,
                    middle.y - math.cos(turn) * half_y * share,
                )
                for turn in turns
            )
        )


def _head(vine: Vine) -> Run:
    """The knob where the arms part."""
    middle, half_x, half_y = _head_size_mm(vine)
    grain = Grain("head")
    points = []
    for step in range(16):
        turn = 2 * math.pi * step / 16
        wide = 1 + grain.within(-0.05, 0.05, "knob", step)
        points.append(
            Point(
                middle.x + math.sin(turn) * half_x * wide,
                middle.y - math.cos(turn) * half_y * wide,
            )
        )
    return Run(tuple(same_way_round(points)), closed=True)
