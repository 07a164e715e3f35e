"""Draws head-trained vines in two views side by side: from the row, and from above.

From the row the head is seen a little from above, so that near and far places stand apart; what
leans toward the viewer or away is foreshortened. From above all wood is laid outward from its
place (or inward, where it leans so) and drawn half as long, no narrower, so that spurs can be
told apart.
"""

from __future__ import annotations

import math
from dataclasses import replace
from functools import cache

from pencilwood.drawing.forms.looks import Caption, FormLooks
from pencilwood.drawing.ink.points import Point
from pencilwood.drawing.ink.shapes import Group, Ink
from pencilwood.drawing.wood.frame import (
    Limb,
    body_wood,
    draw_body,
    outline_of,
    trunk,
    unseen_targets,
)
from pencilwood.drawing.wood.head_shape import (
    Reach,
    knob,
    limb,
    moved,
    nearness,
    radius_mm,
    reach_of,
    roomier_turn_rad,
    turn_rad,
)
from pencilwood.drawing.wood.layout import lay_out, lay_out_flat
from pencilwood.drawing.wood.stems import THICKER, Stem
from pencilwood.vine.model import Lean, Position, Side, Vine

_TIPPED = 0.3
"""How much of a distance toward the viewer is seen as a lower place."""
_LEAST_SEEN = 0.4
"""How much of its spread the wood of a place keeps that points straight at the viewer."""
_LAID_SHARE = 0.5
_BETWEEN_VIEWS_MM = 150.0
_GROUND_PAST_MM = 70.0
"""How far the ground goes on past the wood seen from the row."""
_ABOVE_GROUND_MM = 40.0
"""The view from above ends so far above the line of the ground, so that captions are level."""
_CAPTION_MM = 110.0
_CAPTION_HALF_WIDTH_MM = 430.0
_SCALE_HALF_WIDTH_MM = 400.0
_SCALE_LOW_MM = 400.0
"""The scale stands under the captions of both views, since its words may be long."""
_IN_MARGIN_MM = 35.0
"""So far the scale may reach into the margin that is below all."""
_NAME_SHARE, _INNER_NAME_SHARE = 0.62, 0.25
"""How far from the middle names stand, seen from above; the inner ones beside a near neighbour."""
_BESIDE_INWARD = 0.95, 78.0
"""Where a spur leans inward over its arm, its name is beside that arm: so far out, and aside."""
_NAMES_APART_MM = 130
"""Along the tape, so that the names of neighbours stand clear of each other."""

LAID = {Lean.IN: Lean.DOWN, Lean.OUT: Lean.UP, Lean.DOWN: Lean.UP, Lean.ALONG: Lean.UP}
"""From above: which way wood is laid that does not stand upright; down is over the middle."""


def _row_foot(vine: Vine, position: Position) -> Point:
    turn, radius = turn_rad(vine, position), radius_mm(vine)
    lower = radius * math.cos(turn) * _TIPPED
    return Point(-math.sin(turn) * radius, lower - vine.cordon_height_mm)


def _seen_from_row(vine: Vine, position: Position, foot: Point, under_mm: float) -> list[Stem]:
    """As on an arm to the left or right, narrower the more its plane points at the viewer."""
    side = Side.LEFT if foot.x < 0 else Side.RIGHT
    share = _LEAST_SEEN + (1 - _LEAST_SEEN) * abs(math.sin(turn_rad(vine, position)))

    def seen(point: Point) -> Point:
        return Point(foot.x + (point.x - foot.x) * share, point.y)

    stems = lay_out(vine, replace(position, side=side), foot, under_mm)
    return [moved(stem, seen) for stem in stems]


def _row_under_mm(vine: Vine) -> float:
    return vine.arms[0].thickness_mm * THICKER * 0.35


def _head_middle(vine: Vine) -> Point:
    return Point(0.0, -vine.cordon_height_mm + vine.arms[0].thickness_mm * THICKER * 0.6)


