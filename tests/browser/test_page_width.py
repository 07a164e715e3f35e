"""On a wide screen: one left edge, headings in the margin beside their text, no unused room."""

from pathlib import Path

import pytest
from playwright.sync_api import Page, ViewportSize, expect

pytestmark = [pytest.mark.browser, pytest.mark.slow]

SCREENS = [ViewportSize(width=1280, height=800), ViewportSize(width=1920, height=1080)]
MOST_APART_PX = 12
"""Between the tops of letters of two sizes that stand on about one line."""
HEADED = [
    "which-cane-stays",
    "es/running-a-pruning-day",
    "rules/crowded-spurs",
    "teachers",
    "cases/four-spurs",
    "winters/four-spurs",
]
BESIDE = """() => [...document.querySelectorAll(".md-content__inner > h2")].map((heading) => {
  let next = heading.nextElementSibling;
  while (getComputedStyle(next).float !== "none") next = next.nextElementSibling;
  const [one, other] = [heading, next].map((each) => each.getBoundingClientRect());
  return { left: one.left, apart: Math.abs(one.top - other.top), between: other.left - one.right };
})"""
EDGES = """what => {
  const { left, right } = document.querySelector(what).getBoundingClientRect();
  const { paddingLeft, paddingRight } = getComputedStyle(document.querySelector(what));
  return [left + parseFloat(paddingLeft), right - parseFloat(paddingRight)];
}"""


def show(page: Page, site: Path, address: str, screen: ViewportSize) -> None:
    page.set_viewport_size(screen)
    page.goto((site / f"{address}.html").as_uri())


@pytest.mark.parametrize("screen", SCREENS, ids=lambda one: str(one["width"]))
@pytest.mark.parametrize("address", HEADED)
def test_headings_stand_at_the_left_edge_beside_their_text(
    desktop_page: Page, built_site: Path, address: str, screen: ViewportSize
) -> None:
    show(desktop_page, built_site, address, screen)
    edge, _ = desktop_page.evaluate(EDGES, ".pw-masthead > .pw-ruling")
    title = desktop_page.locator("h1").bounding_box()
    assert title is not None
    assert title["x"] == pytest.approx(edge, abs=1)
    headings = desktop_page.evaluate(BESIDE)
    assert headings
    for heading in headings:
        assert heading["left"] == pytest.approx(edge, abs=1)
        assert heading["apart"] <= MOST_APART_PX
        assert heading["between"] > 0


@pytest.mark.parametrize("screen", SCREENS, ids=lambda one: str(one["width"]))
@pytest.mark.parametrize(
    ("address", "what"),
    [("vines", "ul.pw-cards"), ("practice", ".pw-quiz"), ("quizzes/first-week", ".pw-quiz"),
     ("words", ".pw-words-list"), ("index", ".pw-first-vine"), ("cases/four-spurs", ".pw-case"),
     ("teachers", "ul.pw-rows")],
)  # fmt: skip
def test_what_can_use_the_width_ends_where_the_wire_ends(
    desktop_page: Page, built_site: Path, address: str, what: str, screen: ViewportSize
) -> None:
    show(desktop_page, built_site, address, screen)
    _, wire = desktop_page.evaluate(EDGES, ".pw-masthead > .pw-ruling")
    _, end = desktop_page.evaluate(EDGES, what)
    assert end == pytest.approx(wire, abs=1)


def test_no_line_of_what_was_found_is_cut(desktop_page: Page, built_site: Path) -> None:
    page = desktop_page
    show(page, built_site, "tools", SCREENS[0])
    page.locator(".md-search__input").click()
    expect(page.locator(".md-search-result__meta")).to_contain_text("Type to start searching")
    page.locator(".md-search__input").press_sequentially("spur", delay=40)
    expect(page.locator(".md-search-result__item").first).to_be_visible()
    assert page.locator(".md-search__output").evaluate("one => one.scrollWidth <= one.clientWidth")
    box, rows = page.locator(".md-search__output"), page.locator(".md-search__scrollwrap")
    outside, inside = box.bounding_box(), rows.bounding_box()
    assert outside is not None
    assert inside is not None
    assert inside["width"] <= outside["width"]
