"""The limits of the head zone stand where the profile says, to scale, clear of names."""

from __future__ import annotations

import pytest

from pencilwood.drawing.ink.shapes import Ink, Words
from pencilwood.drawing.names.head_zone import draw_head_zone, room_for_head_zone
from pencilwood.drawing.names.place_names import boxes_of_names, named
from pencilwood.drawing.plate import Plate
from pencilwood.drawing.wood.stems import THICKER
from pencilwood.vine.forms.cordon import TWO_ARM_CORDON
from pencilwood.vine.model import Side
from pencilwood.vine.wood import divide
from vines import SAMPLES, arm, cane, vine


@pytest.mark.parametrize("language", ["en", "es"])
@pytest.mark.parametrize("zone_mm", [50, 100, 150])
@pytest.mark.parametrize("sample", sorted(SAMPLES))
def test_lines_stand_at_the_limits_and_cross_no_name(
    sample: str, zone_mm: int, language: str
) -> None:
    plate = Plate(divide(SAMPLES[sample]()))
    lines, _, *names = draw_head_zone(plate, zone_mm, language).things
    name = names[-1]
    assert isinstance(lines, Ink)
    assert isinstance(name, Words)
    assert {x for run in lines.runs for x, _ in run.points} == {-zone_mm, zone_mm}
    room = room_for_head_zone(plate, zone_mm, language)
    for run in lines.runs:
        (x, top), (_, low) = run.points
        assert room.top <= top < low <= room.bottom
        for box in boxes_of_names(plate):
            assert not (box.left < x < box.right and top < box.bottom - 14 and box.top + 10 < low)
    assert name.foot.y < room.bottom
    # The name begins clear of the trunk and goes away from it.
    way = 1 if name.attributes["text-anchor"] == "start" else -1
    assert way * name.foot.x > plate.vine.trunk_thickness_mm * THICKER / 2 * 1.15
    assert room.left <= name.foot.x + way * 28 * len(name.text) <= room.right


def test_the_name_of_the_zone_is_below_names_that_the_trunk_pushes_into_a_third_row() -> None:
    wood = [(at, [cane("a", 6)]) for at in (10, 60, 110)]
    arms = arm(Side.LEFT, 600, *wood), arm(Side.RIGHT, 600, *wood)
    plate = Plate(divide(vine(TWO_ARM_CORDON, *arms)))
    *_, name = draw_head_zone(plate, 100, "en").things
    assert isinstance(name, Words)
    lowest = max(foot.y for _, _, foot in named(plate))
    # A phone shows its letters 70 mm high; capitals and tall letters are 0.75 of that.
    assert name.foot.y - 70 * 0.75 > lowest + 10
    assert room_for_head_zone(plate, 100, "en").bottom > name.foot.y
