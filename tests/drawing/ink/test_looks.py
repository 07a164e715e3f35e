"""The colours: enough contrast on light and dark pages, and the same in file and style sheet."""

import re

import pytest

from pencilwood.assets import asset_root
from pencilwood.drawing.ink import looks

SHADES = {"light": "", "dark": '[data-md-color-scheme="slate"] '}
WOOD = ("frame", "old", "cane", "spindly", "diseased", "dead")


def palette(shade: str) -> dict[str, str]:
    """The colours of wood, those taken from the pages' tokens included."""
    css = asset_root() / "css"
    wood, pages = ("vine", "tokens") if shade == "light" else ("dark", "dark")
    own = _colours((css / f"{wood}.css").read_text("utf-8"), f"{SHADES[shade]}.pw-vine {{")
    of_pages = _colours(
        (css / f"{pages}.css").read_text("utf-8"), f"{SHADES[shade].strip() or ':root'} {{"
    )
    return {name: of_pages.get(colour, colour) for name, colour in own.items()}


def _colours(css: str, selector: str) -> dict[str, str]:
    block = re.split(rf"^ *{re.escape(selector)}", css, maxsplit=1, flags=re.MULTILINE)[1]
    said: list[tuple[str, str, str]] = re.findall(
        r"--(pwh?)-([a-z]+): (#[0-9a-f]{6}|var\(--pwh-[a-z]+\))", block.split("}", 1)[0]
    )
    return {name if kind == "pw" else f"var(--pwh-{name})": colour for kind, name, colour in said}


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


@pytest.mark.parametrize("shade", SHADES)
def test_wood_stands_out_from_the_paper(shade: str) -> None:
    colours = palette(shade)
    for name in WOOD:
        assert contrast(colours[name], colours["paper"]) >= 3, name


@pytest.mark.parametrize("shade", SHADES)
def test_words_can_be_read(shade: str) -> None:
    colours = palette(shade)
    assert contrast(colours["ink"], colours["paper"]) >= 7
    assert contrast(colours["pencil"], colours["paper"]) >= 4.5


@pytest.mark.parametrize("shade", SHADES)
def test_marks_stand_out_from_the_wood(shade: str) -> None:
    colours = palette(shade)
    for name in WOOD:
        assert contrast(colours["mark"], colours[name]) >= 2.5, name


def test_a_file_alone_has_the_colours_of_the_style_sheet() -> None:
    colours = palette("light")
    for name in (*WOOD, "paper", "ink", "pencil", "bud", "face"):
        assert getattr(looks, name.upper()) == colours[name]


def test_vines_lie_on_the_paper_of_the_pages() -> None:
    pages = _colours((asset_root() / "css/tokens.css").read_text("utf-8"), ":root {")
    assert palette("light")["paper"] == pages["var(--pwh-paper)"]
