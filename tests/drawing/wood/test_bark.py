"""Bark of older wood, and the wound where older wood was cut."""

import pytest

from pencilwood.drawing.ink.curves import trace
from pencilwood.drawing.ink.grain import Grain
from pencilwood.drawing.ink.points import Point
from pencilwood.drawing.ink.shapes import Ink
from pencilwood.drawing.wood.bark import bark
from pencilwood.drawing.wood.canes import cut_face
from pencilwood.drawing.wood.stems import Stem
from pencilwood.vine.model import Piece


@pytest.mark.parametrize("half", [9.0, 20.0, 45.0])
@pytest.mark.parametrize("seed", range(6))
def test_no_stroke_leaves_the_wood(half: float, seed: int) -> None:
    upright = trace(Point(0, 0), 600, lambda _: 0.0)
    things = bark(upright, 0, 600, lambda _: half, Grain(f"bark {seed}"))
    strokes = [
        point for one in things if isinstance(one, Ink) for run in one.runs for point in run.points
    ]
    assert len(strokes) > 20
    assert all(abs(x) < half and -600 <= y <= 0 for x, y in strokes)


def test_the_face_of_sawn_wood_is_as_wide_as_the_wood() -> None:
    old = Stem("R1m", Piece("m", 5, 200, 30), trace(Point(0, 0), 200, lambda _: 0.0))
    edge, ring, _pith = cut_face(old, 100.0).runs
    wide = [max(x for x, _ in run.points) - min(x for x, _ in run.points) for run in (edge, ring)]
    assert wide[0] == pytest.approx(2 * old.half_mm(100.0))
    assert 0.3 * wide[0] < wide[1] < 0.8 * wide[0]
