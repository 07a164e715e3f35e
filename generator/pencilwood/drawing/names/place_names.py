"""The names of the places, on the side of the arm where no shoots are trained."""

from __future__ import annotations

import math
from collections.abc import Collection, Iterator, Sequence

from pencilwood.drawing.ink.looks import INK, PAPER, PENCIL, POSITION_MM
from pencilwood.drawing.ink.points import Point, between
from pencilwood.drawing.ink.shapes import Attributes, Group, Ink, Run, Words
from pencilwood.drawing.names.beside_trunk import around_trunk
from pencilwood.drawing.names.crowded_names import (
    CROWDED,
    LARGER_ON_PHONES,
    NO_LINE,
    ON_WOOD,
    crowded_names,
    half_wide_mm,
    lies_on_wood,
    pushed_out,
)
from pencilwood.drawing.plate import Frame, Plate
from pencilwood.drawing.wood.stems import THICKER
from pencilwood.vine.model import Growth, Position

_NAMES_APART_MM = 20.0
_HANGS_MM = 20.0
"""Wood that far below the top of the arm hangs."""
_ROUNDING_MM = 0.1
_BELOW_MM = 1.0
"""A name that is less aside stands straight below its place."""
_BESIDE_HEAD_MM = 30.0
"""A name that a trunk pushes aside by less, half of itself, has its place beside the trunk."""
_FAR_MM = 1e6
"""More than any place is away from the head."""
_ASIDE_MM = (0.0, 25.0, -25.0, 50.0, -50.0, 75.0, -75.0)
"""How far beside its place a name may stand; a line leads to the place."""
_CLEAR_MM = 22.0
_LEAD_STEPS = 12
_TO_CORNER = 0.8
"""A line that leads aside ends at the corner of its name: on its way it meets no name above."""
_OVER_LINE_SHARE, _UNDER_LINE_SHARE = 1.0, 0.4
"""How far a name with the edge of paper around it goes above its line, and below."""

_Named = tuple[Position, Point, Point]
_Marked = tuple[Position, Point, Point, Sequence[str]]
Span = tuple[float, float]
"""From where to where a name goes, from left to right."""


def draw_places(plate: Plate, first: Collection[str] = (), phone_mm: float = 0.0) -> Group:
    """The names of the positions, in as many rows as they need.

    Those that are spoken of go `first` where a small screen, which shows them `phone_mm` high,
    has no room for all.
    """
    css_class = "pw-places"
    if named_above(plate):
        css_class += " pw-places-above"
    if plate.looks.name_foot is not None:
        css_class += " pw-places-inside"
    elif plate.second is not None:
        css_class += " pw-places-twice"
    high_mm = min(POSITION_MM, phone_mm or POSITION_MM)
    marked = _marked(plate, first, phone_mm)
    places = tuple(_place(plate, *one, _tick(plate, one, high_mm)) for one in marked)
    return Group(places, {"class": css_class})


def where_left_out(plate: Plate, first: Collection[str] = (), phone_mm: float = 0.0) -> str:
    """Where a picture from near has no room for some name: "everywhere", on "phones", or ""."""
    marks = {mark for *_, own in _marked(plate, first, phone_mm) for mark in own}
    return "everywhere" if ON_WOOD in marks else "phones" if CROWDED in marks else ""


def are_left_to_other_view(plate: Plate) -> bool:
    """Whether this view from near leaves names out that the other view of the vine gives."""
    return plate.second is not None and any(
        NO_LINE in mark or ON_WOOD in mark for *_, mark in _marked(plate, (), 0.0)
    )


def _marked(plate: Plate, first: Collection[str], phone_mm: float) -> Iterator[_Marked]:
    """Every position with its foot, the foot of its name, and what is to know of the name."""
    names = list(named(plate, phone_mm))
    outward = sorted(names, key=lambda one: (abs(one[2].x), abs(one[1].x)))
    times = phone_mm / POSITION_MM if phone_mm else LARGER_ON_PHONES
    feet = ((position.name, foot) for position, _, foot in outward)
    crowded = crowded_names(feet, first, times)
    wood, clear = _wood_below(plate), _with_clear_line(plate, names)
    for position, foot, text_foot in names:
        marks = [] if plate.second is None or position.name in clear else [NO_LINE]
        if lies_on_wood(position.name, text_foot, wood):
            marks.insert(0, ON_WOOD)
        on_wood = lies_on_wood(position.name, text_foot, wood, times)
        if (on_wood and position.name not in first) or position.name in crowded:
            marks.insert(0, CROWDED)
        yield position, foot, text_foot, marks


