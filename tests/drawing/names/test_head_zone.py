"""The limits of the head zone stand where the profile says, to scale, clear of names."""

from __future__ import annotations

import pytest

from pencilwood.drawing.ink.shapes import Ink, Words
from pencilwood.drawing.names.head_zone import draw_head_zone, room_for_head_zone
from pencilwood.drawing.names.place_names import boxes_of_names
from pencilwood.drawing.plate import Plate
from pencilwood.vine.wood import divide
from vines import SAMPLES


@pytest.mark.parametrize("zone_mm", [50, 100, 150])
@pytest.mark.parametrize("sample", sorted(SAMPLES))
def test_lines_stand_at_the_limits_and_cross_no_name(sample: str, zone_mm: int) -> None:
    plate = Plate(divide(SAMPLES[sample]()))
    lines, *_, name = draw_head_zone(plate, zone_mm, "en").things
    assert isinstance(lines, Ink)
    assert isinstance(name, Words)
    assert {x for run in lines.runs for x, _ in run.points} == {-zone_mm, zone_mm}
    room = room_for_head_zone(plate)
    for run in lines.runs:
        (x, top), (_, low) = run.points
        assert room.top <= top < low <= room.bottom
        for box in boxes_of_names(plate):
            assert not (box.left < x < box.right and top < box.bottom - 14 and box.top + 10 < low)
    assert name.foot.y < room.bottom
