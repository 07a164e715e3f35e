"""Bark of older wood: shaggy strokes along it, a wash on the shaded side, loose strips."""

from __future__ import annotations

from pencilwood.drawing.curves import Curve, HalfWidth, outline, steps
from pencilwood.drawing.grain import Grain
from pencilwood.drawing.points import Point
from pencilwood.drawing.shapes import Attributes, Ink, Run, Thing

_STROKE_EVERY_MM2 = 620


def older_wood(curve: Curve, start_mm: float, end_mm: float, half_mm: HalfWidth) -> Run:
    """The uneven outline of a stretch of older wood."""
    return Run(tuple(outline(curve, steps(start_mm, end_mm, 14), half_mm)), closed=True)


def bark(
    curve: Curve,
    start_mm: float,
    end_mm: float,
    half_mm: HalfWidth,
    grain: Grain,
    *,
    shaded: int = 1,
) -> tuple[Thing, ...]:
    """Wash and strokes to lay over that outline; `shaded` is -1 when the left side is dark."""
    area = (end_mm - start_mm) * 2 * half_mm((start_mm + end_mm) / 2)
    count = max(2, round(area / _STROKE_EVERY_MM2))
    strokes = [_stroke(curve, start_mm, end_mm, half_mm, grain, n) for n in range(count)]
    strips = [_strip(curve, start_mm, end_mm, half_mm, grain, n) for n in range(count // 5)]
    wash = _wash(curve, start_mm, end_mm, half_mm, shaded)
    fine: Attributes = {"class": "pw-bark", "fill": "none", "stroke-width": 1.6}
    return (wash, Ink(tuple(strokes + strips), fine))


def _wash(curve: Curve, start_mm: float, end_mm: float, half_mm: HalfWidth, shaded: int) -> Ink:
    along = steps(start_mm, end_mm, min(40, (end_mm - start_mm) / 4))
    edge = [curve.beside(at, shaded * half_mm(at)) for at in along]
    depth = [0.9, 0.5, *[0.25] * (len(along) - 4), 0.4, 0.8]
    inner = [
        curve.beside(at, shaded * half_mm(at) * share)
        for at, share in zip(along, depth, strict=True)
    ]
    shade: Attributes = {
        "class": "pw-wash",
        "fill": "#000",
        "fill-opacity": "0.16",
        "stroke": "none",
    }
    return Ink((Run(tuple(edge + inner[::-1]), closed=True),), shade)


def _stroke(
    curve: Curve, start_mm: float, end_mm: float, half_mm: HalfWidth, grain: Grain, number: int
) -> Run:
    room = end_mm - start_mm
    length = min(grain.within(16, 70, "length", number), room * 0.8)
    begin = start_mm + (room - length) * grain.share("begin", number)
    lane = grain.within(-0.86, 0.86, "lane", number)
    points: list[Point] = []
    for step in range(4):
        at = begin + length * step / 3
        wave = grain.within(-0.1, 0.1, f"wave{step}", number)
        points.append(curve.beside(at, half_mm(at) * max(-0.92, min(0.92, lane + wave))))
    return Run(tuple(points))


def _strip(
    curve: Curve, start_mm: float, end_mm: float, half_mm: HalfWidth, grain: Grain, number: int
) -> Run:
    """A strip of bark that has come loose and stands off the edge."""
    room = end_mm - start_mm
    length = min(grain.within(14, 34, "strip", number), room * 0.5)
    begin = start_mm + (room - length) * grain.share("strip at", number)
    side = grain.sign("strip side", number)
    points = [
        curve.beside(begin + length * share, side * (half_mm(begin + length * share) + off))
        for share, off in ((0.0, -1.5), (0.4, 1.0), (0.8, 3.5), (1.0, 7.0))
    ]
    return Run(tuple(points))
