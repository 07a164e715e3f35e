"""What the browser draws of a practice vine goes as far as the handbook's own drawing of it."""

import json
import re
from pathlib import Path
from typing import Any

import pytest

from pencilwood.drawing import Paper, WoodShown, draw_vine
from pencilwood.drawing.for_programs.compact import compact_drawing
from pencilwood.vine.forms.cordon import ONE_ARM_LEFT, ONE_ARM_RIGHT, TWO_ARM_CORDON
from pencilwood.vine.model import Side, Vine
from pencilwood.vine.wood import divide
from vines import TRELLIS, arm, cane

ENDS = json.loads((Path(__file__).parents[2] / "js/fixtures/ends_of_vines.json").read_text("utf-8"))


def _vine(row: dict[str, Any]) -> Vine:
    sides = [Side.LEFT if tip < 0 else Side.RIGHT for tip, _ in row["arms"]]
    form = TWO_ARM_CORDON
    if len(sides) == 1:
        form = ONE_ARM_LEFT if sides == [Side.LEFT] else ONE_ARM_RIGHT
    arms = [
        arm(side, abs(tip), (200, [cane("a", 6)]), thickness_mm=thick)
        for side, (tip, thick) in zip(sides, row["arms"], strict=True)
    ]
    return Vine(form, row["trunk"], 900, TRELLIS, tuple(arms))


@pytest.mark.parametrize("row", ENDS, ids=lambda row: row["why"])
def test_trunk_and_arms_end_where_the_browser_ends_them(row: dict[str, Any]) -> None:
    """`tests/js/practice_letters.test.mjs` goes through the same table."""
    parts = divide(_vine(row))
    told = compact_drawing(parts)
    assert {key: told[key] for key in ("trunk", "thicker", "arms")} == {
        key: row[key] for key in ("trunk", "thicker", "arms")
    }
    drawing = draw_vine(WoodShown(parts), Paper("p", "en", title="t", description="d"))
    (ends,) = re.findall(r'data-ends="([^"]*)"', drawing)
    assert [float(end) for end in ends.split()] == row["ends"]
