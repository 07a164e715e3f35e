"""Draws head-trained vines in two views: from the row, and from above below it.

From the row the head is seen a little from above, so that near and far places stand apart; what
leans toward the viewer or away is foreshortened. From above all wood is laid outward from its
place (or inward, where it leans so) and drawn half as long, no narrower, so that spurs can be
told apart.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import replace
from functools import cache

from pencilwood.drawing.curves import Curve, same_way_round, trace
from pencilwood.drawing.forms.looks import Caption, FormLooks
from pencilwood.drawing.frame import Limb, draw_body, trunk
from pencilwood.drawing.grain import Grain
from pencilwood.drawing.layout import lay_out
from pencilwood.drawing.looks import INK
from pencilwood.drawing.points import Point
from pencilwood.drawing.shapes import Group, Ink, Run
from pencilwood.drawing.stems import THICKER, Stem
from pencilwood.vine.model import Lean, Position, Side, Vine

_TIPPED = 0.3
"""How much of a distance toward the viewer is seen as a lower place."""
_LEAST_SEEN = 0.4
"""How much of its spread the wood of a place keeps that points straight at the viewer."""
_LAID_SHARE = 0.5
_BETWEEN_VIEWS_MM = 170.0
"""From the ground of the view from the row to the top of the wood seen from above."""
_CAPTION_MM = 62.0
_CAPTION_HALF_WIDTH_MM = 430.0
_NAME_SHARE, _INNER_NAME_SHARE = 0.62, 0.25
"""How far from the middle names stand, seen from above; the inner ones beside a near neighbour."""
_NAMES_APART_MM = 130
"""Along the tape, so that the names of neighbours stand clear of each other."""
_KNOB_SHARE = 0.7

LAID = {Lean.IN: Lean.DOWN, Lean.OUT: Lean.UP, Lean.DOWN: Lean.UP, Lean.ALONG: Lean.UP}
"""From above: which way wood is laid that does not stand upright; down is over the middle."""


def turn_rad(vine: Vine, position: Position) -> float:
    """How far around the head a place is, clockwise from above, from the mark to the row."""
    return 2 * math.pi * position.at_mm / vine.line_length_mm


def radius_mm(vine: Vine) -> float:
    """From the middle of the head to where the tape lies."""
    return vine.line_length_mm / (2 * math.pi)


def nearness(position: Position, vine: Vine) -> float:
    """1 on the side to the row, -1 on the far side."""
    return math.cos(turn_rad(vine, position))


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
    return [_moved(stem, seen) for stem in stems]


def _moved(stem: Stem, to: Callable[[Point], Point]) -> Stem:
    return replace(stem, curve=Curve(tuple(to(point) for point in stem.curve.points)))


def _head_middle(vine: Vine) -> Point:
    return Point(0.0, -vine.cordon_height_mm + vine.arms[0].thickness_mm * THICKER * 0.6)


def _row_frame(vine: Vine, prefix: str) -> Group:
    far_first = sorted(vine.arms[0].positions, key=lambda one: nearness(one, vine))
    limbs = [_limb(vine, one, _head_middle(vine), _row_foot(vine, one)) for one in far_first]
    return draw_body(vine, [*limbs, trunk(vine)], [_knob(vine, _head_middle(vine))], prefix)


def _limb(vine: Vine, position: Position, start: Point, foot: Point) -> Limb:
    """The short arm from the head to a place."""
    half = vine.arms[0].thickness_mm * THICKER / 2
    length = max(start.away_from(foot), 1.0)
    heading = math.atan2(foot.x - start.x, start.y - foot.y)
    grain = Grain(f"arm {position.name}")

    def half_mm(along_mm: float) -> float:
        rough = grain.within(-0.05, 0.05, "rough", int(along_mm // 26))
        return half * (1 + rough) * (1 - 0.3 * min(max(along_mm / length, 0.0), 1.0))

    return Limb(f"arm {position.name}", trace(start, length, lambda _: heading), half_mm, 0, length)


def _knob(vine: Vine, middle: Point) -> Run:
    half = vine.trunk_thickness_mm * THICKER * _KNOB_SHARE
    grain = Grain("head")
    points = []
    for step in range(16):
        rough = 1 + grain.within(-0.05, 0.05, "knob", step)
        points.append(middle.go(2 * math.pi * step / 16, half * rough))
    return Run(tuple(same_way_round(points)), closed=True, smooth=False)


def _row_targets(vine: Vine) -> Group:
    """Trunk and head by name; the short arms belong to the head."""
    body = trunk(vine)
    runs = {
        "trunk": _outline(body),
        "head": _knob(vine, _head_middle(vine)),
    }
    unseen = {"class": "pw-frame-target", "fill": INK, "fill-opacity": "0"}
    things = tuple(Ink((run,), {**unseen, "data-frame": name}) for name, run in runs.items())
    return Group(things, {"class": "pw-frame-targets"})


def _outline(limb: Limb) -> Run:
    along = [limb.start_mm, (limb.start_mm + limb.end_mm) / 2, limb.end_mm]
    left = [limb.curve.beside(at, -limb.half_mm(at)) for at in along]
    right = [limb.curve.beside(at, limb.half_mm(at)) for at in along]
    return Run((*left, *right[::-1]), closed=True, smooth=False)


@cache
def _reach_mm(vine: Vine) -> tuple[float, float]:
    """How far above and below the middle wood lies in the view from above."""
    middle = Point(0.0, 0.0)
    highest = lowest = radius_mm(vine)
    for position in vine.arms[0].positions:
        for stem in _laid(vine, position, _outward(vine, position, middle)):
            highest = max(highest, *(-point.y for point in stem.curve.points))
            lowest = max(lowest, *(point.y for point in stem.curve.points))
    return highest, lowest


def _middle(vine: Vine) -> Point:
    """The middle of the view from above, below the ground of the other view."""
    return Point(0.0, _BETWEEN_VIEWS_MM + _reach_mm(vine)[0])


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

    stems = lay_out(vine, laid, Point(0.0, 0.0), 0.0)
    return [replace(_moved(stem, to), piece=measured[stem.name]) for stem in stems]


def _above_frame(vine: Vine, prefix: str) -> Group:
    middle = _middle(vine)
    limbs = [_limb(vine, one, middle, _above_foot(vine, one)) for one in vine.arms[0].positions]
    return draw_body(vine, limbs, [_knob(vine, middle)], prefix)


def _above_corners(vine: Vine) -> list[Point]:
    low = _lowest(vine) + 3 * _CAPTION_MM
    return [Point(-_CAPTION_HALF_WIDTH_MM, low), Point(_CAPTION_HALF_WIDTH_MM, low)]


def _lowest(vine: Vine) -> float:
    """Below all wood of the view from above."""
    return _middle(vine).y + _reach_mm(vine)[1] + 20.0


def _name_foot(vine: Vine, position: Position) -> Point:
    share = _INNER_NAME_SHARE if position.name in _named_inside(vine) else _NAME_SHARE
    place = _outward(vine, position, _middle(vine), share)
    return Point(place.x, place.y + 18.0)


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
    return [Caption(Point(0.0, 110.0), "view.row")]


def _above_captions(vine: Vine) -> list[Caption]:
    keys = ("view.row-side", "view.above", "view.laid")
    low = _lowest(vine)
    return [
        Caption(Point(0.0, low + row * _CAPTION_MM), key) for row, key in enumerate(keys, start=1)
    ]


def _no_targets(_vine: Vine) -> Group:
    """Trunk and head are tapped in the view from the row."""
    return Group((), {"class": "pw-frame-targets"})


FROM_ABOVE = FormLooks(
    frame=_above_frame,
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
    frame_targets=_row_targets,
    foot=_row_foot,
    under_mm=lambda vine, _position: vine.arms[0].thickness_mm * THICKER * 0.35,
    stems=_seen_from_row,
    corners=_row_corners,
    is_behind=lambda position, vine: nearness(position, vine) < -0.1,
    is_before=lambda position, vine: nearness(position, vine) >= 0,
    captions=_row_captions,
    view="row",
    second=FROM_ABOVE,
)
