"""Names on the drawing: positions at the arm, letters beside the wood, nothing on the wood.

Positions are named on the side of the arm where no shoots are trained.
"""

from __future__ import annotations

import math
from collections.abc import Collection, Iterator, Sequence

from pencilwood.drawing.canes import BUD_ROOM_MM, bud_middle
from pencilwood.drawing.curves import STEP_MM
from pencilwood.drawing.looks import INK, PAPER, PENCIL, POSITION_MM
from pencilwood.drawing.plate import Frame, Heights, Plate
from pencilwood.drawing.points import XY, Point
from pencilwood.drawing.shapes import Attributes, Group, Ink, Run, Words
from pencilwood.drawing.stems import THICKER, Stem
from pencilwood.drawing.taken import CELL_MM, ENOUGH_MM, Cell, Taken
from pencilwood.vine.model import Growth, Position

LETTER = "pw-letter"
"""The class of the letters."""
LETTER_MM = 30.0
_NAMES_APART_MM = 20.0
_ROUNDING_MM = 0.1
_PUSHED_MM = 140.0
"""How far from below its place a name may be pushed by another."""
_ASIDE_MM = (0.0, 25.0, -25.0, 50.0, -50.0, 75.0, -75.0)
"""How far beside its place a name may stand; a line leads to the place."""
_CLEAR_MM = 22.0
_WIDTH_SHARE = 0.62
"""Width of a letter or digit, compared with its height; wider than most, to be safe."""

_OVER_LINE_SHARE, _UNDER_LINE_SHARE = 1.0, 0.4
"""How far a name with the edge of paper around it goes above its line, and below."""

_CANE_SHARES = (0.55, 0.75, 0.4, 1.5, 1.3, 1.7, 2.5, 2.3, 3.5, 4.5)
_OLD_MM = 70.0
_OLD_SHARES = (0.5, 0.7, 0.3, 0.85, 0.15, 1.3, 2.0)
"""Of so much of older wood, or of all of it where it is shorter: what is cut off is higher up."""

Span = tuple[float, float]
"""From where to where a name goes, from left to right."""
Choice = tuple[XY, float]
"""A place for a letter, and what it costs to stand there."""


def place_letters(plate: Plate) -> dict[str, XY]:
    """For every stem the middle of its letter, where the most room is beside its lower end."""
    if not plate.stems:
        return {}
    taken = Taken()
    choices = {stem.name: list(_beside(stem)) for stem in plate.stems.values()}
    asked = taken.asked_of(place for each in choices.values() for place, _ in each)
    rows = [row for _, row in asked]
    heights = (min(rows) - 1) * CELL_MM, (max(rows) + 2) * CELL_MM
    for stem in plate.stems.values():
        _take(stem, taken, asked, heights)
    for middle in _names_above(plate):
        taken.add(middle, POSITION_MM * 0.55)
    places: dict[str, XY] = {}
    for stem in plate.stems.values():
        places[stem.name] = best = _roomiest(choices[stem.name], taken)
        taken.add(best, LETTER_MM * 0.5)
    return places


def _take(stem: Stem, taken: Taken, asked: Collection[Cell], heights: Heights) -> None:
    """The wood and the buds of a stem; `heights` are around all letters, most wood is above."""
    top, bottom = heights
    bends = stem.curve.bends
    for number in range(int(stem.piece.length_mm / STEP_MM) + 1):
        if top < bends[number][1] < bottom and taken.cell(bends[number]) in asked:
            taken.add(bends[number], stem.half_mm(number * STEP_MM))
    for bud in range(1, stem.piece.buds + 1):
        # Its middle is less than a cell away from the wood.
        y = bends[min(int(bud * stem.piece.internode_mm / STEP_MM), len(bends) - 1)][1]
        if top - CELL_MM < y < bottom + CELL_MM:
            taken.add(bud_middle(stem, bud), BUD_ROOM_MM)


def _roomiest(choices: Sequence[Choice], taken: Taken) -> XY:
    """The first of the places with the most room for what they cost, the cheapest come first."""
    best, most_mm = choices[0][0], -math.inf
    for place, cost_mm in choices:
        if most_mm >= ENOUGH_MM - cost_mm:
            break  # None that follows can have more.
        room_mm = taken.room_mm(place, most_mm + cost_mm)
        if room_mm - cost_mm > most_mm:
            best, most_mm = place, room_mm - cost_mm
    return best


def _names_above(plate: Plate) -> Iterator[Point]:
    """Middles of the names that stand where upright wood may be."""
    for _, _, foot in _named(plate) if _named_above(plate) else ():
        yield Point(foot.x, foot.y - POSITION_MM * 0.3)


def _beside(stem: Stem) -> Iterator[Choice]:
    """Places for a letter, the cheapest first."""
    if stem.piece.is_cane:
        along = [stem.piece.internode_mm * share for share in _CANE_SHARES]
    else:
        along = [min(stem.piece.length_mm, _OLD_MM) * share for share in _OLD_SHARES]
    for rank, at in enumerate(along):
        if at > stem.piece.length_mm:
            continue
        for side in (1, -1):
            off = stem.half_mm(at) + LETTER_MM * 0.5
            yield stem.curve.beside(at, side * off), rank * 0.6


