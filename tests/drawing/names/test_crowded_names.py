"""Names that lie on each other in the larger letters of a phone are left out there."""

import pytest

from pencilwood.drawing.ink.points import Point
from pencilwood.drawing.names.crowded_names import (
    crowded_names,
    half_wide_mm,
    lies_on_wood,
    pushed_out,
)


@pytest.mark.parametrize(
    ("feet", "crowded", "why"),
    [
        ({"R1": 100, "R2": 200}, "", "a hand apart each has room"),
        ({"R1": 100, "R2": 160}, "R2", "they would touch: the one nearer the head stays"),
        ({"R1": 100, "R2": 160, "R3": 215}, "R2", "beside a name left out there is room again"),
        ({"L2": -160, "L1": -100}, "L2", "on the left side too the one nearer the head stays"),
        ({"R9": 100, "R10": 190}, "R10", "three letters need more room than two"),
    ],
)
def test_names_in_one_row(feet: dict[str, float], crowded: str, why: str) -> None:
    found = crowded_names((name, Point(x, 0.0)) for name, x in feet.items())
    assert " ".join(sorted(found)) == crowded, why


def test_names_that_the_text_speaks_of_go_first() -> None:
    feet = [("R1", Point(100.0, 0.0)), ("R2", Point(160.0, 0.0)), ("R3", Point(215.0, 0.0))]
    assert crowded_names(feet, {"R2"}) == {"R1", "R3"}
    assert crowded_names(feet, {"R1", "R2"}) == {"R2"}, "of two spoken of, the nearer one stays"


def test_rows_part_names() -> None:
    feet = [("R1", Point(100.0, 0.0)), ("R2", Point(120.0, 80.0))]
    assert crowded_names(feet) == frozenset()


def test_a_name_on_wood_under_the_arm_is_left_out_from_near() -> None:
    hanging = [Point(100.0, -880.0 + down) for down in range(0, 200, 5)]
    name_foot = Point(104.0, -840.0)
    assert lies_on_wood("R3", name_foot, hanging)
    assert not lies_on_wood("R3", Point(180.0, -840.0), hanging)
    assert not lies_on_wood("R3", Point(104.0, -920.0), hanging)


def test_larger_letters_need_more_room() -> None:
    feet = [("R1", Point(100.0, 0.0)), ("R2", Point(210.0, 0.0))]
    assert crowded_names(feet) == frozenset()
    assert crowded_names(feet, times=1.6) == {"R2"}


def test_wood_to_the_left_and_to_the_right_of_a_name_is_passed_over() -> None:
    beside = [Point(float(x), -840.0) for x in (20, 60, 150, 190)]
    foot = Point(104.0, -840.0)
    assert not lies_on_wood("R3", foot, [beside[0], beside[-1]])
    for at in range(50, 160, 5):
        wood = sorted([*beside[::3], Point(float(at), -841.0)])
        assert lies_on_wood("R3", foot, wood) is (abs(at - foot.x) < half_wide_mm("R3") + 11)


@pytest.mark.parametrize(
    ("feet", "moved", "why"),
    [
        ({"R1": 100.0, "R2": 190.0, "R3": 300.0}, {"R2": 197.6}, "there is room outward"),
        ({"R1": 100.0, "R2": 190.0, "R3": 290.0}, {"R2": 197.6, "R3": 295.2}, "it pushes the next"),
        ({"R1": 100.0, "R2": 150.0, "R3": 280.0}, {}, "it stays where it must go too far"),
        ({"R1": 100.0, "R2": 250.0, "R3": 400.0}, {}, "all have room as they are"),
        ({"L1": -100.0, "L2": -190.0, "L3": -300.0}, {"L2": -197.6}, "alike on the left"),
        ({"L1": -30.0, "R1": 30.0}, {}, "across the head nobody is pushed"),
    ],
)
def test_names_make_room_outward(feet: dict[str, float], moved: dict[str, float], why: str) -> None:
    points = {name: Point(x, 0.0) for name, x in feet.items()}
    found = pushed_out(points, 1.32)
    assert {name: at.x for name, at in found.items() if at != points[name]} == pytest.approx(
        moved, abs=0.2
    ), why
    if moved:
        assert crowded_names(points.items(), times=1.32)
        assert not crowded_names(found.items(), times=1.32)


def test_names_of_other_rows_are_not_pushed() -> None:
    points = {"R1": Point(100.0, 0.0), "R2": Point(150.0, 80.0)}
    assert pushed_out(points, 1.32) == points
