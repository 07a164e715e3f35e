"""Letters beside the wood stand clear of the arm, however short the wood is."""

from __future__ import annotations

import math
from collections.abc import Callable
from itertools import combinations

import pytest

from high_cordons import high_vine
from pencilwood.drawing import Paper, WoodShown, draw_vine
from pencilwood.drawing.ink.points import between
from pencilwood.drawing.names.labels import (
    LETTER_MM,
    ROOM_MM,
    has_letter_without_room,
    without_letter,
)
from pencilwood.drawing.names.letter_places import Beside, place_letters
from pencilwood.drawing.plate import Frame, Plate
from pencilwood.drawing.scene.wood_text import unlettered
from pencilwood.vine.forms.cordon import TWO_ARM_CORDON
from pencilwood.vine.model import Piece, Side, Vine
from pencilwood.vine.wood import divide
from vines import SAMPLES, arm, cane, tidy_vine, vine


@pytest.mark.parametrize("long_mm", [8, 15, 24, 60])
def test_the_arm_cuts_no_letter(long_mm: int) -> None:
    old = Piece("m", 2, long_mm, 14)
    arms = [arm(side, 500, (250, [old, cane("a", 6)])) for side in (Side.LEFT, Side.RIGHT)]
    shown = vine(TWO_ARM_CORDON, *arms)
    for place in place_letters(Plate(divide(shown)), ROOM_MM).values():
        assert place.middle[1] + LETTER_MM * 0.5 < -shown.cordon_height_mm


def _crowded() -> Vine:
    """Thick old wood so close together that no letter fits between."""
    wood = [Piece("m", 3, 160, 30), cane("a", 6, on="m", at_mm=150)]
    feet = [(at_mm, wood) for at_mm in range(60, 480, 40)]
    return vine(TWO_ARM_CORDON, *(arm(side, 500, *feet) for side in (Side.LEFT, Side.RIGHT)))


def test_a_letter_without_room_beside_its_wood_has_a_line_to_it_or_is_told_of() -> None:
    plate = Plate(divide(_crowded()))
    places = place_letters(plate, ROOM_MM)
    assert any(one.foot for one in places.values())
    tight = [name for name, one in places.items() if one.is_tight]
    assert list(without_letter(plate, LETTER_MM, lambda _: Beside())) == tight


def test_a_letter_of_old_wood_stands_on_the_side_where_no_cane_begins() -> None:
    parts = divide(high_vine())
    plate = Plate(parts)
    place = place_letters(plate, ROOM_MM)["L2m"]
    begins = plate.stems["L2a"].curve.at(25)
    assert math.dist(place.middle, begins) > ROOM_MM * 0.9


def test_letters_of_wood_that_the_text_names_are_the_last_to_be_left_out() -> None:
    plate = Plate(divide(_crowded()))
    tight = [name for name, one in place_letters(plate, ROOM_MM).items() if one.is_tight]
    for name in tight:
        place = place_letters(plate, ROOM_MM, Beside(first=(name,)))[name]
        assert not place.is_tight, name
        assert place.foot is not None


def test_no_line_leads_over_another_letter() -> None:
    plate = Plate(divide(_crowded()))
    placed = place_letters(plate, ROOM_MM, Beside(first=tuple(plate.stems)))
    for name, one in placed.items():
        for other, letter in placed.items():
            if one.foot is None or other == name or letter.is_tight:
                continue
            for step in range(1, 12):
                on_line = between(one.foot, one.middle, step / 12)
                assert math.dist(on_line, letter.middle) > ROOM_MM * 0.3, (name, other)


@pytest.mark.parametrize("make", [_crowded, tidy_vine])
def test_a_drawing_says_whether_a_letter_has_no_room(make: Callable[[], Vine]) -> None:
    parts = divide(make())
    drawing = draw_vine(WoodShown(parts), Paper("p", "en", title="pw-tight", description="d"))
    assert has_letter_without_room(drawing) is bool(list(unlettered(WoodShown(parts))))


@pytest.mark.parametrize("letter_mm", [34.0, 40.0, 48.0])
@pytest.mark.parametrize("sample", sorted(SAMPLES))
def test_letters_with_room_do_not_lie_on_each_other(sample: str, letter_mm: float) -> None:
    for view in Plate(divide(SAMPLES[sample]())).views:
        with_room = [one for one in place_letters(view, letter_mm).values() if not one.is_tight]
        for one, other in combinations(with_room, 2):
            assert math.dist(one.middle, other.middle) > letter_mm * 0.75


def test_a_line_leads_from_the_edge_of_its_own_wood() -> None:
    plate = Plate(divide(_crowded()))
    led = {name: one.foot for name, one in place_letters(plate, ROOM_MM).items() if one.foot}
    for name, foot in led.items():
        stem = plate.stems[name]
        nearest = min(math.dist(foot, bend) for bend in stem.curve.bends)
        assert nearest < stem.half_mm(0) * 1.5 + 6


def test_letters_keep_clear_of_the_bars_of_cuts_and_inside_the_window() -> None:
    plate = Plate(divide(SAMPLES[min(SAMPLES)]()))
    free = place_letters(plate, ROOM_MM)
    name, at = next((name, one.middle) for name, one in free.items() if not one.is_tight)
    barred = place_letters(plate, ROOM_MM, Beside(frozenset([name]), bars=(at,)))
    assert list(barred) == [name]
    assert math.dist(barred[name].middle, at) > ROOM_MM * 0.3
    x, y = at
    away = Frame(x + 400, y - 50, x + 500, y + 50)
    assert place_letters(plate, ROOM_MM, Beside(frozenset([name]), within=away))[name].is_tight
