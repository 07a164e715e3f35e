"""Pages on paper: words that can be read, nothing to press, nothing that leads elsewhere."""

import re
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

pytestmark = [pytest.mark.browser, pytest.mark.slow]

SHEET_PX = 680
"""What is left of A4 between our margins, in pixels of a style sheet."""
SMALLEST_PT = 7.95
"""Eight points, less what a browser rounds away."""
PAGES = [
    "index",
    "cases/a-cane-across-the-head",
    "rules",
    "which-cane-stays",
    "head-trained-vine",
    "quizzes",
    "quizzes/first-week",
    "practice",
    "winters/four-spurs",
    "blocks/mill-terrace",
    "safety",
    "scores",
    "sources",
    "words",
    "crew",
    "teachers",
]
SMALL = """smallest => {
  const found = [], texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (texts.nextNode()) {
    const { data, parentElement: holder } = texts.currentNode;
    if (!data.trim() || !holder.checkVisibility({ visibilityProperty: true })) continue;
    const range = document.createRange();
    range.selectNodeContents(texts.currentNode);
    const { width, height } = range.getBoundingClientRect();
    // What only a listener is told stands in a box of one pixel.
    if (width < 2 || height < 2) continue;
    let px = parseFloat(getComputedStyle(holder).fontSize);
    const scale = holder.getScreenCTM?.();
    if (scale) px *= Math.hypot(scale.c, scale.d);
    if (px * 0.75 < smallest) found.push(`${data.trim()}: ${px * 0.75}`);
  }
  return found;
}"""
SEEN = """what => [...document.querySelectorAll(what)]
  .filter((one) => one.checkVisibility({ visibilityProperty: true })).map((one) => one.outerHTML)"""


# Ties between vines of practice are broken by chance; the same one is drawn in each run.
NO_CHANCE = "Math.random = () => 0.5"
READY = """() => {
  const exercises = [...document.querySelectorAll("[data-pencilwood-exercise]")];
  // The vine of practice is fetched first.
  const vines = document.querySelectorAll("[data-pencilwood-practice] .pw-stage-whole svg");
  return exercises.every((one) => one.matches(".pw-live"))
    && vines.length >= document.querySelectorAll("[data-pencilwood-practice]").length;
}"""


@pytest.fixture
def sheet(desktop_page: Page) -> Page:
    desktop_page.add_init_script(NO_CHANCE)
    desktop_page.set_viewport_size({"width": SHEET_PX, "height": 1000})
    desktop_page.emulate_media(media="print")
    return desktop_page


@pytest.mark.parametrize("address", [*PAGES, *(f"es/{one}" for one in PAGES)])
def test_words_can_be_read_and_nothing_asks_to_be_pressed(
    sheet: Page, built_site: Path, address: str
) -> None:
    sheet.goto((built_site / f"{address}.html").as_uri())
    sheet.wait_for_function(READY)
    sheet.evaluate("document.fonts.ready")
    assert sheet.evaluate(SMALL, SMALLEST_PT) == []
    assert sheet.evaluate(SEEN, "button, input, select, textarea, .pw-kicker > a") == []
    assert sheet.evaluate("document.documentElement.scrollWidth") <= SHEET_PX


def test_a_case_tells_what_is_dangerous_before_it_tells_the_answer(
    sheet: Page, built_site: Path
) -> None:
    sheet.goto((built_site / "cases" / "tidy-vine.html").as_uri())
    heads = sheet.locator("h2[id]").evaluate_all("all => all.map(one => one.id)")
    assert heads.index("safety") < heads.index("after")


def test_losses_of_three_winters_are_not_laid_over_what_follows(
    sheet: Page, built_site: Path
) -> None:
    sheet.goto((built_site / "winters" / "four-spurs.html").as_uri())
    years = sheet.locator(".pw-winters-pair > .pw-winters-year")
    ways = years.evaluate_all("all => all.map(one => getComputedStyle(one).display)")
    assert set(ways) == {"block"}, "rows of a grid within a grid run on over the edge of a sheet"


def test_what_has_no_letter_is_told_no_larger_than_the_text(sheet: Page, built_site: Path) -> None:
    sheet.goto((built_site / "cases" / "big-wounds.html").as_uri())
    told = sheet.locator(".pw-on-paper")
    expect(told).to_be_visible()
    size = "one => getComputedStyle(one).fontSize"
    assert told.evaluate(size) == sheet.locator(".pw-story").evaluate(size)


def test_the_page_for_no_signal_leads_nowhere_on_paper(sheet: Page, built_site: Path) -> None:
    sheet.goto((built_site / "offline.html").as_uri())
    expect(sheet.locator("main > p").first).to_be_visible()
    assert sheet.evaluate(SEEN, "main a") == []


def test_the_list_of_quizzes_says_on_paper_that_it_holds_no_questions(
    sheet: Page, built_site: Path
) -> None:
    sheet.goto((built_site / "quizzes.html").as_uri())
    expect(sheet.locator("p.pw-on-paper")).to_be_visible()
    sheet.emulate_media(media="screen")
    expect(sheet.locator("p.pw-on-paper")).to_be_hidden()


@pytest.mark.parametrize(
    ("address", "most"), [("quizzes/first-week", 1), ("teachers", 4), ("vines", 3), ("words", 4)]
)
def test_lists_take_few_sheets(sheet: Page, built_site: Path, address: str, most: int) -> None:
    sheet.goto((built_site / f"{address}.html").as_uri())
    printed = sheet.pdf(format="A4", prefer_css_page_size=True)
    assert 1 <= len(re.findall(rb"/Type\s*/Page\b", printed)) <= most
