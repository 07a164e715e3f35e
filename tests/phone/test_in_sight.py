"""On a phone the vine is in sight wherever somebody lands, and what is said of it fits."""

from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, ViewportSize, expect

from exercise_page import choose, pick, press, settle

pytestmark = [pytest.mark.browser, pytest.mark.slow]

SCREENS = [ViewportSize(width=360, height=740), ViewportSize(width=390, height=844)]
NARROW = [ViewportSize(width=320, height=640), ViewportSize(width=360, height=740)]
UNCOVERED = """() => {
  const glass = document.querySelector(".pw-glass").getBoundingClientRect();
  const hand = document.querySelector(".pw-hand");
  const lies = getComputedStyle(hand).position === "sticky";
  const over = lies ? hand.getBoundingClientRect().top : innerHeight;
  return (Math.min(glass.bottom, over, innerHeight) - Math.max(glass.top, 0)) / glass.height;
}"""
"""Which share of the drawing's height is seen."""
BROKEN = """() => [...document.querySelectorAll(".pw-exercise .pw-button, .pw-quiz .pw-button")]
  .filter((one) => one.getClientRects().length > 0)
  .flatMap((one) => {
    const broken = [];
    const walker = document.createTreeWalker(one, NodeFilter.SHOW_TEXT);
    while (walker.nextNode()) {
      const text = walker.currentNode;
      if (text.parentElement.closest(".pw-unseen")) continue;
      for (const word of text.data.matchAll(/[^\\s-]+/g)) {
        const range = document.createRange();
        range.setStart(text, word.index);
        range.setEnd(text, word.index + word[0].length);
        const tops = new Set([...range.getClientRects()].map(({ top }) => Math.round(top)));
        if (tops.size > 1) broken.push(word[0]);
      }
    }
    return broken;
  })"""
"""Words of buttons that stand on more than one line."""


def open_page(page: Page, site: Path, address: str, screen: ViewportSize) -> None:
    page.set_viewport_size(screen)
    page.goto((site / f"{address}.html").as_uri())
    expect(page.locator(".pw-exercise.pw-live")).to_be_visible()


def go_on(page: Page) -> None:
    page.locator(".pw-step .pw-main:visible").first.click()
    settle(page)


@pytest.mark.parametrize("screen", SCREENS, ids=lambda one: f"{one['width']}x{one['height']}")
def test_the_vine_is_in_sight_in_the_next_pass_and_when_cuts_are_changed(
    phone_page: Page, built_site: Path, screen: ViewportSize
) -> None:
    page = phone_page
    open_page(page, built_site, "es/index", screen)
    page.locator(".pw-nav select").select_option(index=2)
    assert page.evaluate(UNCOVERED) > 0.99
    for _ in range(2):
        # Wherever the page was scrolled to.
        page.evaluate("scrollBy(0, -120)")
        go_on(page)
        assert page.evaluate(UNCOVERED) > 0.99
    go_on(page)
    expect(page.locator(".pw-result")).to_be_visible()
    page.locator(".pw-again .pw-button").last.click()
    expect(page.locator(".pw-glass")).to_be_visible()
    assert page.evaluate(UNCOVERED) > 0.99


@pytest.mark.parametrize("screen", NARROW, ids=lambda one: f"{one['width']}x{one['height']}")
@pytest.mark.parametrize("address", ["es/index", "es/practice", "practice"])
def test_no_button_breaks_within_a_word(
    phone_page: Page, built_site: Path, address: str, screen: ViewportSize
) -> None:
    page = phone_page
    open_page(page, built_site, address, screen)
    assert page.evaluate(BROKEN) == []
    for name in ("tool", "stub"):
        page.locator(f".pw-how-open[data-how={name}]").click()
        assert page.evaluate(BROKEN) == []
        page.locator(".pw-how-question [data-value]").last.click()
        assert page.evaluate(BROKEN) == []
    page.locator(".pw-nav select").select_option(index=1)
    assert page.evaluate(BROKEN) == []
    for _ in range(3):
        go_on(page)
    expect(page.locator(".pw-finding .pw-button").first).to_be_visible()
    assert page.evaluate(BROKEN) == []


