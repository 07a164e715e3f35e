"""Names below the arm are clear of the trunk, in the larger letters of a phone too."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from pencilwood.drawing.names.beside_trunk import LOWER_ON_PHONES, around_trunk
from pencilwood.drawing.names.crowded_names import LARGER_ON_PHONES, half_wide_mm
from pencilwood.drawing.names.place_names import named
from pencilwood.drawing.plate import Plate
from pencilwood.vine.forms.cordon import TWO_ARM_CORDON
from pencilwood.vine.model import Side
from pencilwood.vine.wood import divide
from vines import arm, cane, vine

SHEET = Path(__file__).parents[3] / "site_assets/css/handbook/chapters.css"


def plate_with(at_mm: int) -> Plate:
    wood = [(at_mm, [cane("a", 6)])]
    return Plate(
        divide(vine(TWO_ARM_CORDON, arm(Side.LEFT, 600, *wood), arm(Side.RIGHT, 600, *wood)))
    )


@pytest.mark.parametrize("phone_mm", [60.0, 75.0, 88.0])
def test_large_names_lie_nowhere_on_the_bend_into_the_arm(phone_mm: float) -> None:
    plate = plate_with(60)
    wood = [at for run in plate.looks.frame_wood(plate.vine).runs for at in run.points]
    for position, _, foot in named(plate, phone_mm):
        half = half_wide_mm(position.name) * max(phone_mm / 52, LARGER_ON_PHONES)
        low = foot.y + phone_mm * LOWER_ON_PHONES
        top = low - phone_mm * 0.75
        assert not [(x, y) for x, y in wood if abs(x - foot.x) < half + 8 and top < y < low]


def test_the_larger_the_names_the_farther_they_stand_from_the_trunk() -> None:
    plate = plate_with(60)
    feet = [abs(next(foot.x for _, _, foot in named(plate, phone_mm))) for phone_mm in (0, 70, 88)]
    assert feet == sorted(set(feet))


def test_a_name_far_from_the_trunk_stays_below_its_place() -> None:
    assert around_trunk(plate_with(60), 88.0, -800.0).beside("R1", 400.0) == 400.0


def test_the_sheet_lowers_names_as_much_as_the_drawing_reckons() -> None:
    rule = re.search(
        r"\.pw-places-above\) \.pw-place-name \{ transform: translateY\(([\d.]+)em",
        SHEET.read_text("utf-8"),
    )
    assert rule is not None
    assert float(rule.group(1)) == LOWER_ON_PHONES
