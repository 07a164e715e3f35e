"""Lengths published in inches are said as a person says them, with the inches beside them."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from pathlib import Path

import pytest

from pencilwood.cases.figures_file import read_figures
from pencilwood.pages.desk import Desk
from pencilwood.pages.figure_words import figure_words
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.score_page import bands_shown
from pencilwood.rules import BANDS
from pencilwood.units import parse_length

# An inch is 25.4 mm and a foot 304.8 mm (international yard and pound agreement, 1959).
SAID = [
    pytest.param("3 in", "", "8 cm (3 in)", "8 cm (3 pulgadas)", id="7.6 cm"),
    pytest.param("3 1/2 in", "", "9 cm (3 1/2 in)", "9 cm (3 1/2 pulgadas)", id="8.9 cm"),
    pytest.param("2 in", "", "5 cm (2 in)", "5 cm (2 pulgadas)", id="5.1 cm"),
    pytest.param("1 in", "", "2.5 cm (1 in)", "2,5 cm (1 pulgada)", id="a half cm is said"),
    pytest.param(
        "3 in", "8 in", "8 to 20 cm (3 to 8 in)", "8 a 20 cm (3 a 8 pulgadas)", id="range"
    ),
    pytest.param(
        "5/16 in",
        "1/2 in",
        "8 to 13 mm (5/16 to 1/2 in)",
        "8 a 13 mm (5/16 a 1/2 pulgada)",
        id="no more than one inch is one inch",
    ),
    pytest.param(
        "1/2 in",
        "2 in",
        "13 mm to 5 cm (1/2 to 2 in)",
        "13 mm a 5 cm (1/2 a 2 pulgadas)",
        id="both ends have their own unit",
    ),
    pytest.param("4 ft", "", "120 cm (4 ft)", "120 cm (4 pies)", id="121.92 cm"),
    pytest.param("7.6 cm", "12.7 cm", "7.6 to 12.7 cm", "7,6 a 12,7 cm", id="measured so finely"),
    pytest.param("15 mm", "3 cm", "15 mm to 3 cm", "15 mm a 3 cm", id="thin and long"),
]


def published(folder: Path, low: str, high: str) -> str:
    ends = f"from: {low}, to: {high}" if high else f"value: {low}"
    path = folder / "figures.yml"
    path.write_text(f"gap: {{{ends}, source: a}}\n", "utf-8")
    return str(path)


@pytest.mark.parametrize(("low", "high", "en", "es"), SAID)
def test_figures_are_said_as_one_says_them(
    low: str, high: str, en: str, es: str, handbook: Handbook, tmp_path: Path
) -> None:
    figures, found = read_figures(Path(published(tmp_path, low, high)), ["a"])
    assert found == []
    gap = figures["gap"]
    for language, said in (("en", en), ("es", es)):
        shown = figure_words(Desk(handbook, "sources", language), gap)
        assert shown.replace("\u00a0", " ") == said
    # What is said is rounded, what is known is not.
    assert gap.low.number == Fraction(parse_length(low))
    assert gap.high.number == Fraction(parse_length(high or low))


def test_a_handbook_in_inches_says_them_alone(handbooks: Callable[[str], Handbook]) -> None:
    book = handbooks("units: us")
    spacing = next(one for one in BANDS if one.name == "spur spacing at least")
    (shown,) = bands_shown(Desk(book, "scores", "en"), [spacing])
    assert shown.range.replace("\u00a0", " ") == "3 to 6 in"


@pytest.mark.parametrize(
    ("language", "said"),
    [("en", "8 to 15 cm (3 to 6 in)"), ("es", "8 a 15 cm (3 a 6 pulgadas)")],
)
def test_ranges_of_rules_are_said_so_too(language: str, said: str, handbook: Handbook) -> None:
    spacing = next(one for one in BANDS if one.name == "spur spacing at least")
    (shown,) = bands_shown(Desk(handbook, "scores", language), [spacing])
    assert shown.range.replace("\u00a0", " ") == said
