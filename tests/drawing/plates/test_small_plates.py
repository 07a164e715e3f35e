"""The small picture of a plate: what it shows, without its words and signs."""

import pytest

from pencilwood.drawing.plates import PLATES, draw_plate
from pencilwood.drawing.plates.small import draw_small_plate
from svg_reading import SVG, read, view_box


@pytest.mark.parametrize("name", PLATES)
def test_it_is_the_plate_without_words_or_ids(name: str) -> None:
    small, whole = draw_small_plate(name), read(draw_plate(name, "p1", "en"))
    tags = [one.tag.removeprefix(SVG) for one in read(small).iter()]
    assert not {"text", "title", "desc"} & set(tags)
    # No paper of its own: that of the page shows through, light or dark.
    assert 'class="pw-paper"' not in small
    assert " id=" not in small
    assert view_box(read(small)) == view_box(whole)
    drawn = [one for one in tags if one in {"path", "circle", "ellipse"}]
    assert len(drawn) > 1
    assert len(drawn) < sum(1 for one in whole.iter() if one.tag != f"{SVG}text")
