"""Names that lie on each other in the larger letters of a phone are left out there."""

import pytest

from pencilwood.drawing.ink.points import Point
from pencilwood.drawing.names.crowded_names import crowded_names, half_wide_mm, lies_on_wood


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