def _row_limbs(vine: Vine) -> list[Limb]:
    far_first = sorted(vine.arms[0].positions, key=lambda one: nearness(one, vine))
    limbs = [limb(vine, one, _head_middle(vine), _row_foot(vine, one)) for one in far_first]
    return [*limbs, trunk(vine)]


def _row_frame(vine: Vine, prefix: str) -> Group:
    return draw_body(vine, _row_limbs(vine), [knob(vine, _head_middle(vine))], prefix)


def _row_wood(vine: Vine) -> Ink:
    return body_wood(_row_limbs(vine), [knob(vine, _head_middle(vine))])


def _row_targets(vine: Vine) -> Group:
    """Trunk and head by name; the short arms belong to the head."""
    return unseen_targets(
        {"trunk": outline_of(trunk(vine)), "head": knob(vine, _head_middle(vine))}
    )


@cache
def _row_reach(vine: Vine) -> Reach:
    """From the foot of the trunk, in the view from the row."""
    under_mm = _row_under_mm(vine)
    return reach_of(
        (
            point
            for one in vine.arms[0].positions
            for stem in _seen_from_row(vine, one, _row_foot(vine, one), under_mm)
            for point in stem.curve.points
        ),
        radius_mm(vine),
    )


@cache
def _above_reach(vine: Vine) -> Reach:
    """From the middle of the view from above."""
    middle = Point(0.0, 0.0)
    return reach_of(
        (
            point
            for one in vine.arms[0].positions
            for stem in _laid(vine, one, _outward(vine, one, middle))
            for point in stem.curve.points
        ),
        radius_mm(vine),
    )


def _middle(vine: Vine) -> Point:
    """The middle of the view from above, to the right of the other view."""
    row, above = _row_reach(vine), _above_reach(vine)
    half_width = max(above.left, _CAPTION_HALF_WIDTH_MM)
    return Point(row.right + _BETWEEN_VIEWS_MM + half_width, -above.down - _ABOVE_GROUND_MM)


def _row_ground(vine: Vine) -> tuple[float, float]:
    reach = _row_reach(vine)
    return -reach.left - _GROUND_PAST_MM, reach.right + _GROUND_PAST_MM


def _scale_foot(vine: Vine) -> Point:
    return Point(max(-_SCALE_HALF_WIDTH_MM, _row_ground(vine)[0]), _SCALE_LOW_MM)


def _outward(vine: Vine, position: Position, middle: Point, share: float = 1.0) -> Point:
    """On the way from the middle to a place, seen from above; 1 is where the tape lies."""
    return middle.go(math.pi + turn_rad(vine, position), radius_mm(vine) * share)


def _above_foot(vine: Vine, position: Position) -> Point:
    return _outward(vine, position, _middle(vine))


def _seen_from_above(vine: Vine, position: Position, foot: Point, _under_mm: float) -> list[Stem]:
    return _laid(vine, position, foot)


def _laid(vine: Vine, position: Position, foot: Point) -> list[Stem]:
    turn = math.pi + turn_rad(vine, position)
    laid = replace(
        position,
        side=Side.RIGHT,
        pieces=tuple(replace(one, lean=LAID.get(one.lean, one.lean)) for one in position.pieces),
    )
    measured = {position.name + piece.letter: piece for piece in position.pieces}

    def to(point: Point) -> Point:
        x, y = point.x, point.y * _LAID_SHARE
        sine, cosine = math.sin(turn), math.cos(turn)
        return Point(foot.x + x * cosine - y * sine, foot.y + x * sine + y * cosine)

    stems = lay_out_flat(vine, laid, Point(0.0, 0.0))
    return [replace(moved(stem, to), piece=measured[stem.name]) for stem in stems]


def _above_limbs(vine: Vine) -> list[Limb]:
    positions = vine.arms[0].positions
    return [limb(vine, one, _middle(vine), _above_foot(vine, one)) for one in positions]


