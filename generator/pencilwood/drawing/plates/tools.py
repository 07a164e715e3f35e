"""The plate of the tools, each beside the wood it is for, all thicknesses to one scale."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from pencilwood.drawing.ink.looks import FACE, INK, OLD, PAPER
from pencilwood.drawing.ink.points import XY, Point, between
from pencilwood.drawing.ink.shapes import Attributes, Dot, Ink, Run, Thing
from pencilwood.drawing.plates.board import Board, Scene, line, shape, words
from pencilwood.drawing.plates.pen import fine, penned, placed, swelling

# Diameters on the plate; how thick each tool may cut stands in the text, from the profile.
_WOOD = (("shears", 28.0), ("loppers", 62.0), ("saw", 150.0))
_PEN = 2.2
_OPEN_RAD = 0.22
"""How far each half of shears is turned about the pivot: its wood goes between the blades."""
_TEETH = 34
_TOOTH = 9.0


def tool_sizes(board: Board) -> Scene:
    """Hand shears, loppers and saw, with the cut end of thin, thicker and thick wood."""
    things: list[Thing] = []
    tops, middles = (20.0, 252.0, 632.0), (94.0, 402.0, 738.0)
    drawers = (_shears, _loppers, _saw)
    for number, (key, across) in enumerate(_WOOD):
        top, middle_y, draw = tops[number], middles[number], drawers[number]
        things.extend(_end_of_wood(Point(120, middle_y), across / 2))
        things.append(placed(draw(), 250, middle_y))
        foot_y = (212.0, 592.0, 882.0)[number]
        things.append(words(Point(24, foot_y), board.say(key), bold=True))
        if number:
            things.append(line(Point(20, top - 24), Point(780, top - 24), width=1.6))
    return Scene(912, things)


def _end_of_wood(middle: Point, radius: float) -> Iterator[Thing]:
    """Bark, rings, rays and pith; thick wood is years old and has cracks from its middle."""
    edge: Attributes = {"stroke": INK, "stroke-width": _PEN}
    yield Dot(middle, radius, {"class": "pw-plate-bark", "fill": OLD, **edge})
    within = radius - max(4.0, radius * 0.1)
    yield Dot(middle, within, {"class": "pw-plate-face", "fill": FACE, **edge, "stroke-width": 1.4})
    thin: Attributes = {
        "class": "pw-plate-ring", "fill": "none", "stroke": INK, "stroke-width": 0.9,
    }  # fmt: skip
    rings = int(radius / 13)
    for ring in range(rings):
        yield Dot(middle, within * (0.16 + 0.84 * (ring + 1) / (rings + 1)), thin)
    rays: list[Run] = []
    for ray in range(int(radius / 3.5) + 6):
        way = ray * 2.4
        start, stop = 0.2 + 0.3 * (ray % 3) / 2, 0.95 - 0.25 * (ray % 2)
        rays.append(Run((middle.go(way, within * start), middle.go(way, within * stop))))
    yield fine(rays, 0.7, on_wood=True)
    if radius > 60:
        ends = ((0.7, 0.8), (2.9, 0.66), (4.9, 0.7))
        cracks = [
            swelling(
                [middle, middle.go(way, within * 0.4), middle.go(way + 0.06, within * far)], 4.0
            )
            for way, far in ends
        ]
        yield penned(cracks, on_wood=True)
    yield Dot(middle, max(2.4, within * 0.07), {"class": "pw-plate-bark", "fill": OLD, **edge,
                                                "stroke-width": 1.0})  # fmt: skip
    # The bark on the side away from the light.
    rim = [
        Run((middle.go(way, radius), middle.go(way - 0.06, within + 1)))
        for way in (1.0 + 9.0 / radius * step for step in range(int(radius * 0.26)))
    ]
    yield fine(rim, 1.3, on_wood=True)


def _turned(points: Sequence[XY], rad: float) -> tuple[Point, ...]:
    sin, cos = math.sin(rad), math.cos(rad)
    return tuple(Point(x * cos - y * sin, x * sin + y * cos) for x, y in points)


def _hatched(above: Sequence[XY], below: Sequence[XY], count: int, width: float = 0.9) -> Ink:
    """Short strokes from one line towards another, as metal is shaded."""
    runs = [
        Run((_along(above, (n + 0.5) / count), _along(below, (n + 0.9) / count)))
        for n in range(count)
    ]  # fmt: skip
    return fine(runs, width)


def _along(points: Sequence[XY], share: float) -> Point:
    whole = min(share, 0.999) * (len(points) - 1)
    first = int(whole)
    return between(points[first], points[first + 1], whole - first)


# Places from the pivot, tip to the left, both halves as when the shears are shut. A place named
# twice is a corner; the line bends smoothly past all others.
_BLADE_BACK: Sequence[XY] = ((-186, 10), (-186, 10), (-168, -18), (-130, -44), (-84, -50),
                             (-44, -38), (-14, -24))  # fmt: skip
_BLADE_EDGE: Sequence[XY] = ((-186, 10), (-150, 17), (-106, 18), (-62, 14), (-26, 10))
_BEVEL: Sequence[XY] = ((-172, 3), (-146, 5), (-104, 4), (-64, 1), (-34, -3))
_HOOK_INNER: Sequence[XY] = ((-170, -6), (-170, -6), (-158, 10), (-128, 24), (-90, 27), (-54, 20),
                             (-24, 4))  # fmt: skip
_HOOK_OUTER: Sequence[XY] = ((-170, -6), (-172, 14), (-150, 38), (-108, 52), (-62, 50), (-22, 36))


def _half(head: Sequence[XY], back: Sequence[XY], tang: Sequence[XY], rad: float) -> Ink:
    """One half: its head from tip to pivot, and its tang on the other side of the pivot."""
    return shape(*_turned([*head, *tang, *back], rad), width=_PEN, smooth=True)


def _heads(rad: float, tangs: Sequence[Sequence[XY]]) -> list[Thing]:
    """The hook, the blade that passes before it, and the bolt that holds them."""
    hook_tang, blade_tang = tangs
    hook = _half(_HOOK_INNER, _HOOK_OUTER[::-1], hook_tang, -rad)
    blade = _half(_BLADE_BACK, _BLADE_EDGE[::-1], blade_tang, rad)
    deep = [between(a, b, 0.4) for a, b in zip(_HOOK_OUTER[1:], _HOOK_INNER[2:], strict=False)]
    bevel = _turned(_BEVEL, rad)
    bolt: Attributes = {"class": "pw-plate-paper", "fill": PAPER, "stroke": INK}
    nut = [Point(0, 0).go(math.pi / 3 * corner + 0.2, 9.5) for corner in range(6)]
    return [
        hook,
        _hatched(_turned(_HOOK_OUTER[1:], -rad), _turned(deep, -rad), 22),
        penned([swelling(_turned(_HOOK_OUTER, -rad), 5.0)]),
        blade,
        fine([Run(bevel)], 1.2),
        _hatched(bevel, _turned(_BLADE_EDGE, rad), 26),
        penned([swelling(_turned(_BLADE_EDGE, rad), 4.0)]),
        fine([Run(_turned(((-128, -32), (-88, -38), (-52, -28)), rad))], 1.0),
        Dot(Point(0, 0), 17, {**bolt, "stroke-width": _PEN}),
        shape(*nut, width=1.6),
        Dot(Point(0, 0), 3.4, {"class": "pw-plate-ink", "fill": INK}),
    ]


def _grip(upper: Sequence[XY], lower: Sequence[XY], rad: float) -> list[Thing]:
    """A dark sleeve over a handle, with a gleam and its shaded side."""
    above, below = _turned(upper, rad), _turned(lower, rad)
    edge = shape(above[0], *above, *below[::-1], below[0], fill=OLD, width=_PEN, smooth=True)
    sleeve = Ink(edge.runs, {**edge.attributes, "class": "pw-plate-bark"})
    low = [between(b, a, 0.42) for a, b in zip(above, below, strict=True)]
    strokes = _hatched(below, low, 30, 1.1)
    shade = Ink(strokes.runs, {**strokes.attributes, "class": "pw-bark"})
    gleam = [between(a, b, 0.26) for a, b in zip(above, below, strict=True)][1:-1]
    light = {"class": "pw-pen-gleam", "fill": FACE, "stroke": "none", "opacity": ".6"}
    return [
        sleeve, shade, Ink((swelling(gleam, 4.0),), light), penned([swelling(below, 4.0)]),
    ]  # fmt: skip


def _coil(top: Point, foot: Point, turns: int, wide: float) -> list[Thing]:
    """A spring: each turn of its wire goes over the one behind it."""
    way = math.atan2(foot.x - top.x, top.y - foot.y)
    across = way + math.pi / 2
    things: list[Thing] = []
    for turn in range(turns):
        middle, after = (between(top, foot, (turn + add) / turns) for add in (0.15, 0.85))
        run = Run((middle.go(across, -wide), after.go(across, wide)))
        things += [_wire(run, 7.0, INK, "pw-plate-line"), _wire(run, 3.2, PAPER, "pw-plate-wire")]
    return things


def _wire(run: Run, width: float, colour: str, css_class: str) -> Ink:
    return Ink((run,), {"class": css_class, "fill": "none", "stroke": colour,
                        "stroke-width": width, "stroke-linecap": "round"})  # fmt: skip


def _shears() -> list[Thing]:
    """Short blades, two handles to fit a hand, a spring between them and a catch to lock them."""
    rad = _OPEN_RAD
    hook_tang: Sequence[XY] = ((4, -22), (34, -32), (74, -38), (74, -38), (76, -14), (76, -14),
                               (40, -4), (14, 18))  # fmt: skip
    blade_tang: Sequence[XY] = ((10, -18), (36, 0), (76, 14), (76, 14), (74, 38), (74, 38),
                                (34, 32), (4, 24))  # fmt: skip
    upper: tuple[list[XY], list[XY]] = (
        [(64, -42), (110, -52), (164, -60), (220, -60), (268, -50), (286, -38)],
        [(66, -10), (112, -24), (164, -34), (220, -34), (262, -26), (280, -24)],
    )
    lower: tuple[list[XY], list[XY]] = (
        [(66, 10), (112, 22), (164, 32), (220, 34), (266, 26), (286, 22)],
        [(64, 42), (110, 54), (164, 62), (222, 64), (274, 54), (294, 38)],
    )
    catch = _turned(((28, -14), (28, -14), (30, -28), (46, -40), (62, -40), (60, -31), (48, -27),
                     (44, -14), (44, -14)), -rad)  # fmt: skip
    things = [
        *_coil(Point(66, -20), Point(66, 26), 6, 11.0),
        *_heads(rad, (hook_tang, blade_tang)),
        *_grip(*upper, -rad),
        *_grip(*lower, rad),
        shape(*catch, width=1.8, smooth=True),
        Dot(_turned(((37, -20),), -rad)[0], 3.0, {"class": "pw-plate-ink", "fill": INK}),
    ]
    return [placed(things, 70, 0, 0.62)]


def _loppers() -> list[Thing]:
    """The same blades on two long handles, with bumpers between these."""
    rad = 0.27
    hook_tang: Sequence[XY] = ((4, -22), (40, -26), (92, -22), (92, -22), (92, -4), (92, -4),
                               (44, 0), (14, 18))  # fmt: skip
    blade_tang: Sequence[XY] = ((10, -18), (44, 0), (92, 4), (92, 4), (92, 22), (92, 22),
                                (40, 26), (4, 24))  # fmt: skip
    things: list[Thing] = [*_heads(rad, (hook_tang, blade_tang))]
    for side in (-1, 1):
        turn = side * rad
        tube_top: list[XY] = [(78, side * 13 - 10), (200, side * 13 - 9), (320, side * 13 - 9)]
        tube_low: list[XY] = [(78, side * 13 + 10), (200, side * 13 + 9), (320, side * 13 + 9)]
        above, below = _turned(tube_top, turn), _turned(tube_low, turn)
        things.append(shape(*above, *below[::-1], width=_PEN))
        things.append(_hatched(below, [between(b, a, 0.45) for a, b in
                                       zip(above, below, strict=True)], 34))  # fmt: skip
        things.append(penned([swelling(below, 4.0)]))
        bumper = [(84.0, side * -6), (84.0, side * 4), (112.0, side * 4), (112.0, side * -6)]
        things.append(shape(*_turned(bumper, turn), fill=INK, width=1.0))
        middle = ((306, 13), (350, 14), (420, 16), (478, 18), (492, 18))
        wide = (14, 16, 15, 16, 8)
        upper, lower = (
            [(x, side * y + way * half) for (x, y), half in zip(middle, wide, strict=True)]
            for way in (-1, 1)
        )
        things += _grip(upper, lower, turn)
    return [placed(things, 98, 0, 0.9)]


def _saw() -> list[Thing]:
    """A curved pull saw: its teeth stand on the inner side and point to the hand."""
    back = _bow((338, -30), (150, -62), (-4, 34))
    root = _bow((-4, 34), (150, -6), (338, 14))
    teeth: list[Point] = []
    for tooth in range(_TEETH):
        share, after = tooth / _TEETH, (tooth + 0.8) / _TEETH
        start, top = _along(root, share), _along(root, after)
        teeth += [start, Point(top.x + 1.5, top.y + _TOOTH * min(1.0, 0.45 + share * 3))]
    lift = [Point(x, y - 5) for x, y in root]
    top_edge = ((322, -40), (352, -40), (400, -34), (448, -26), (492, -8), (526, 30))
    low_edge = ((324, 28), (350, 28), (392, 18), (432, 20), (468, 40), (502, 60))
    handle_top, handle_low = ([Point(*at) for at in edge] for edge in (top_edge, low_edge))
    rivet: Attributes = {"class": "pw-plate-face", "fill": FACE, "stroke": INK, "stroke-width": 1.8}
    end = (Point(524, 52), Point(514, 62))
    edge = (handle_top[0], *handle_top, *end, *handle_low[::-1], handle_low[0])
    wood = shape(*edge, fill=FACE, width=_PEN, smooth=True)
    grain = [
        swelling([_between_rows(handle_top, handle_low, share, at) for at in spread], 1.8)
        for share, spread in ((0.2, (0.1, 0.4, 0.7)), (0.42, (0.25, 0.55, 0.9)),
                              (0.6, (0.08, 0.35, 0.62)), (0.76, (0.4, 0.65, 0.95)))
    ]  # fmt: skip
    shaded = [_between_rows(handle_top, handle_low, 0.74, n / 8) for n in range(9)]
    dark = _hatched(handle_low, shaded, 34)
    return [
        shape(*back, *teeth, width=1.8),
        fine([Run(tuple(lift))], 1.0),
        _hatched(back[:-4], [Point(x, y + 10) for x, y in back[:-4]], 44),
        penned([swelling(back, 4.4)]),
        wood,
        penned(grain, on_wood=True),
        Ink(dark.runs, {**dark.attributes, "class": "pw-bark"}),
        penned([swelling(handle_low, 4.4)]),
        fine([Run(((350, -40), (346, -6), (350, 28))), Run(((344, -40), (340, -6), (344, 28)))],
             1.6, on_wood=True),
        *(Dot(Point(*at), 6, rivet) for at in ((378, -10), (440, -2))),
        Dot(Point(502, 36), 6, {"class": "pw-plate-paper", "fill": PAPER, "stroke": INK,
                                "stroke-width": 1.8}),
    ]  # fmt: skip


def _bow(start: XY, bend: XY, end: XY, count: int = 16) -> list[Point]:
    """Places on a bent line."""
    return [
        between(between(start, bend, n / count), between(bend, end, n / count), n / count)
        for n in range(count + 1)
    ]


def _between_rows(above: Sequence[XY], below: Sequence[XY], down: float, share: float) -> Point:
    return between(_along(above, share), _along(below, share), down)
