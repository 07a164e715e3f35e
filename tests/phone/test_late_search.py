"""The search comes when somebody turns to it: by http, from a disk and without a signal."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Locator, Page, expect

from browser import PHONE
from web_host import WebHost, web_host

pytestmark = [pytest.mark.browser, pytest.mark.slow]

IN_EACH = [
    ("cases/tidy-vine.html", "crowded", "Spurs crowded"),
    ("es/cases/climbing-spurs.html", "apretados", "Pulgares apretados"),
]
KEPT = """async (parts) => {
  const names = [];
  for (const name of await caches.keys())
    for (const one of await (await caches.open(name)).keys()) names.push(one.url.split("?")[0]);
  return parts.every((part) => names.some((one) => one.includes(part)));
}"""


# In place of the shared one: a test takes it away.
@pytest.fixture
def host(built_site: Path) -> Iterator[WebHost]:
    with web_host(built_site) as one:
        yield one


@pytest.fixture
def phone(browser: Browser) -> Iterator[BrowserContext]:
    context = browser.new_context(viewport=PHONE, has_touch=True, is_mobile=True)
    yield context
    context.close()


def search(page: Page, words: str, found: str) -> None:
    page.locator("header .pw-masthead-search").tap()
    field = page.locator(".md-search__input")
    expect(field).to_be_focused()
    field.press_sequentially(words, delay=40)
    expect(page.locator(".md-search-result__list")).to_contain_text(found, timeout=15_000)


def wait_until_kept(page: Page, parts: list[str]) -> None:
    for _ in range(120):
        if page.evaluate(KEPT, parts):
            return
        page.wait_for_timeout(250)
    pytest.fail(f"not kept within 30 s: {parts}")


def of_the_search(asked: list[str]) -> list[str]:
    parts = ("/search_index.js", "/javascripts/", "/iframe-worker.js")
    return [one for one in asked if any(part in one for part in parts)]


@pytest.mark.parametrize("from_disk", [False, True], ids=["server", "disk"])
@pytest.mark.parametrize(("path", "words", "found"), IN_EACH, ids=["en", "es"])
def test_it_is_not_loaded_before_it_is_used(
    phone: BrowserContext,
    host: WebHost,
    built_site: Path,
    from_disk: bool,
    path: str,
    words: str,
    found: str,
) -> None:
    page = phone.new_page()
    asked: list[str] = []
    page.on("request", lambda one: asked.append(one.url))
    page.goto(f"{built_site.as_uri()}/{path}" if from_disk else host.url(path), wait_until="load")
    page.locator(".pw-exercise.pw-live").wait_for()
    assert len(asked) > 4
    assert of_the_search(asked) == []
    search(page, words, found)
    folder = "es/search/" if path.startswith("es/") else "/search/"
    index = f"{folder}search_index.js" + ("" if from_disk else "on")
    assert sum(one.endswith(index) for one in asked) == 1
    # What it found is marked on its page, as before.
    page.locator(".md-search-result__link").first.tap()
    expect(page.locator("article mark").first).to_be_visible()


def test_the_keyboard_opens_it_too(phone: BrowserContext, host: WebHost) -> None:
    page = phone.new_page()
    page.goto(host.url(IN_EACH[0][0]))
    page.keyboard.press("/")
    expect(page.locator(".md-search__input")).to_be_focused()
    page.keyboard.type("crowded", delay=40)
    expect(page.locator(".md-search-result__list")).to_contain_text("Spurs crowded")
    assert page.locator(".md-search__input").input_value() == "crowded"


def test_words_that_are_pasted_or_spoken_are_searched_for(
    phone: BrowserContext, host: WebHost
) -> None:
    """Such words come without a key that is pressed or let go."""
    page = phone.new_page()
    page.goto(host.url(IN_EACH[0][0]))
    page.locator("header .pw-masthead-search").tap()
    expect(page.locator(".md-search__input")).to_be_focused()
    page.keyboard.insert_text("crowded")
    expect(page.locator(".md-search-result__list")).to_contain_text("Spurs crowded")


@pytest.mark.parametrize(("path", "words", "found"), IN_EACH, ids=["en", "es"])
def test_it_works_without_a_signal_though_nobody_has_used_it(
    phone: BrowserContext, host: WebHost, path: str, words: str, found: str
) -> None:
    page = phone.new_page()
    page.goto(host.url(path))
    folder = "es/" if path.startswith("es/") else ""
    # The phone fetches it for later, when it has nothing else to do.
    parts = [host.url(f"{folder}search/search_index.json"), host.url(path), "/workers/search."]
    parts += ["/lunr.stemmer.support.", "/lunr.es."] if folder else []
    wait_until_kept(page, parts)
    host.gone = True
    page.goto(host.url(path))
    search(page, words, found)


def test_a_device_that_likes_it_dark_gets_dark_pages_and_a_choice_is_kept(
    browser: Browser, host: WebHost
) -> None:
    context = browser.new_context(viewport=PHONE, has_touch=True, color_scheme="dark")
    page = context.new_page()
    asked: list[str] = []
    page.on("request", lambda one: asked.append(one.url))
    # Set before anything can be painted, not by a script that comes later.
    page.route("**/*.js*", lambda route: route.abort())
    page.goto(host.url(IN_EACH[0][0]))
    body = page.locator("body")
    expect(body).to_have_attribute("data-md-color-scheme", "slate")
    page.unroute("**/*.js*")
    page.reload()
    expect(body).to_have_attribute("data-md-color-scheme", "slate")
    page.locator("label[for^=__palette]:visible").tap()
    expect(body).to_have_attribute("data-md-color-scheme", "default")
    button = page.locator("label[for^=__palette]:visible")
    assert middle(button) == pytest.approx(middle(button.locator("svg")), abs=1)
    page.goto(host.url(IN_EACH[1][0]))
    expect(body).to_have_attribute("data-md-color-scheme", "default")
    page.locator("label[for^=__palette]:visible").tap()
    expect(body).to_have_attribute("data-md-color-scheme", "slate")
    # The theme's script, once it runs, finds what it expects and changes nothing.
    search(page, IN_EACH[1][1], IN_EACH[1][2])
    expect(body).to_have_attribute("data-md-color-scheme", "slate")
    assert len(asked) > 8
    context.close()


def middle(of: Locator) -> tuple[float, float]:
    box = of.bounding_box()
    assert box is not None
    return box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