def _with_clear_line(plate: Plate, names: Sequence[_Named]) -> Collection[str]:
    """Names whose line meets neither a head nor another name on a small screen; in front first."""
    behind, vine, clear = plate.looks.is_behind, plate.vine, dict[str, Point]()
    for position, foot, text_foot in sorted(names, key=lambda it: (behind(it[0], vine), it[2].y)):
        wide = half_wide_mm(position.name) * LARGER_ON_PHONES
        if not _is_through_head(plate, foot, text_foot) and all(
            abs(text_foot.x - at.x) > wide + half_wide_mm(name) * LARGER_ON_PHONES
            for name, at in clear.items()
        ):
            clear[position.name] = text_foot
    return clear


def _wood_below(plate: Plate) -> list[Point]:
    """Where canes hang below the arm, where the names of places are, from left to right."""
    if plate.looks.name_foot is not None or named_above(plate):
        return []
    arm_y = -plate.vine.cordon_height_mm
    return sorted(
        at for stem in plate.stems.values() for at in stem.curve.points if at.y > arm_y + _HANGS_MM
    )


def boxes_of_names(plate: Plate, phone_mm: float = 0.0) -> list[Frame]:
    """Where each name of a position stands, in the letters of the drawing."""
    over, under = POSITION_MM * _OVER_LINE_SHARE, POSITION_MM * _UNDER_LINE_SHARE
    return [
        Frame(foot.x - half, foot.y - over, foot.x + half, foot.y + under)
        for position, _, foot in named(plate, phone_mm)
        for half in (half_wide_mm(position.name),)
    ]


def named(plate: Plate, phone_mm: float = 0.0) -> Iterator[_Named]:
    """Every position with its foot and the foot of its name.

    Names that a small screen shows `phone_mm` high are clear of the trunk there too.
    """
    own = plate.looks.name_foot
    if own is not None:
        for position in plate.parts.positions:
            yield position, plate.foot(position), own(plate.vine, position)
        return
    if named_above(plate):
        yield from _named_over_arm(plate)
        return
    names = _names_under_arm(plate, phone_mm)
    for position in plate.parts.positions:
        yield position, plate.foot(position), names[position.name]


def _names_under_arm(plate: Plate, phone_mm: float) -> dict[str, Point]:
    """Names in rows, each in its turn in the first row with room."""
    places = list(plate.parts.positions)
    own = {one.name: plate.foot(one).x for one in places}
    trunk = around_trunk(plate, phone_mm, _row_y(plate, 0))
    xs = {one.name: trunk.beside(one.name, own[one.name]) for one in places}
    order = [one.name for one in places]
    if plate.second is None:
        order.sort(key=lambda name: turn_of(own[name], xs[name]))
    rows: list[list[Span]] = []
    feet: dict[str, Point] = {}
    for name in order:
        half, x = half_wide_mm(name), xs[name]
        feet[name] = Point(x, _row_y(plate, _free_row(rows, (x - half, x + half))))
    if phone_mm <= POSITION_MM or plate.second is not None:
        return feet
    return pushed_out(feet, phone_mm / POSITION_MM)


def turn_of(own_mm: float, name_mm: float) -> float:
    """When a name takes its row, by how far from the head the place is and its name.

    Names that stand straight below their places go first, from the head outward. Those that the
    trunk pushes aside go below them, the one nearest the head lowest: so none stands where another
    place is named, and no line crosses another. `turnOf` of name_rows.mjs says the same.
    """
    is_below_place = abs(name_mm - own_mm) < _BELOW_MM
    return abs(own_mm) if is_below_place else _FAR_MM - abs(own_mm)


def _free_row(rows: list[list[Span]], span: Span) -> int:
    """The first row with room, which the name takes."""
    apart_mm = _NAMES_APART_MM - _ROUNDING_MM
    start, end = span[0] - apart_mm, span[1] + apart_mm
    for row, taken in enumerate(rows):
        if all(end <= left or right <= start for left, right in taken):
            taken.append(span)
            return row
    rows.append([span])
    return len(rows) - 1


