"""Points, curves and the irregularity of wood know nothing of SVG."""

import math

import pytest

from pencilwood.drawing.ink.curves import STEP_MM, outline, same_way_round, steps, trace
from pencilwood.drawing.ink.grain import Grain
from pencilwood.drawing.ink.light import shaded_side
from pencilwood.drawing.ink.points import Point, between


def test_heading_zero_is_up_and_positive_turns_right() -> None:
    assert Point(0, 0).go(0, 10) == (0, -10)
    assert Point(0, 0).go(math.pi / 2, 10).x == 10


def test_between_takes_a_share_of_the_way() -> None:
    assert between(Point(0, 0), Point(10, 20), 0.25) == (2.5, 5)


def test_a_traced_curve_is_as_long_as_the_wood() -> None:
    curve = trace(Point(0, 0), 300, lambda along: along / 500)
    walked = sum(a.away_from(b) for a, b in zip(curve.points, curve.points[1:], strict=False))
    assert math.isclose(walked, 300)
    assert math.isclose(curve.length_mm, 300)


def test_a_curve_goes_straight_on_before_its_foot_and_beyond_its_tip() -> None:
    curve = trace(Point(0, 0), 2 * STEP_MM, lambda _: 0.0)
    assert curve.at(-5).y == 5
    assert math.isclose(curve.at(2 * STEP_MM + 7).y, -(2 * STEP_MM + 7))


def test_an_outline_is_as_wide_as_the_wood() -> None:
    curve = trace(Point(0, 0), 60, lambda _: 0.0)
    edge = outline(curve, [0, 30, 60], lambda along: 10 - along / 10)
    assert [round(x) for x, _ in edge] == [-10, -7, -4, 4, 7, 10]


@pytest.mark.parametrize(
    ("heading_deg", "side"),
    # Up, down, to the right, to the left, and slanting up to either side.
    [(0, 1), (180, -1), (90, 1), (-90, -1), (45, 1), (-45, 1)],
)
def test_light_comes_from_the_left_and_a_little_from_above(heading_deg: int, side: int) -> None:
    assert shaded_side(math.radians(heading_deg)) == side


def test_steps_include_both_ends() -> None:
    assert steps(0, 10, 3) == [0, 10 / 3, 20 / 3, 10]
    assert steps(5, 6, 100) == [5, 6]


def test_outlines_are_turned_the_same_way_round() -> None:
    square = [Point(0, 0), Point(1, 0), Point(1, 1), Point(0, 1)]
    assert same_way_round(square) == square
    assert same_way_round(square[::-1]) == square


def test_grain_follows_from_the_name_alone() -> None:
    # A fixed value, so that another Python or another machine would be noticed.
    assert Grain("L1a").share("buds") == Grain("L1a").share("buds")
    assert round(Grain("L1a").share("buds"), 6) == GRAIN_OF_L1A
    assert Grain("L1a").share("buds") != Grain("L1b").share("buds")
    assert all(2 <= Grain("x").within(2, 3, "t", n) <= 3 for n in range(50))
    assert {Grain("x").sign("t", n) for n in range(50)} == {-1, 1}


GRAIN_OF_L1A = 0.296558
