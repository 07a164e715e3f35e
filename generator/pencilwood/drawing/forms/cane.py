"""Draws cane-pruned vines: a trunk with a knotty head, below the wire that canes are tied to."""

from __future__ import annotations

import math
from collections.abc import Iterator

from pencilwood.drawing.forms.looks import FormLooks
from pencilwood.drawing.ink.curves import same_way_round
from pencilwood.drawing.ink.grain import Grain
from pencilwood.drawing.ink.looks import PAPER, PENCIL, POSITION_MM
from pencilwood.drawing.ink.points import Point
from pencilwood.drawing.ink.shapes import Attributes, Group, Ink, Run
from pencilwood.drawing.wood.frame import (
    arm_of,
    arm_tips,
    body_wood,
    draw_body,
    foot_on_arm,
    outline_of,
    outward,
    trunk,
    unseen_targets,
)
from pencilwood.drawing.wood.layout import lay_out
from pencilwood.drawing.wood.stems import THICKER
from pencilwood.vine.model import Position, Side, Vine

_BEYOND_MM = 40.0
"""How far the head reaches beyond the middle of the last wood on it, so that all of it stands."""
_NEAR_MM = 150
"""Wood that begins farther out stands on no head."""
_DEEP = 0.95
"""How deep the head is, compared with the trunk's thickness as it is drawn."""
_SQUARE = 0.72
_SQUARE_ABOVE = 0.4
"""How flat its sides and its upper side are: 1 for an ellipse, 0 for a box."""
_TAPER_MM = 120.0
"""How far below the middle of the head it has narrowed to the trunk."""
_NAMES_APART_MM = 85.0
"""Wide enough for the larger names of a page for a room."""
_OFF_FOOT_MM = 9.0
_BENDS = (
    (0.88, 165, 110), (0.86, 80, 20), (0.72, 205, 150), (0.7, 130, 60), (0.66, 35, -30),
    (0.52, 170, 95), (0.48, 75, 5), (0.3, 150, 40), (0.84, 232, 190), (0.84, -8, -42),
)  # fmt: skip
"""Strokes around the head: how far from its middle, and from which degree to which."""
_RISES = (
    (-0.86, 1.1, 0.35), (-0.6, 1.0, 0.1), (-0.34, 1.15, 0.3), (-0.1, 1.0, 0.0), (0.14, 1.2, 0.25),
    (0.36, 1.0, 0.05), (0.6, 1.1, 0.3), (0.82, 1.0, 0.2),
)  # fmt: skip
"""Strokes that rise into it: how far aside, and from where to where, in parts of that length."""


def _trunk_half_mm(vine: Vine) -> float:
    return vine.trunk_thickness_mm * THICKER / 2


def _deep_mm(vine: Vine) -> float:
    return vine.trunk_thickness_mm * THICKER * _DEEP


def _reach_mm(vine: Vine, side: Side) -> float:
    """How far the head goes to one side."""
    feet = (one.at_mm for arm in vine.arms if arm.side is side for one in arm.positions)
    near = [float(at_mm) for at_mm in feet if at_mm < _NEAR_MM]
    return max(_trunk_half_mm(vine) * 1.12, *(at_mm + _BEYOND_MM for at_mm in [0.0, *near]))


def _around(vine: Vine, turn_rad: float, share: float) -> Point:
    """A place on the head: 0 is the right edge, a quarter turn the upper; 1 is its outline."""
    across, up = math.cos(turn_rad), math.sin(turn_rad)
    half_deep = _deep_mm(vine) / 2
    reach = _reach_mm(vine, Side.RIGHT if across > 0 else Side.LEFT)
    x = math.copysign(abs(across) ** _SQUARE, across) * reach * share
    y = math.copysign(abs(up) ** (_SQUARE_ABOVE if up > 0 else _SQUARE), up) * half_deep * share
    return Point(x, half_deep - vine.cordon_height_mm - y)


def _knob(vine: Vine) -> Run:
    """The head, whose upper side lies at the height from which wood is measured."""
    grain = Grain("head")
    points = []
    for step in range(28):
        turn = 2 * math.pi * step / 28
        rough = grain.within(-0.05, 0.05, "knob", step) if math.sin(turn) < 0.3 else 0
        points.append(_around(vine, turn, 1 + rough))
    return Run(tuple(same_way_round(points)), closed=True, smooth=False)