def draw_letters(plate: Plate) -> dict[str, Words]:
    """The letter of every stem, by the stem's name."""
    look: Attributes = {
        "class": LETTER,
        "font-size": LETTER_MM,
        "font-style": "italic",
        "fill": INK,
        "stroke": PAPER,
        "stroke-width": 6.0,
        "paint-order": "stroke",
        "text-anchor": "middle",
    }
    return {
        name: Words(Point(x, y + LETTER_MM * 0.3), plate.stems[name].piece.letter, look)
        for name, (x, y) in place_letters(plate).items()
    }


def draw_places(plate: Plate) -> Group:
    """The names of the positions, in as many rows as they need."""
    css_class = "pw-places"
    if plate.looks.name_foot is not None:
        css_class += " pw-places-inside"
    elif plate.second is not None:
        css_class += " pw-places-twice"
    return Group(tuple(_place(plate, *where) for where in _named(plate)), {"class": css_class})


def boxes_of_names(plate: Plate) -> list[Frame]:
    """Where each name of a position stands."""
    over, under = POSITION_MM * _OVER_LINE_SHARE, POSITION_MM * _UNDER_LINE_SHARE
    return [
        Frame(foot.x - half, foot.y - over, foot.x + half, foot.y + under)
        for position, _, foot in _named(plate)
        for half in (_half_wide_mm(position),)
    ]


def _half_wide_mm(position: Position) -> float:
    return len(position.name) * POSITION_MM * _WIDTH_SHARE / 2


def _named(plate: Plate) -> Iterator[tuple[Position, Point, Point]]:
    """Every position with its foot and the foot of its name."""
    own = plate.looks.name_foot
    if own is not None:
        for position in plate.parts.positions:
            yield position, plate.foot(position), own(plate.vine, position)
        return
    if _named_above(plate):
        yield from _named_over_arm(plate)
        return
    names = _names_under_arm(plate)
    for position in plate.parts.positions:
        yield position, plate.foot(position), names[position.name]


def _names_under_arm(plate: Plate) -> dict[str, Point]:
    """From the head outward, as places count: of two that need two rows the first is above.

    The trunk pushes the first ones aside, and they the next ones, as far as a line can lead.
    """
    order = list(plate.parts.positions)
    if plate.second is None:
        order.sort(key=lambda one: abs(plate.foot(one).x))
    rows: list[list[Span]] = []
    feet: dict[str, Point] = {}
    pushed = {-1: -math.inf, 1: -math.inf}
    for position in order:
        half, own_x = _half_wide_mm(position), plate.foot(position).x
        side = 1 if own_x > 0 else -1
        x = _clear_of_trunk(plate, position, own_x)
        if plate.second is None:
            beyond = pushed[side] + half + _NAMES_APART_MM
            if beyond - abs(x) <= _PUSHED_MM:
                x = side * max(abs(x), beyond)
            pushed[side] = abs(x) + half if x != own_x else -math.inf
        row = _free_row(rows, (x - half, x + half))
        feet[position.name] = Point(x, _row_y(plate, row))
    return feet


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


def _named_over_arm(plate: Plate) -> Iterator[tuple[Position, Point, Point]]:
    """Over the arm, as far aside as wood that stands up there makes them."""
    ends: list[float] = []
    wood = _wood_above(plate)
    for position in plate.parts.positions:
        foot, half = plate.foot(position), _half_wide_mm(position)
        middle_x = _clear_of_wood(wood, foot.x, half, ends)
        free = (row for row, end in enumerate(ends) if end <= middle_x - half)
        row = next(free, len(ends))
        ends[row : row + 1] = [middle_x + half + _NAMES_APART_MM]
        yield position, foot, Point(middle_x, _row_y(plate, row))


def _clear_of_trunk(plate: Plate, position: Position, x: float) -> float:
    clear = plate.vine.trunk_thickness_mm * THICKER / 2 * 1.15 + _half_wide_mm(position) + 16
    return max(x, clear) if x > 0 else min(x, -clear)


def _wood_above(plate: Plate) -> list[Point]:
    """Where wood stands or bends over at the height of the lowest row of names above the arm."""
    if not _named_above(plate):
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


def _named_above(plate: Plate) -> bool:
    return plate.vine.form.growth is Growth.DOWN


def _row_y(plate: Plate, row: int) -> float:
    if _named_above(plate):
        return -plate.vine.cordon_height_mm - POSITION_MM * (0.55 + row)
    thickest = max(arm.thickness_mm for arm in plate.vine.arms) * THICKER
    return -plate.vine.cordon_height_mm + thickest + POSITION_MM * (1.05 + row)


def _tick(plate: Plate, position: Position, foot: Point, text_foot: Point) -> Run:
    # A line to a name aside of the trunk would go through a head; its other view tells the place.
    through_head = plate.second is not None and text_foot.x != foot.x
    if plate.looks.name_foot is not None or through_head:
        return Run((foot, foot))
    if _named_above(plate):
        return Run((Point(foot.x, foot.y - 5), Point(text_foot.x, text_foot.y + 8)))
    under = foot.y + plate.under_mm(position) + 5
    return Run((Point(foot.x, under), Point(text_foot.x, text_foot.y - POSITION_MM * 0.8)))


def _place(plate: Plate, position: Position, foot: Point, text_foot: Point) -> Group:
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
    tick = Ink((_tick(plate, position, foot, text_foot),), pen)
    return Group(
        (*(plate.looks.lead(foot, text_foot) or (tick,)), Words(text_foot, position.name, look)),
        {
            "class": "pw-place",
            "data-position": position.name,
            "data-x": foot.x,
            "data-y": foot.y,
        },
    )
