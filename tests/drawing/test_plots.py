"""Plots: complete, inside their picture, and read without colour."""

import re
import xml.etree.ElementTree as ET

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pencilwood.drawing.plots import Axis, Bar, Limit, Mark, bar_plot, line_plot, ticks

BARS = (
    Bar("The formula asks", "22 to 31 buds", 22, 26, 31),
    Bar('Arms <&"hold', "20 buds", 20, 20, 20),
)


def read(svg: str) -> ET.Element:
    return ET.fromstring(svg)  # noqa: S314 - our own drawing


def parts(svg: str, kind: str) -> list[ET.Element]:
    return [one for one in read(svg).iter() if kind in (one.get("class") or "")]


def words(svg: str) -> list[str]:
    return [one.text or "" for one in read(svg).iter() if one.tag.endswith("text")]


def test_bars_carry_their_words_and_numbers() -> None:
    svg = bar_plot("plot", "Buds", BARS, Limit("full", 30))
    assert words(svg) == ["The formula asks", "22 to 31 buds", 'Arms <&"hold', "20 buds", "full"]
    wide, narrow = (float(bar.get("width", "0")) for bar in parts(svg, "pw-plot-bar"))
    assert narrow / wide == pytest.approx(20 / 26, rel=0.01)
    # A range has a line and two ends; a single number has none.
    assert len(parts(svg, "pw-plot-span")) == 3
    assert len(parts(svg, "pw-plot-limit")) == len(BARS)


def test_a_picture_is_named_for_those_who_cannot_see_it() -> None:
    root = read(bar_plot("plot", "Buds on a vine", BARS))
    assert root.get("role") == "img"
    title = root[0]
    assert (title.text, title.get("id")) == ("Buds on a vine", root.get("aria-labelledby"))


def test_nothing_to_show_is_still_a_picture() -> None:
    assert read(bar_plot("plot", "None", [Bar("a", "0", 0, 0, 0)])) is not None


def test_long_words_stand_under_each_other() -> None:
    long = Bar("La fórmula pide", "22 a 31 yemas (lo más probable: 26)", 22, 26, 31)
    places = [
        (one.get("x"), one.get("text-anchor"))
        for one in read(bar_plot("plot", "Buds", [long])).iter()
        if one.tag.endswith("text")
    ]
    assert places == [("14", "start"), ("14", "start")]


@given(st.floats(0.01, 1000), st.floats(1, 1000), st.floats(0.01, 0.99))
def test_a_curve_stays_inside_its_picture(across: float, upward: float, share: float) -> None:
    points = [(across * step / 10, upward * step / 11) for step in range(11)]
    mark = Mark("this block", 0, across * share, across, upward * share)
    svg = line_plot(
        "curve",
        "Curve",
        points,
        (Axis("across", across), Axis("up", upward)),
        Limit("limit", upward * share),
        mark,
    )
    root = read(svg)
    _, _, width, height = (float(one) for one in (root.get("viewBox") or "").split())
    (line,) = parts(svg, "pw-plot-line")
    for pair in (line.get("points") or "").split():
        x, y = map(float, pair.split(","))
        assert 0 <= x <= width
        assert 0 <= y <= height
    numbers = [text for text in words(svg) if re.fullmatch(r"[\d.e+-]+", text)]
    assert len(numbers) >= 4


def limit_words(svg: str) -> tuple[float, float, str]:
    (one,) = (text for text in read(svg).iter() if (text.text or "").startswith("the arms"))
    return float(one.get("x", "0")), float(one.get("y", "0")), one.get("text-anchor", "")


@pytest.mark.parametrize(
    ("label", "level", "why"),
    [
        ("the arms: 24", 24, "the curve has risen above the line before the words begin"),
        ("the arms hold no more than 24 buds", 24, "the curve still lies where they would begin"),
        ("the arms: 50", 50, "the curve crosses the line where they stand"),
    ],
)
def test_the_words_of_a_limit_touch_no_curve(label: str, level: float, why: str) -> None:
    points = [(x / 10, max(20.0, 40 * x / 10)) for x in range(1, 13)]
    axes = (Axis("across", 1.2), Axis("up", 52.8))
    svg = line_plot("curve", "Curve", points, axes, Limit(label, level))
    (line,) = parts(svg, "pw-plot-line")
    curve = [tuple(map(float, pair.split(","))) for pair in (line.get("points") or "").split()]
    x, y, anchor = limit_words(svg)
    if anchor == "end":
        assert not any(px > x - 7 * len(label) and y - 12 < py < y + 3 for px, py in curve), why
    else:
        # Under the plot, beside a piece of the dashed line.
        assert len(parts(svg, "pw-plot-limit")) == 2, why
        assert y > 250
    assert y < float((read(svg).get("viewBox") or "").split()[3])


def test_words_of_a_limit_stand_at_their_line_where_there_is_room() -> None:
    axes = (Axis("across", 1), Axis("up", 50))
    svg = line_plot("curve", "Curve", [(0.1, 20), (1, 48)], axes, Limit("the arms: 29", 29))
    assert limit_words(svg)[2] == "end"
    long = Limit("the arms hold no more than 24 buds, as they are", 24)
    svg = line_plot("curve", "Curve", [(0.1, 20), (0.4, 20), (1, 48)], axes, long)
    assert limit_words(svg)[2] == "start"


def test_no_line_of_the_grid_crosses_the_words_of_a_limit() -> None:
    axes = (Axis("across", 1), Axis("up", 50))
    svg = line_plot("curve", "Curve", [(0.1, 20), (1, 48)], axes, Limit("the arms: 24", 24))
    assert limit_words(svg)[2] == "start"


@given(st.floats(0.001, 1e6))
def test_ticks_are_few_and_reach_far(most: float) -> None:
    found = ticks(most)
    assert found[0] == 0
    assert 3 <= len(found) <= 7
    assert most * 0.6 <= found[-1] <= most * 1.001
