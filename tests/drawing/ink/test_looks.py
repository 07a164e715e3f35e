"""The colours: enough contrast on light and dark pages, and the same in file and style sheet."""

import re

import pytest

from pencilwood.drawing.ink import looks

LIGHT, DARK = ".pw-vine {", '[data-md-color-scheme="slate"] .pw-vine {'
WOOD = ("frame", "old", "cane", "spindly", "diseased", "dead")


def palette(selector: str) -> dict[str, str]:
    css = "\n" + looks.stylesheet()
    block = css.split("\n" + selector, 1)[1].split("}", 1)[0]
    return dict(re.findall(r"--pw-([a-z]+): (#[0-9a-f]{6})", block))


def luminance(colour: str) -> float:
    parts = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    linear = [p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(first: str, second: str) -> float:
    low, high = sorted((luminance(first), luminance(second)))
    return (high + 0.05) / (low + 0.05)


def test_contrast_is_reckoned_as_wcag_does() -> None:
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#767676", "#ffffff") == pytest.approx(4.54, abs=0.01)


@pytest.mark.parametrize("selector", [LIGHT, DARK])
def test_wood_stands_out_from_the_paper(selector: str) -> None:
    colours = palette(selector)
    for name in WOOD:
        assert contrast(colours[name], colours["paper"]) >= 3, name


@pytest.mark.parametrize("selector", [LIGHT, DARK])
def test_words_can_be_read(selector: str) -> None:
    colours = palette(selector)
    assert contrast(colours["ink"], colours["paper"]) >= 7
    assert contrast(colours["pencil"], colours["paper"]) >= 4.5


@pytest.mark.parametrize("selector", [LIGHT, DARK])
def test_marks_stand_out_from_the_wood(selector: str) -> None:
    colours = palette(selector)
    for name in WOOD:
        assert contrast(colours["mark"], colours[name]) >= 2.5, name


def test_a_file_alone_has_the_colours_of_the_style_sheet() -> None:
    colours = palette(LIGHT)
    for name in (*WOOD, "paper", "ink", "pencil", "bud", "face"):
        assert getattr(looks, name.upper()) == colours[name]
