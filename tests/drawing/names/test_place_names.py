"""Names of places below the arms: in the order in which places count, from the head outward."""

from __future__ import annotations

import pytest
from hypothesis import given, settings

from pencilwood.drawing.names.place_names import boxes_of_names
from pencilwood.drawing.plate import Frame, Plate
from pencilwood.vine.forms.cordon import TWO_ARM_CORDON
from pencilwood.vine.model import Growth, Side, Vine
from pencilwood.vine.wood import divide
from vines import arm, cane, vine, vines


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


@pytest.mark.parametrize("places", [(40, 140, 250), (20, 98, 156), (150, 200, 250)])
def test_of_two_names_the_one_nearer_the_head_is_not_lower_nor_farther_out_in_its_row(
    places: tuple[int, ...],
) -> None:
    wood = [(at, [cane("a", 6)]) for at in places]
    arms = arm(Side.LEFT, 600, *wood), arm(Side.RIGHT, 600, *wood)
    at = boxes(vine(TWO_ARM_CORDON, *arms))
    for side, outward in (("L", -1), ("R", 1)):
        first, second = at[f"{side}1"], at[f"{side}2"]
        assert first.bottom <= second.bottom
        in_one_row = first.bottom == second.bottom
        assert not in_one_row or first.left * outward < second.left * outward