def _bark_over_head(vine: Vine) -> Iterator[Run]:
    """Strokes that bend around the knots of the head, and some that rise into it."""
    for share, begin, end in _BENDS:
        turns = [math.radians(begin + (end - begin) * step / 4) for step in range(5)]
        yield Run(tuple(_around(vine, turn, share) for turn in turns))
    half, middle = _trunk_half_mm(vine), _deep_mm(vine) / 2 - vine.cordon_height_mm
    for lane, low, high in _RISES:
        spread = _reach_mm(vine, Side.RIGHT if lane > 0 else Side.LEFT) / half * 0.85
        points = []
        for step in range(4):
            rise = low + (high - low) * step / 3
            # Fibres of the trunk spread to where the canes stand.
            x = lane * half * (1 + (spread - 1) * max(0.0, 1 - rise) ** 1.6)
            points.append(Point(x, middle + rise * _TAPER_MM * 0.9))
        yield Run(tuple(points))


def _shade(vine: Vine) -> Ink:
    """The side of the head away from the light."""
    width = max(6.0, _deep_mm(vine) * 0.1)
    share = 1 - width / 2 / _reach_mm(vine, Side.RIGHT)
    points = tuple(_around(vine, math.radians(turn), share) for turn in range(48, -62, -12))
    look: Attributes = {
        "class": "pw-wash",
        "fill": "none",
        "stroke": "#000",
        "stroke-width": round(width),
        "stroke-opacity": ".25",
    }
    return Ink((Run(points),), look)


def _taper(vine: Vine) -> Run:
    """The wood between head and trunk."""
    limb = trunk(vine)
    middle = -vine.cordon_height_mm + _deep_mm(vine) / 2
    points = []
    for side, aside in ((Side.LEFT, -1), (Side.RIGHT, 1)):
        edge = []
        for step in range(7):
            y = middle + _TAPER_MM * step / 6
            # The trunk leans a little this way and that.
            half = limb.half_mm(-y) * 0.97 + aside * limb.curve.at(-y).x
            wide = max(0.0, _reach_mm(vine, side) * 0.82 - half)
            edge.append(Point(aside * (half + wide * (1 - step / 6) ** 2), y))
        points.extend(edge if aside < 0 else edge[::-1])
    return Run(tuple(same_way_round(points)), closed=True, smooth=False)


def _frame_wood(vine: Vine) -> Ink:
    return body_wood([trunk(vine)], [_knob(vine), _taper(vine)])


def _frame(vine: Vine, prefix: str) -> Group:
    body = draw_body(vine, [trunk(vine)], [_knob(vine), _taper(vine)], prefix)
    fine: Attributes = {"class": "pw-bark", "fill": "none", "stroke-width": 1.5}
    bark = Ink(tuple(_bark_over_head(vine)), fine)
    return Group((*body.things, _shade(vine), bark), body.attributes)


def _name_foot(vine: Vine, position: Position) -> Point:
    """Names stand beside the head in the order of the wood on it, and lines lead to its feet."""
    on_side = [one for one in arm_of(vine, position).positions if one.at_mm <= position.at_mm]
    middle = (len(on_side) - 0.5) * (len(position.name) * POSITION_MM * 0.62 + _NAMES_APART_MM)
    x = outward(position.side) * (_reach_mm(vine, position.side) + _NAMES_APART_MM / 2 + middle)
    return Point(x, _deep_mm(vine) * 0.5 - vine.cordon_height_mm + POSITION_MM * 0.9)


def _lead(foot: Point, name_foot: Point) -> tuple[Ink, ...]:
    """A line over the edge of the head, with bare paper beside it."""
    side = math.copysign(1.0, foot.x)
    begin = Point(name_foot.x - side * POSITION_MM * 0.4, name_foot.y - POSITION_MM * 0.85)
    runs = (Run((begin, Point(foot.x + side * _OFF_FOOT_MM, foot.y + 2.0))),)
    bare: Attributes = {"class": "pw-halo", "fill": "none", "stroke": PAPER, "stroke-width": 8.0}
    pen: Attributes = {"class": "pw-tick", "fill": "none", "stroke": PENCIL, "stroke-width": 2.4}
    return Ink(runs, bare), Ink(runs, pen)


def _frame_targets(vine: Vine) -> Group:
    """Trunk and head; such a vine has no arms."""
    return unseen_targets({"trunk": outline_of(trunk(vine)), "head": _knob(vine)})


def _under_mm(vine: Vine, _position: Position) -> float:
    return _deep_mm(vine)


CANE = FormLooks(
    frame=_frame,
    frame_wood=_frame_wood,
    frame_targets=_frame_targets,
    foot=foot_on_arm,
    under_mm=_under_mm,
    stems=lay_out,
    corners=arm_tips,
    name_foot=_name_foot,
    lead=_lead,
)
