"""Marks that tell the condition of wood in ink alone: sores, cracks, wounds."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping

from pencilwood.drawing.ink.curves import HalfWidth
from pencilwood.drawing.ink.looks import FACE, INK
from pencilwood.drawing.ink.points import XY
from pencilwood.drawing.ink.shapes import Attributes, Dot, Ink, Run, Thing
from pencilwood.drawing.wood.stems import Stem
from pencilwood.vine.model import Condition

_SORE_EVERY_MM = 85


def condition_marks(stem: Stem, start_mm: float, end_mm: float, half: HalfWidth) -> list[Thing]:
    """What shows the condition of the wood between two places; nothing on sound wood."""
    draw = _MARKS.get(stem.piece.condition)
    return [] if draw is None or end_mm - start_mm < 4 else draw(stem, start_mm, end_mm, half)


def _sores(stem: Stem, start_mm: float, end_mm: float, half: HalfWidth) -> list[Thing]:
    """Diseased wood: sunken dark patches, and hatching across the wood between them."""
    room = end_mm - start_mm
    count = max(1, round(room / _SORE_EVERY_MM))
    patches = [_sore(stem, start_mm + room * (n + 0.5) / count, half, n) for n in range(count)]
    hatch: list[Run] = []
    for number in range(count * 4):
        at = start_mm + room * (number + 0.5) / (count * 4)
        wide = half(at) * 0.8
        hatch.append(Run((stem.curve.beside(at - 4, -wide), stem.curve.beside(at + 4, wide))))
    return [
        Ink(tuple(hatch), {"class": "pw-hatch", "fill": "none", "stroke-width": 1.5}),
        Ink(tuple(patches), {"class": "pw-sore", "fill": INK, "stroke": "none"}),
    ]


def _sore(stem: Stem, middle_mm: float, half: HalfWidth, number: int) -> Run:
    seed = round(middle_mm) * 7 + number
    side = stem.grain.sign("sore", seed)
    long = stem.grain.within(10, 17, "sore length", seed)
    wide = half(middle_mm)
    sunk = 1.25 if stem.piece.is_cane else 0.75
    inner = [
        stem.curve.beside(middle_mm + long * share, side * wide * (1 - sunk * depth))
        for share, depth in ((-1.0, 0.0), (-0.5, 0.7), (0.1, 1.0), (0.6, 0.7), (1.0, 0.0))
    ]
    outer = [
        stem.curve.beside(middle_mm + long * share, side * wide * 1.06)
        for share in (1.0, 0.5, 0.0, -0.5, -1.0)
    ]
    return Run(tuple(inner + outer), closed=True)


def _cracks(stem: Stem, start_mm: float, end_mm: float, half: HalfWidth) -> list[Thing]:
    """Dead wood: long splits that jag from side to side."""
    runs: list[Run] = []
    for lane in (-0.35, 0.4):
        points: list[XY] = []
        count = max(3, round((end_mm - start_mm) * 0.85 / 9))
        for number in range(count + 1):
            at = start_mm + (end_mm - start_mm) * (0.06 + 0.86 * number / count)
            jag = lane + (0.22 if number % 2 else -0.22)
            points.append(stem.curve.beside(at, half(at) * jag))
        runs.append(Run(tuple(points), smooth=False))
    return [Ink(tuple(runs), {"class": "pw-crack", "fill": "none", "stroke-width": 1.8})]


def _wound(stem: Stem, start_mm: float, end_mm: float, half: HalfWidth) -> list[Thing]:
    """Injured wood: a dark oval wound in a pale rim of healed bark, and two nicks across it."""
    middle = start_mm + (end_mm - start_mm) * 0.5
    turn = math.degrees(stem.curve.heading_rad(middle)) + 90
    long = min(24.0, (end_mm - start_mm) * 0.4)
    rim: Attributes = {"class": "pw-scar", "fill": INK, "stroke": FACE, "stroke-width": 3}
    flat = min(0.75, half(middle) * 0.62 / long)
    nicks = tuple(
        Run(
            (
                stem.curve.beside(middle + at - 3, -half(middle) * 1.25),
                stem.curve.beside(middle + at + 3, half(middle) * 1.25),
            )
        )
        for at in (-long * 0.3, long * 0.3)
    )
    return [
        Dot(stem.curve.at(middle), long, rim, flattening=flat, turn_deg=turn),
        Ink(nicks, {"class": "pw-nick", "fill": "none", "stroke-width": 2.2}),
    ]


_Draw = Callable[[Stem, float, float, HalfWidth], list[Thing]]
_MARKS: Mapping[Condition, _Draw] = {
    Condition.DISEASED: _sores,
    Condition.DEAD: _cracks,
    Condition.INJURED: _wound,
}
