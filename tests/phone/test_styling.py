"""What the browser works out anew while a page starts, as its trace counts it, and at a tap.

Counts do not hang on how busy the machine is, as seconds do.
"""

from collections.abc import Callable, Iterator
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, expect

from browser import PHONE
from exercise_page import choose
from web_host import WebHost

pytestmark = [pytest.mark.browser, pytest.mark.slow]

CASES = ("cases/tidy-vine.html", "es/cases/climbing-spurs.html")
MOST_PASSES = 2
"""Over the whole drawing, until the page can be used; one is the least, when it is first shown."""
# The middle of a ring that nothing lies over: the buttons stay at the lower edge of a phone.
FREE_RING = """[...document.querySelectorAll(".pw-stage-near .pw-offered")].map((ring) => {
  const { left, top, width, height } = ring.getBoundingClientRect();
  return [left + width / 2, top + height / 2];
}).find(([x, y]) => document.elementFromPoint(x, y)?.closest(".pw-stage-near"))"""
# What the first frame after the finger shows: the wood that is cut and the words that say so, while
# the buttons still stand as they were. And what the finger met: no piece of the drawing was asked.
FIRST_FRAME = """new Promise((done) => addEventListener("pointerup", (event) => {
  requestAnimationFrame(() => done({
    cut: document.querySelectorAll(".pw-stage-near .pw-gone").length > 0,
    rings: document.querySelectorAll(".pw-stage-near .pw-offered").length,
    said: document.querySelector(".pw-said").textContent !== "",
    undo: document.querySelector(".pw-undo").getAttribute("aria-disabled"),
    met: event.target.closest("svg") === null,
  }));
}, { capture: true, once: true }))"""
CLICKS = """window.clicks = 0;
addEventListener("click", () => { window.clicks += 1; }, { capture: true });"""


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    context = browser.new_context(viewport=PHONE, has_touch=True, is_mobile=True)
    context.add_init_script(CLICKS)
    yield context.new_page()
    context.close()


def styled_anew(page: Page, work: Callable[[], None]) -> list[int]:
    """The number of elements whose style was worked out, pass by pass, while `work` was done."""
    browser = page.context.browser
    assert browser is not None
    devtools = browser.new_browser_cdp_session()
    events: list[dict[str, Any]] = []
    ended: list[bool] = []
    devtools.on("Tracing.dataCollected", lambda one: events.extend(one["value"]))
    devtools.on("Tracing.tracingComplete", lambda _: ended.append(True))
    categories = {"includedCategories": ["devtools.timeline"]}
    devtools.send("Tracing.start", {"traceConfig": categories, "transferMode": "ReportEvents"})
    # Until every process of the browser has begun to write down what it does.
    page.wait_for_timeout(300)
    work()
    devtools.send("Tracing.end")
    while not ended:
        page.wait_for_timeout(20)
    devtools.detach()
    passes = [one["args"] for one in events if one["name"] == "UpdateLayoutTree"]
    return [int(one["elementCount"]) for one in passes if "elementCount" in one]


@pytest.mark.parametrize("path", CASES)
def test_a_page_is_not_styled_again_and_again_as_it_starts(
    page: Page, host: WebHost, path: str
) -> None:
    def start() -> None:
        page.goto(host.url(path), wait_until="load")
        page.locator(".pw-exercise.pw-live").wait_for()
        page.wait_for_timeout(1000)

    passes = styled_anew(page, start)
    drawing = page.locator(".pw-stage-whole svg.pw-vine *").count()
    whole = [one for one in passes if one >= 0.9 * drawing]
    print(f"\n{path}: {len(passes)} passes, {sum(passes)} elements, the drawing has {drawing}")
    assert drawing > 1000
    assert 1 <= len(whole) <= MOST_PASSES, passes


def test_a_tap_that_cuts_draws_the_cut_first_and_makes_no_click_besides(
    page: Page, host: WebHost
) -> None:
    page.goto(host.url(CASES[0]))
    choose(page)
    page.locator(".pw-see-near:visible").click()
    page.locator(".pw-glass").evaluate("one => one.scrollIntoView({ block: 'start' })")
    page.wait_for_timeout(500)
    x, y = page.evaluate(FREE_RING)
    page.evaluate("window.clicks = 0")
    offered = page.locator(".pw-stage-near .pw-offered").count()
    waiting = page.evaluate_handle(f"({{ told: {FIRST_FRAME} }})")

    page.touchscreen.tap(x, y)
    first = waiting.evaluate("one => one.told")
    assert first.pop("rings") < offered
    assert first == {"cut": True, "said": True, "undo": "true", "met": True}
    expect(page.get_by_role("button", name="Undo", exact=True)).to_be_enabled()
    page.wait_for_timeout(300)
    assert page.locator(".pw-stage-near .pw-gone").count() > 0
    # A tap has done its work when the finger lifts; a click would take a phone as long again.
    assert page.evaluate("window.clicks") == 0