@pytest.mark.parametrize("address", ["es/index", "es/practice", "es/cases/climbing-spurs"])
def test_the_goal_stands_on_the_first_screen(
    phone_page: Page, built_site: Path, address: str
) -> None:
    open_page(phone_page, built_site, address, SCREENS[0])
    goal = phone_page.locator(".pw-hint", has_text="Meta para la cepa:")
    if address != "es/index":
        assert phone_page.evaluate("scrollY") == 0
        expect(goal).to_be_in_viewport(ratio=1)
    phone_page.locator(".pw-glass").scroll_into_view_if_needed()
    expect(goal).to_be_visible()


@pytest.mark.parametrize("screen", SCREENS, ids=lambda one: f"{one['width']}x{one['height']}")
def test_what_is_said_after_a_cut_moves_nothing(
    phone_page: Page, built_site: Path, screen: ViewportSize
) -> None:
    page = phone_page
    open_page(page, built_site, "es/index", screen)
    page.locator(".pw-nav select").select_option(index=1)
    choose(page)

    def stands() -> dict[str, Any]:
        """On the page: what is pressed here may have to be scrolled to."""
        box = page.locator(".pw-stage-near").bounding_box()
        assert box is not None
        return {**box, "y": box["y"] + page.evaluate("scrollY")}

    before = stands()
    for _ in range(2):
        page.locator(".pw-cuts-now .pw-button").first.click()
        settle(page)
        expect(page.locator(".pw-said")).to_contain_text("Meta:")
        assert stands() == before
        page.locator(".pw-undo").click()
        settle(page)
        page.locator(".pw-pieces .pw-button").last.click()
    assert stands() == before


def test_a_shortened_cane_says_how_many_buds_it_had(phone_page: Page, built_site: Path) -> None:
    page = phone_page
    open_page(page, built_site, "index", SCREENS[0])
    choose(page)
    page.locator(".pw-nav select").select_option(index=1)
    cane = page.locator(".pw-pieces [data-piece]").last.get_attribute("data-piece") or ""
    panel = pick(page, cane)
    had = (panel.locator(".pw-piece-state").inner_text()).split()[0]
    expect(panel.locator(".pw-piece-state")).to_have_text(f"{had} buds on it.")
    press(page, f"Leave 2\xa0buds {cane}")
    expect(panel.locator(".pw-piece-state")).to_have_text(f"2 buds, it had {had}.")


PRUNED = """() => {
  const root = document.querySelector(".pw-exercise");
  const key = `pencilwood:work:${root.dataset.pencilwoodExercise}`;
  const kept = JSON.parse(localStorage.getItem(key));
  const { plan } = JSON.parse(root.querySelector(".pw-words").textContent);
  const steps = plan.cuts.map(({ part, buds, pass }) => ({
    cuts: [{ part, buds, pass, tool: "shears", stub: "right" }], pass }));
  kept.work.history = { ...kept.work.history, steps, done: steps.length, pass: "fine" };
  localStorage.setItem(key, JSON.stringify(kept));
}"""
"""Prunes the vine as its best plan does."""


@pytest.mark.parametrize("address", ["es/index", "cases/tidy-vine"])
def test_a_passed_vine_leads_to_the_next_one(
    phone_page: Page, built_site: Path, address: str
) -> None:
    page = phone_page
    open_page(page, built_site, address, SCREENS[0])
    onward = page.locator(".pw-again a.pw-main")
    for _ in range(3):
        go_on(page)
    expect(page.locator(".pw-result")).to_be_visible()
    expect(onward).to_be_hidden()
    page.locator(".pw-again .pw-button").last.click()
    settle(page)
    page.evaluate(PRUNED)
    page.reload()
    go_on(page)
    expect(page.locator(".pw-passed")).to_be_visible()
    expect(page.locator(".pw-again .pw-main")).to_have_count(1)
    here = page.url
    onward.click()
    expect(page.locator(".pw-exercise.pw-live")).to_be_visible()
    assert page.url != here
