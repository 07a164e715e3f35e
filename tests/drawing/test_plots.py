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


@given(st.floats(0.001, 1e6))
def test_ticks_are_few_and_reach_far(most: float) -> None:
    found = ticks(most)
    assert found[0] == 0
    assert 3 <= len(found) <= 7
    assert most * 0.6 <= found[-1] <= most * 1.001
