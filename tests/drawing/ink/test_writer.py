"""The writer escapes every text and rounds every length once."""

import math

import pytest

from pencilwood.drawing.ink.points import Point
from pencilwood.drawing.ink.shapes import Box, Dot, Group, Ink, Run, Words
from pencilwood.drawing.ink.writer import COARSE, element, escape, number, write
from svg_reading import path_points, read


@pytest.mark.parametrize(
    ("value", "written"),
    [
        (0, "0"),
        (-0.04, "0"),  # no minus zero
        (1.06, "1.1"),
        (-0.5, "-0.5"),
        (12.0, "12"),
        (-1234.56, "-1234.6"),
    ],
)
def test_lengths_are_rounded_to_a_tenth(value: float, written: str) -> None:
    assert number(value) == written


def test_text_and_attributes_are_escaped() -> None:
    nasty = "<&\"'>"
    svg = write(Group((Words(Point(0, 0), nasty, {"class": nasty}),), {"data-x": nasty}))
    root = read(svg)
    assert root.get("data-x") == nasty
    assert root[0].text == nasty
    assert root[0].get("class") == nasty


def test_characters_that_xml_forbids_are_replaced() -> None:
    assert escape("a\x00b\x1b\ud800c\ufffe") == "a�b��c�"
    assert escape("línea\n×") == "línea\n×"


def test_an_element_without_inside_is_closed_at_once() -> None:
    assert element("path", {"d": "M0 0"}) == '<path d="M0 0"/>'
    assert element("g", {}, "") == "<g></g>"


def test_a_run_of_corners_passes_every_point() -> None:
    corners = (Point(0, 0), Point(10.04, -3), Point(7, 20), Point(-5, 1.26))
    drawn = read(write(Ink((Run(corners, smooth=False),)))).attrib["d"]
    assert [(round(x, 1), round(y, 1)) for x, y in path_points(drawn)] == [
        (0, 0),
        (10, -3),
        (7, 20),
        (-5, 1.3),
    ]


def test_a_smooth_run_starts_and_ends_at_its_points() -> None:
    bends = tuple(Point(n * 10.3, (n % 2) * 7.7) for n in range(6))
    drawn = read(write(Ink((Run(bends),)))).attrib["d"]
    found = list(path_points(drawn))
    assert list(found[0]) == [0, 0]
    assert [round(value, 1) for value in found[-1]] == [51.5, 7.7]


def test_a_closed_run_keeps_the_corners_where_it_turns_back() -> None:
    edge = [Point(-5, 0), Point(-5, -20), Point(-5, -40), Point(5, -40), Point(5, -20), Point(5, 0)]
    drawn = read(write(Ink((Run(tuple(edge), closed=True),)))).attrib["d"]
    assert drawn.endswith("z")
    assert set(path_points(drawn)) == set(edge)


def test_strokes_of_one_pen_start_where_they_should() -> None:
    """The second stroke is told from the end of the first, or from its start where it closes."""
    for closed in (True, False):
        first = Run((Point(0, 0), Point(10, 0), Point(10, 10)), closed=closed, smooth=False)
        second = Run((Point(50, 60), Point(70, 80)))
        drawn = read(write(Ink((first, second)))).attrib["d"]
        assert list(path_points(drawn))[-2:] == [(50, 60), (70, 80)]
        assert drawn.count("M") == 1


def test_wood_that_goes_on_has_no_line_across_its_foot() -> None:
    edge = tuple(Point(x, y) for x, y in ((-5, 0), (-5, -40), (5, -40), (5, 0)))
    whole = read(write(Ink((Run(edge, closed=True),)))).attrib["d"]
    goes_on = read(write(Ink((Run(edge, closed=True, open_foot=True),)))).attrib["d"]
    assert whole == goes_on + "z"


def test_coarse_points_are_rounded_to_half_a_millimetre() -> None:
    run = Run((Point(0.2, 0.3), Point(10.76, 5.74)))
    drawn = read(write(Ink((run,)), COARSE)).attrib["d"]
    assert list(path_points(drawn)) == [(0, 0.5), (11, 5.5)]


def test_bends_that_are_not_written_lie_where_they_should() -> None:
    bends = [Point(7.3 * step, 40 * math.sin(step)) for step in range(40)]
    svg = write(Ink((Run(tuple(bends)),)), COARSE)
    drawn = read(svg).attrib["d"]
    assert drawn.count("q") == 1
    assert drawn.count("t") == 37
    # SVG 1.1, 8.3.7: the control point of `t` is that of the command before, mirrored.
    found = [*path_points(drawn)]
    controls = found[1::2]
    assert len(controls) == 38
    for (x, y), bend in zip(controls, bends[1:-1], strict=True):
        assert math.hypot(x - bend.x, y - bend.y) <= 0.5 * math.sqrt(2) + 0.25 * math.sqrt(2)


def test_ellipses_turn_about_their_middle() -> None:
    one = read(write(Dot(Point(3, 4), 10, flattening=0.5, turn_deg=44.7)))
    assert (one.tag, one.get("ry")) == ("ellipse", "5")
    assert one.get("transform") == "rotate(45 3 4)"
    assert read(write(Dot(Point(3, 4), 10))).tag == "circle"


def test_boxes_carry_their_size() -> None:
    one = read(write(Box(Point(1, 2), 3, 4, {"class": "x"})))
    assert dict(one.attrib) == {"class": "x", "x": "1", "y": "2", "width": "3", "height": "4"}
