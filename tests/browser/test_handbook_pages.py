"""The built demo handbook in Chromium, from the disk and from a server."""

import functools
import http.server
import io
import threading
from collections.abc import Iterator
from pathlib import Path

import pytest
from PIL import Image, ImageStat
from playwright.sync_api import Page, expect

from browser import unmet_by

pytestmark = [pytest.mark.browser, pytest.mark.slow]

PAGES = (
    "index",
    "workers",
    "teachers",
    "vines",
    "cases/tidy-vine",
    "rules",
    "rules/crowded-spurs",
    "scores",
    "safety",
    "quizzes",
    "quizzes/before-the-first-day",
    "practice",
    "crew",
)
BOTH = tuple(f"{folder}{name}" for folder in ("", "es/") for name in PAGES)
# Until the page has nothing left to do: its scripts have run and said what they had to say.
IDLE = "() => new Promise((done) => requestIdleCallback(() => setTimeout(done, 100)))"


class Quiet(http.server.SimpleHTTPRequestHandler):
    """A server that does not tell the terminal what it serves."""

    def log_message(self, format: str, *args: object) -> None:  # noqa: A002
        pass


@pytest.fixture(scope="module")
def address(built_site: Path) -> Iterator[str]:
    """The site on a server of this machine."""
    handler = functools.partial(Quiet, directory=str(built_site))
    with http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        yield f"http://127.0.0.1:{server.server_port}"
        server.shutdown()


@pytest.fixture
def complaints(phone_page: Page) -> list[str]:
    """What the console says of the page that is open."""
    said: list[str] = []
    phone_page.on(
        "console", lambda one: said.append(one.text) if one.type in ("error", "warning") else None
    )
    return said


@pytest.mark.parametrize("name", BOTH)
def test_console_stays_clean_from_the_disk(
    phone_page: Page, built_site: Path, complaints: list[str], name: str
) -> None:
    phone_page.goto((built_site / f"{name}.html").as_uri())
    expect(phone_page.locator("article h1")).to_be_visible()
    phone_page.evaluate(IDLE)
    assert complaints == []


@pytest.mark.parametrize("name", ["index", "es/cases/tidy-vine"])
def test_console_stays_clean_from_a_server(
    phone_page: Page, address: str, complaints: list[str], name: str
) -> None:
    phone_page.goto(f"{address}/{name}.html")
    expect(phone_page.locator("article h1")).to_be_visible()
    phone_page.evaluate(IDLE)
    assert complaints == []


@pytest.mark.parametrize("width", [320, 390])
@pytest.mark.parametrize("name", PAGES)
def test_nothing_runs_off_a_narrow_screen(
    phone_page: Page, built_site: Path, name: str, width: int
) -> None:
    phone_page.set_viewport_size({"width": width, "height": 800})
    phone_page.goto((built_site / "es" / f"{name}.html").as_uri())
    assert phone_page.evaluate("document.scrollingElement.scrollWidth") <= width


@pytest.mark.parametrize("name", BOTH)
def test_our_part_of_a_page_meets_wcag(
    phone_page: Page, built_site: Path, project: Path, npm: str, name: str
) -> None:
    phone_page.goto((built_site / f"{name}.html").as_uri())
    for fold in phone_page.locator("article details").all():
        fold.evaluate("one => { one.open = true; }")
    assert unmet_by(phone_page, project, "article") == []


