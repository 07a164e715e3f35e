"""The story of a vine is read before its first cut, and the vine stays on the first screen."""

from pathlib import Path

import pytest
from playwright.sync_api import Page, ViewportSize, expect

pytestmark = [pytest.mark.browser, pytest.mark.slow]

PHONE = ViewportSize(width=390, height=844)
SPARE_PX = 4
LONG = ["cases/a-cane-across-the-head", "es/cases/the-head-has-climbed", "es/cases/upright-canes"]

LINES_IN_THE_WAY = """() => {
  const story = document.querySelector(".pw-story");
  const edge = story.getBoundingClientRect();
  const more = story.querySelector(".pw-story-more").getBoundingClientRect();
  const words = document.createRange();
  words.selectNodeContents(story.lastChild);
  // Lines that the button or the lower edge of the story would cut through.
  return [...words.getClientRects()].filter((line) =>
    (line.top < more.bottom - 4 && line.bottom > more.top + 4 && line.right > more.left)
    || (line.top < edge.bottom - 4 && line.bottom > edge.bottom + 4))
    .map(({ top, right, bottom }) => [top, right, bottom]);
}"""


def show(page: Page, built_site: Path, address: str) -> None:
    page.set_viewport_size(PHONE)
    page.goto((built_site / f"{address}.html").as_uri())
    expect(page.locator(".pw-glass .pw-stage-whole svg")).to_be_visible()


def box(page: Page, what: str) -> tuple[float, float]:
    found = page.locator(what).first.bounding_box()
    assert found is not None
    return found["y"], found["y"] + found["height"]


@pytest.mark.parametrize("address", [*LONG, "cases/four-spurs", "cases/a-side-without-spurs"])
def test_it_stands_above_a_vine_that_is_seen_whole(
    phone_page: Page, built_site: Path, address: str
) -> None:
    show(phone_page, built_site, address)
    told = box(phone_page, ".pw-story")
    top, bottom = box(phone_page, ".pw-glass .pw-stage-whole svg")
    assert told[1] <= top
    assert bottom <= PHONE["height"] + SPARE_PX


@pytest.mark.parametrize("address", LONG)
def test_a_long_one_is_read_whole_after_one_tap(
    phone_page: Page, built_site: Path, address: str
) -> None:
    page = phone_page
    show(page, built_site, address)
    story = page.locator(".pw-story")
    cut = "one => one.scrollHeight > one.clientHeight + 1"
    assert story.evaluate(cut)
    more = story.get_by_role("button")
    expect(more).to_be_visible()
    whole = story.bounding_box()
    assert whole is not None
    # All of its lines are the target: the thumb need not find the word.
    story.tap(position={"x": 20, "y": 10})
    expect(more).to_have_count(0)
    assert not story.evaluate(cut)
    expect(story).to_be_focused()


def test_a_short_one_offers_nothing_more(phone_page: Page, built_site: Path) -> None:
    show(phone_page, built_site, "cases/the-middle-stays-open")
    page = phone_page
    page.set_viewport_size({"width": 640, "height": 900})
    expect(page.locator(".pw-story-more")).to_be_hidden()


def test_a_wide_screen_shows_all_of_it(desktop_page: Page, built_site: Path) -> None:
    desktop_page.goto((built_site / f"{LONG[0]}.html").as_uri())
    expect(desktop_page.locator(".pw-exercise.pw-live")).to_be_visible()
    expect(desktop_page.locator(".pw-story-more")).to_be_hidden()
    story = desktop_page.locator(".pw-story")
    assert story.evaluate("one => one.scrollHeight <= one.clientHeight + 1")


@pytest.mark.parametrize("width", [320, 390])
@pytest.mark.parametrize("address", LONG)
def test_a_long_one_ends_with_a_whole_word(
    phone_page: Page, built_site: Path, address: str, width: int
) -> None:
    page = phone_page
    show(page, built_site, address)
    page.set_viewport_size({"width": width, "height": 844})
    expect(page.locator(".pw-story-more")).to_be_visible()
    assert page.evaluate(LINES_IN_THE_WAY) == []
