"""Names of places below the arms: in the order in which places count, from the head outward."""

from __future__ import annotations

import json
import math
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings

from pencilwood.drawing.names.place_names import boxes_of_names, named, turn_of
from pencilwood.drawing.plate import Frame, Plate
from pencilwood.vine.forms.cordon import TWO_ARM_CORDON
from pencilwood.vine.model import Growth, Side, Vine
from pencilwood.vine.wood import divide
from vines import arm, cane, vine, vines

TURNS = json.loads(
    (Path(__file__).parents[2] / "js/fixtures/turns_of_names.json").read_text("utf-8")
)


def boxes(shown: Vine) -> dict[str, Frame]:
    plate = Plate(divide(shown))
    names = [position.name for position in plate.parts.positions]
    return dict(zip(names, boxes_of_names(plate), strict=True))


def meet(one: Frame, other: Frame) -> bool:
    """Whether letters lie on letters: the names of places have nothing below the line."""
    across = one.left < other.right and other.left < one.right
    return across and one.top < other.bottom - 21 and other.top < one.bottom - 21


@given(vines())
@settings(max_examples=60, deadline=None)
def test_no_name_lies_over_another(random: Vine) -> None:
    if random.form.growth is Growth.DOWN:
        return
    all_boxes = list(boxes(random).values())
    for number, one in enumerate(all_boxes):
        assert not any(meet(one, other) for other in all_boxes[number + 1 :])


def with_places(*places_mm: int) -> Vine:
    wood = [(at, [cane("a", 6)]) for at in places_mm]
    return vine(TWO_ARM_CORDON, arm(Side.LEFT, 600, *wood), arm(Side.RIGHT, 600, *wood))


@pytest.mark.parametrize("row", TURNS, ids=lambda row: row["why"])
def test_rows_are_taken_in_turn_as_in_the_browser(row: dict[str, Any]) -> None:
    """The same table is gone through in `tests/js/projector.test.mjs`."""
    turns = [turn_of(*place) for place in zip(row["own"], row["names"], strict=True)]
    assert sorted(range(len(turns)), key=turns.__getitem__) == row["order"]


@pytest.mark.parametrize("side", ["L", "R"])
def test_of_two_names_straight_below_their_places_the_one_nearer_the_head_is_higher(
    side: str,
) -> None:
    at = boxes(with_places(150, 200, 300))
    assert at[f"{side}1"].bottom < at[f"{side}2"].bottom
    assert at[f"{side}1"].bottom == at[f"{side}3"].bottom


@pytest.mark.parametrize("places", [(40, 140, 250), (20, 98, 156), (10, 60, 110)])
def test_names_that_the_trunk_pushes_leave_the_others_below_their_own_places(
    places: tuple[int, ...],
) -> None:
    plate = Plate(divide(with_places(*places)))
    last: dict[int, float] = {}
    places_named = {one.name: (foot, at) for one, foot, at in named(plate)}
    for name in sorted(places_named, reverse=True):
        foot, at = places_named[name]
        side = 1 if foot.x > 0 else -1
        aside = abs(at.x - foot.x) > 1
        assert not aside or at.y > last.get(side, -math.inf), name
        last[side] = max(at.y, last.get(side, -math.inf))
        if abs(foot.x) > 135:
            assert not aside, name