def _above_frame(vine: Vine, prefix: str) -> Group:
    return draw_body(vine, _above_limbs(vine), [knob(vine, _middle(vine))], prefix)


def _above_wood(vine: Vine) -> Ink:
    return body_wood(_above_limbs(vine), [knob(vine, _middle(vine))])


def _above_corners(vine: Vine) -> list[Point]:
    x, low = _middle(vine).x, _SCALE_LOW_MM - _IN_MARGIN_MM
    return [Point(x - _CAPTION_HALF_WIDTH_MM, low), Point(x + _CAPTION_HALF_WIDTH_MM, low)]


def _name_foot(vine: Vine, position: Position) -> Point:
    share, aside_mm = _NAME_SHARE, 0.0
    if position.name in _named_inside(vine):
        share = _INNER_NAME_SHARE
    elif _is_inward_alone(vine, position):
        share, aside_mm = _BESIDE_INWARD
    heading = math.pi + turn_rad(vine, position) + roomier_turn_rad(vine, position)
    place = _outward(vine, position, _middle(vine), share).go(heading, aside_mm)
    return Point(place.x, place.y + 18.0)


def _is_inward_alone(vine: Vine, position: Position) -> bool:
    """Whether wood leans inward here and not at the place before: names inside need room."""
    places = vine.positions_along_line()
    before = places[places.index(position) - 1]
    leans = [any(one.lean is Lean.IN for one in place.pieces) for place in (before, position)]
    return leans[1] and (before == position or not leans[0])


@cache
def _named_inside(vine: Vine) -> frozenset[str]:
    """Places so near to the one before them that their names stand further in."""
    places = vine.positions_along_line()
    inside: set[str] = set()
    before = None
    for place in places:
        if before is not None and place.at_mm - before.at_mm < _NAMES_APART_MM:
            inside.add(place.name)
            before = None
        else:
            before = place
    if before is not None and len(places) > 1:
        around_mm = places[0].at_mm + vine.line_length_mm - before.at_mm
        if around_mm < _NAMES_APART_MM:
            inside.add(before.name)
    return frozenset(inside)


def _row_corners(vine: Vine) -> list[Point]:
    radius = radius_mm(vine)
    height = -float(vine.cordon_height_mm)
    return [Point(-radius, height), Point(radius, height)]


def _row_captions(_vine: Vine) -> list[Caption]:
    return [Caption(Point(0.0, _CAPTION_MM), "view.row")]


def _above_captions(vine: Vine) -> list[Caption]:
    keys = ("view.above", "view.row-side", "view.laid")
    foot = Point(_middle(vine).x, _CAPTION_MM)
    return [Caption(foot, key, row) for row, key in enumerate(keys)]


def _no_targets(_vine: Vine) -> Group:
    """Trunk and head are tapped in the view from the row."""
    return unseen_targets({})


FROM_ABOVE = FormLooks(
    frame=_above_frame,
    frame_wood=_above_wood,
    frame_targets=_no_targets,
    foot=_above_foot,
    under_mm=lambda _vine, _position: 0.0,
    stems=_seen_from_above,
    corners=_above_corners,
    is_before=lambda _position, _vine: True,
    name_foot=_name_foot,
    captions=_above_captions,
    view="above",
)
HEAD = FormLooks(
    frame=_row_frame,
    frame_wood=_row_wood,
    frame_targets=_row_targets,
    foot=_row_foot,
    under_mm=lambda vine, _position: _row_under_mm(vine),
    stems=_seen_from_row,
    corners=_row_corners,
    is_behind=lambda position, vine: nearness(position, vine) < -0.1,
    is_before=lambda position, vine: nearness(position, vine) >= 0,
    captions=_row_captions,
    ground_mm=_row_ground,
    scale_foot=_scale_foot,
    view="row",
    second=FROM_ABOVE,
)
