"""Wood that was cut is a dotted ghost, which a screen with large pixels shows as well."""

import io
import itertools

import pytest
from PIL import Image
from playwright.sync_api import Browser, Page

from drawn_states import draw_passes
from heads import head_vine
from pencilwood.assets import asset_root
from pencilwood.vine.model import Vine
from pencilwood.vine.passes import DoneCut, Pass
from pencilwood.vine.wood import Shortening, divide
from vines import SAMPLES

pytestmark = pytest.mark.browser

LEAST_CONTRAST = 3.0
"""WCAG 2.2, success criterion 1.4.11 (https://www.w3.org/TR/WCAG22/#non-text-contrast)."""
SHOW_GHOSTS_ALONE = """() => {
  for (const one of document.querySelectorAll("svg :is(path, text, circle, ellipse)")) {
    if (getComputedStyle(one).fill !== "none" || !one.matches(".pw-wood")) {
      one.style.visibility = "hidden";
    }
  }
}"""
SHADES = {"light": "default", "dark": "slate"}


def luminance(colour: tuple[int, int, int]) -> float:
    """Of WCAG 2.2 (https://www.w3.org/TR/WCAG22/#dfn-relative-luminance)."""
    shares = (one / 255 for one in colour)
    linear = [s / 12.92 if s <= 0.04045 else ((s + 0.055) / 1.055) ** 2.4 for s in shares]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrasts(page: Page) -> dict[tuple[int, int], float]:
    """Of every pixel that the ghosts have touched, to the paper."""
    picture = Image.open(io.BytesIO(page.locator("svg").screenshot())).convert("RGB")
    known: dict[tuple[int, int, int], float] = {}
    at: dict[tuple[int, int], float] = {}
    paper = luminance(picture.getpixel((1, 1)))  # type: ignore[arg-type]
    for x, y in itertools.product(range(picture.width), range(picture.height)):
        colour: tuple[int, int, int] = picture.getpixel((x, y))  # type: ignore[assignment]
        if colour not in known:
            high, low = sorted((luminance(colour), paper), reverse=True)
            known[colour] = (high + 0.05) / (low + 0.05)
        if known[colour] > 1.3:
            at[x, y] = known[colour]
    return at


def share_that_is_seen(at: dict[tuple[int, int], float]) -> float:
    """How much of the ghosts has a dot beside it that stands out enough."""
    around = list(itertools.product((-2, -1, 0, 1, 2), repeat=2))
    seen = [
        max(at.get((x + dx, y + dy), 0.0) for dx, dy in around) >= LEAST_CONTRAST for x, y in at
    ]
    return sum(seen) / len(seen)


def cut_vine(vine: Vine) -> str:
    """All canes cut to two buds, on the near side and on the far one."""
    parts = divide(vine)
    long = [part for part in parts.parts if part.is_cane and part.most > 2]
    cuts = [DoneCut(Shortening(part.name, 2), Pass.FINE) for part in long]
    return draw_passes(parts, cuts, show="fine")


@pytest.mark.parametrize("shade", SHADES)
@pytest.mark.parametrize(
    ("vine", "wide_px"),
    [
        # A whole vine as wide as the text on a phone, and on a desk.
        ("tidy", 358),
        ("tidy", 760),
        # Wood on the far side of a head is paler; what is cut off it is not.
        ("head", 358),
    ],
)
def test_ghosts_can_be_seen_where_pixels_are_large(
    browser: Browser, vine: str, wide_px: int, shade: str
) -> None:
    drawn = cut_vine(head_vine() if vine == "head" else SAMPLES[vine]())
    context = browser.new_context(viewport={"width": wide_px, "height": 800}, device_scale_factor=1)
    page = context.new_page()
    pages = ("tokens", "dark", "vine")
    styles = "".join((asset_root() / f"css/{one}.css").read_text("utf-8") for one in pages)
    page.set_content(
        f"<style>body {{ margin: 0 }} {styles}</style>"
        f'<body data-md-color-scheme="{SHADES[shade]}">{drawn}'
    )
    page.evaluate(SHOW_GHOSTS_ALONE)
    touched = contrasts(page)
    context.close()
    assert len(touched) > 500
    # A dot that ends at a bend may be a speck.
    assert share_that_is_seen(touched) > 0.95
