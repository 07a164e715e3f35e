"""Bark of older wood: few long strokes that follow the wood, one dark edge."""

from __future__ import annotations

import math
from collections.abc import Iterator

from pencilwood.drawing.ink.curves import Curve, HalfWidth, outline, steps
from pencilwood.drawing.ink.grain import Grain
from pencilwood.drawing.ink.points import XY
from pencilwood.drawing.ink.shapes import Attributes, Ink, Run, Thing

_EDGE_BENDS_MM = 24.0
_LANE_MM = 10.0
"""How far apart strokes run side by side, on a whole vine."""
_BEND_MM = 34.0
_LIT_LANE = -0.25
"""Strokes nearer to the light are shorter, with more room between them."""
_SHORT_MM = 110.0
_INSIDE = 0.88
"""How near to the edge a stroke runs at most, as a share of half the thickness."""


def older_wood(
    curve: Curve, start_mm: float, end_mm: float, half_mm: HalfWidth, *, goes_on: bool = False
) -> Run:
    """The uneven outline of a stretch of older wood; no line at its foot where it goes on."""
    edge = outline(curve, steps(start_mm, end_mm, _EDGE_BENDS_MM), half_mm)
    return Run(tuple(edge), closed=True, open_foot=goes_on)


def older_wood_with_end(
    curve: Curve, start_mm: float, end_mm: float, half_mm: HalfWidth, *, goes_on: bool = False
) -> Run:
    """The same with a rounded upper end, where no older wood goes on."""
    round_mm = min(half_mm(end_mm) * 0.55, (end_mm - start_mm) / 3)
    along = [*steps(start_mm, end_mm - round_mm, _EDGE_BENDS_MM), end_mm]
    # A cap only is no wider than the wood below it.
    wide = 0.9 if end_mm - start_mm < _EDGE_BENDS_MM else 1.0
    edge = outline(curve, along, lambda at: half_mm(at) * (0.6 if at == end_mm else wide))
    return Run(tuple(edge), closed=True, open_foot=goes_on)


def bark(
    curve: Curve,
    start_mm: float,
    end_mm: float,
    half_mm: HalfWidth,
    grain: Grain,
    *,
    shaded: int = 1,
    lane_mm: float = _LANE_MM,
) -> tuple[Thing, ...]:
    """Dark edge and strokes to lay over that outline; `shaded` is -1 when the left side is dark.

    Wood that is seen from near has its strokes closer together.
    """
    lanes = max(2, round(2 * half_mm((start_mm + end_mm) / 2) / lane_mm))
    strokes = tuple(
        stroke
        for lane in range(lanes)
        for stroke in _lane(
            curve, start_mm, end_mm, half_mm, grain, (2 * lane + 1) / lanes - 1, shaded
        )
    )
    fine: Attributes = {"class": "pw-bark", "fill": "none", "stroke-width": 1.5}
    edge = _dark_edge(curve, start_mm, end_mm, half_mm, shaded)
    return (edge, Ink(strokes, fine)) if strokes else (edge,)


def _dark_edge(
    curve: Curve, start_mm: float, end_mm: float, half_mm: HalfWidth, shaded: int
) -> Ink:
    half, room = half_mm((start_mm + end_mm) / 2), end_mm - start_mm
    # On short wood a thicker pen line does; longer wood has a wash that ends before the wood does.
    is_short = room < _SHORT_MM
    width = 4.0 if is_short else min(max(half * 0.3, 3.4), 12.0)
    start, stop = start_mm + width, end_mm - min(half * 0.7, room * 0.4)
    points = tuple(
        curve.beside(at, shaded * (half_mm(at) * (0.99 if is_short else 0.97) - width / 2))
        for at in steps(start, max(stop, start + 1), _EDGE_BENDS_MM)
    )
    shade: Attributes = {
        "class": "pw-wash",
        "fill": "none",
        "stroke": "#000",
        "stroke-width": round(width),
        "stroke-opacity": ".5" if is_short else ".25",
    }
    return Ink((Run(points),), shade)


def _lane(
    curve: Curve,
    start_mm: float,
    end_mm: float,
    half_mm: HalfWidth,
    grain: Grain,
    lane: float,
    shaded: int,
) -> Iterator[Run]:
    """The strokes of one lane, one after the other along the wood."""
    number = round(lane * 100)
    lit = lane * shaded < _LIT_LANE
    phase = grain.share("phase") * 2 * math.pi
    # Strokes begin and end where they like, not all at one line across the wood.
    uneven_mm = min(40.0, (end_mm - start_mm) / 3)
    at = start_mm + uneven_mm * grain.share("begin", number)
    last = end_mm - 3 - uneven_mm * grain.share("end", number)
    stroke = number % 3
    while at < last - 8:
        stop = min(
            at + grain.within(*((25, 70) if lit else (50, 150)), f"long{stroke}", number), last
        )
        yield Run(tuple(_stroke(curve, at, stop, half_mm, lane, phase)))
        at = stop + grain.within(*((25, 90) if lit else (6, 36)), f"gap{stroke}", number)
        stroke += 1


def _stroke(
    curve: Curve, start_mm: float, end_mm: float, half_mm: HalfWidth, lane: float, phase: float
) -> Iterator[XY]:
    """Neighbouring strokes wave together, as the fibres of wood do, each a little by itself."""
    for at in steps(start_mm, end_mm, _BEND_MM):
        wave = 0.13 * math.sin(at / 75 + phase) + 0.05 * math.sin(at / 29 + lane * 9)
        aside = max(-_INSIDE, min(_INSIDE, lane * 0.9 + wave))
        yield curve.beside(at, half_mm(at) * aside)
