"""The small drawing of a vine, for lists: few bytes, no words, all wood inside."""

import pytest
from hypothesis import given, settings

from high_cordons import high_vine
from pencilwood.drawing.plate import Plate
from pencilwood.drawing.views.small import draw_small
from pencilwood.vine.model import Vine
from pencilwood.vine.wood import divide
from svg_reading import SVG, read, view_box
from vines import SAMPLES, vines


@given(vines())
@settings(max_examples=30, deadline=None)
def test_every_cane_is_inside_the_picture(random: Vine) -> None:
    parts = divide(random)
    left, top, right, bottom = view_box(read(draw_small(parts)))
    for stem in Plate(parts).stems.values():
        for point in (stem.curve.points[0], stem.curve.at(stem.piece.length_mm)):
            assert left < point.x < right
            assert top < point.y < bottom


@pytest.mark.parametrize("name", SAMPLES)
def test_it_is_light_and_has_neither_words_nor_ids(name: str) -> None:
    svg = draw_small(divide(SAMPLES[name]()))
    assert len(svg) < 12_000
    tags = {one.tag.removeprefix(SVG) for one in read(svg).iter()}
    # No paper of its own: that of the page shows through, light or dark.
    assert tags == {"svg", "path"}
    assert " id=" not in svg


def test_wood_that_hangs_low_is_shown_to_its_tip() -> None:
    parts = divide(high_vine())
    lowest = max(point.y for stem in Plate(parts).stems.values() for point in stem.curve.points)
    assert view_box(read(draw_small(parts)))[3] > lowest