def _named_over_arm(plate: Plate) -> Iterator[_Named]:
    """Over the arm, as far aside as wood that stands up there makes them."""
    ends: list[float] = []
    wood = _wood_above(plate)
    for position in plate.parts.positions:
        foot, half = plate.foot(position), half_wide_mm(position.name)
        middle_x = _clear_of_wood(wood, foot.x, half, ends)
        free = (row for row, end in enumerate(ends) if end <= middle_x - half)
        row = next(free, len(ends))
        ends[row : row + 1] = [middle_x + half + _NAMES_APART_MM]
        yield position, foot, Point(middle_x, _row_y(plate, row))


def _wood_above(plate: Plate) -> list[Point]:
    """Where wood stands or bends over at the height of the lowest row of names above the arm."""
    if not named_above(plate):
        return []
    middle_y = _row_y(plate, 0) - POSITION_MM * 0.3
    return [
        at
        for stem in plate.stems.values()
        for at in stem.curve.points
        if abs(at.y - middle_y) < POSITION_MM * 0.6
    ]


def _clear_of_wood(wood: list[Point], x: float, half: float, ends: list[float]) -> float:
    """Over the foot where no wood is there, else on the side of the wood that has room."""
    free = [
        x + aside
        for aside in _ASIDE_MM
        if all(abs(at.x - x - aside) > half + _CLEAR_MM for at in wood)
    ]
    start = ends[0] if ends else -math.inf
    return next((at for at in free if at - half >= start), free[0] if free else x)


def named_above(plate: Plate) -> bool:
    """Whether the names stand over the arm."""
    return plate.vine.form.growth is Growth.DOWN


def _row_y(plate: Plate, row: int) -> float:
    if named_above(plate):
        return -plate.vine.cordon_height_mm - POSITION_MM * (0.55 + row)
    thickest = max(arm.thickness_mm for arm in plate.vine.arms) * THICKER
    return -plate.vine.cordon_height_mm + thickest + POSITION_MM * (1.05 + row)


def _is_through_head(plate: Plate, foot: Point, text_foot: Point) -> bool:
    """Whether its line would go through a head; the view from above tells such a place."""
    return plate.second is not None and abs(text_foot.x - foot.x) > _BESIDE_HEAD_MM


def _tick(plate: Plate, one: _Marked, high_mm: float) -> Run:
    """The line from a place to the top of its name, whose letters are so high."""
    position, foot, text_foot, marks = one
    if plate.looks.name_foot is not None or (NO_LINE in marks and text_foot.x != foot.x):
        return Run((foot, foot))
    if named_above(plate):
        return Run((Point(foot.x, foot.y - 5), Point(text_foot.x, text_foot.y + 8)))
    under, aside_mm = foot.y + plate.under_mm(position) + 5, foot.x - text_foot.x
    half_mm = half_wide_mm(position.name) * high_mm / POSITION_MM
    corner_mm = min(abs(aside_mm), half_mm * _TO_CORNER)
    end_x = text_foot.x + math.copysign(corner_mm, aside_mm)
    return Run((Point(foot.x, under), Point(end_x, text_foot.y - high_mm * 0.8)))


def _place(
    plate: Plate, position: Position, foot: Point, text_foot: Point, marks: Sequence[str], run: Run
) -> Group:
    look: Attributes = {
        "class": "pw-place-name",
        "font-size": POSITION_MM,
        "fill": INK,
        "stroke": PAPER,
        "stroke-width": 7.0,
        "paint-order": "stroke",
        "text-anchor": "middle",
    }
    pen: Attributes = {"class": "pw-tick", "fill": "none", "stroke": PENCIL, "stroke-width": 2.4}
    tick = Ink((run,), pen)
    return Group(
        (*(plate.looks.lead(foot, text_foot) or (tick,)), Words(text_foot, position.name, look)),
        {
            "class": " ".join(["pw-place", *marks]),
            "data-position": position.name,
            "data-x": foot.x,
            "data-y": foot.y,
        },
    )


def along_names(plate: Plate) -> Iterator[Point]:
    """Places along the names, so near to each other that no letter stands between."""
    for position, _, foot in named(plate):
        half, y = half_wide_mm(position.name), foot.y - POSITION_MM * 0.3
        for share in (-0.6, 0.0, 0.6):
            yield Point(foot.x + half * share, y)


def along_leads(plate: Plate) -> Iterator[Point]:
    """Places along the lines from names around a head to their wood."""
    for _, foot, text_foot in named(plate):
        if plate.looks.lead(foot, text_foot):
            end = Point(text_foot.x, text_foot.y - POSITION_MM * 0.85)
            yield from (between(end, foot, step / _LEAD_STEPS) for step in range(_LEAD_STEPS))