@pytest.mark.parametrize("server", [False, True])
@pytest.mark.parametrize(
    ("start", "ready", "words", "found", "ends"),
    [
        ("index", "Type to", "crowded", "Spurs crowded", "/rules/crowded-spurs.html"),
        ("es/cases/tidy-vine", "Teclee", "apretados", "Pulgares apretados", "/es/rules/"),
        ("index", "Type to", "tripod", "Ladders", "/ladders.html"),
        ("es/index", "Teclee", "trípode", "Escaleras", "/es/ladders.html"),
    ],
)
def test_search_finds_rules_and_chapters_in_its_own_language(
    desktop_page: Page,
    built_site: Path,
    address: str,
    server: bool,
    start: str,
    ready: str,
    words: str,
    found: str,
    ends: str,
) -> None:
    base = address if server else built_site.as_uri()
    desktop_page.goto(f"{base}/{start}.html")
    box = desktop_page.locator(".md-search__input")
    box.click()
    expect(desktop_page.locator(".md-search-result__meta")).to_contain_text(ready)
    # As fast as a quick typist: the search asks again at each letter, once it is ready.
    box.press_sequentially(words, delay=60)
    results = desktop_page.locator(".md-search-result__list")
    expect(results).to_contain_text(found)
    leads = results.locator("a").evaluate_all("all => all.map((one) => one.href)")
    assert all(("/es/" in lead) == start.startswith("es/") for lead in leads), leads
    title = desktop_page.locator("h1", has_text=found)
    results.locator("a").filter(has=title).first.click()
    expect(desktop_page.locator("article h1")).to_have_text(found)
    assert ends in desktop_page.url


def test_language_switch_leads_to_the_same_page(phone_page: Page, built_site: Path) -> None:
    phone_page.goto((built_site / "rules" / "old-stub.html").as_uri())
    phone_page.get_by_role("link", name="Español").click()
    assert phone_page.url.endswith("/es/rules/old-stub.html")
    assert phone_page.locator("html").get_attribute("lang") == "es"


def test_stages_of_the_answer_can_be_looked_at(phone_page: Page, built_site: Path) -> None:
    phone_page.goto((built_site / "cases" / "tidy-vine.html").as_uri())
    phone_page.get_by_text("The trainer's answer, cut by cut").click()
    stages = phone_page.locator("[data-pencilwood-stages]")
    drawing = stages.locator("svg.pw-vine")
    expect(drawing).to_have_class("pw-vine pw-show-fine")
    stages.get_by_label("Before").check()
    expect(drawing).to_have_class("pw-vine pw-show-before")
    assert drawing.evaluate("svg => svg.querySelectorAll('.pw-gone, .pw-cutpoint').length") == 0


def test_no_id_stands_twice_once_the_scripts_have_run(phone_page: Page, built_site: Path) -> None:
    phone_page.goto((built_site / "quizzes" / "before-the-first-day.html").as_uri())
    expect(phone_page.locator(".pw-quiz.pw-live")).to_have_count(1)
    twice = phone_page.evaluate(
        "(() => { const ids = [...document.querySelectorAll('[id]')].map((one) => one.id);"
        " return ids.filter((id, at) => ids.indexOf(id) !== at); })()"
    )
    assert twice == []


def test_vine_can_be_read_without_scripts(built_site: Path, page: Page) -> None:
    context = page.context.browser
    assert context is not None
    plain = context.new_context(java_script_enabled=False).new_page()
    plain.goto((built_site / "cases" / "tidy-vine.html").as_uri())
    expect(plain.locator("svg.pw-vine")).to_have_count(1)
    expect(plain.get_by_text("This exercise needs JavaScript. What follows")).to_be_visible()
    plain.context.close()


def darkness(picture: bytes, left: int, right: int) -> float:
    """How dark a strip of a picture is on the whole, from 0 to 255."""
    strip = Image.open(io.BytesIO(picture)).convert("L")
    return 255 - ImageStat.Stat(strip.crop((left, 0, right, strip.height))).mean[0]


def test_what_is_cut_at_the_edge_shows_that_it_goes_on(phone_page: Page, built_site: Path) -> None:
    phone_page.goto((built_site / "measuring-a-vine.html").as_uri())
    code = phone_page.locator("pre > code").first
    at_first = code.screenshot()
    code.evaluate("(one) => one.scrollTo(one.scrollWidth, 0)")
    at_last = code.screenshot()
    wide = Image.open(io.BytesIO(at_first)).width
    assert darkness(at_last, 0, 3) > 2 * darkness(at_last, wide - 3, wide)
    assert darkness(at_first, wide - 3, wide) > 2 * darkness(at_first, 0, 3)
