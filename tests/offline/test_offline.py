"""Reading the handbook without a signal, in Chromium against a host that fails in every way."""

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from pencilwood.words import say
from web_host import WebHost

pytestmark = [pytest.mark.browser, pytest.mark.slow]

QUIZ = "quizzes/before-the-first-day.html"
READY = "navigator.serviceWorker.ready.then((one) => one.active.state)"
KEPT = """async (path) => {
  for (const name of await caches.keys()) {
    for (const one of await (await caches.open(name)).keys()) {
      if (one.url.includes(`${path}?v=`)) return true;
    }
  }
  return false;
}"""
# The worker in charge is of the newest build, and has finished taking over.
SETTLED = """navigator.serviceWorker.getRegistration().then(async (one) => {
  await one.update();
  const coming = one.installing ?? one.waiting;
  if (coming) await new Promise((done) => coming.addEventListener("statechange", () => {
    if (["activated", "redundant"].includes(coming.state)) done();
  }));
  return one.active.state;
})"""


def open_page(phone: BrowserContext, host: WebHost, path: str) -> Page:
    page = phone.new_page()
    page.goto(host.url(path))
    return page


def visit(page: Page, host: WebHost, path: str) -> None:
    """Open a page with a signal and wait until it is kept."""
    page.goto(host.url(path))
    page.evaluate(READY)
    page.wait_for_function(f"({KEPT})({path!r})")


def builds(page: Page) -> tuple[str | None, int | None]:
    """The build that the page is of, and the one that its script is of."""
    return page.locator("body").get_attribute("data-build"), page.evaluate("window.scriptBuild")


def keep_all(page: Page, host: WebHost, folder: str = "") -> None:
    page.goto(host.url(f"{folder}index.html"))
    page.locator(".pw-keep-all").click()
    said = page.locator(".pw-keep-said")
    expect(said).to_have_text(say("es" if folder else "en", "pages.keep.all"), timeout=30_000)


def answer_first_question(page: Page) -> None:
    page.locator(".pw-ask-way button").first.click()
    if page.locator(".pw-ask-choices").count():
        page.locator(".pw-ask-choices input").first.check()
    elif page.locator(".pw-ask-part").count():
        page.locator(".pw-ask-part select").select_option(index=1)
    page.locator(".pw-ask .pw-main:visible").first.click()
    expect(page.locator(".pw-ask-feedback p").first).to_be_visible()


@pytest.mark.parametrize("host", ["/", "/crew/larkfell/"], ids=["root", "folder"], indirect=True)
@pytest.mark.parametrize("language", ["en", "es"])
def test_an_opened_quiz_works_without_a_signal(
    phone: BrowserContext, host: WebHost, language: str
) -> None:
    folder = "es/" if language == "es" else ""
    page = phone.new_page()
    visit(page, host, f"{folder}index.html")
    visit(page, host, f"{folder}{QUIZ}")
    host.gone = True
    page.goto(host.url(f"{folder}{QUIZ}"))
    expect(page.locator(".pw-quiz.pw-live")).to_have_count(1)
    assert builds(page) == ("1", 1)
    answer_first_question(page)
    page.goto(host.url(f"{folder}cases/tidy-vine.html"))
    expect(page.locator("h1")).to_have_text(say(language, "pages.offline.title"))
    page.goto(host.url(folder))
    expect(page.locator("article h1")).to_be_visible()


def test_all_of_it_is_put_on_the_phone_and_goes_on_after_a_break(
    phone: BrowserContext, host: WebHost, first_build: Path
) -> None:
    page = phone.new_page()
    page.goto(host.url("index.html"))
    said = page.locator(".pw-keep-said")
    expect(said).to_contain_text(" MB ")
    host.failing = {QUIZ}
    page.locator(".pw-keep-all").click()
    expect(said).to_have_text(say("en", "pages.keep.broken"), timeout=30_000)
    expect(page.locator(".pw-keep-all")).to_be_visible()
    host.failing = set()
    before = host.asked.copy()
    # On the next visit it goes on by itself.
    page.goto(host.url("index.html"))
    expect(said).to_have_text(say("en", "pages.keep.all"), timeout=30_000)
    again = {name for name in host.asked - before if before[name]}
    assert again == set()
    host.gone = True
    for path in sorted(first_build.rglob("*.html")):
        name = path.relative_to(first_build).as_posix()
        page.goto(host.url(name))
        assert builds(page)[0] == "1", name
        assert page.url.endswith(name)


def test_it_can_be_taken_off_the_phone_again(phone: BrowserContext, host: WebHost) -> None:
    page = phone.new_page()
    keep_all(page, host)
    host.gone = True
    page.goto(host.url("es/"))
    expect(page.locator("html")).to_have_attribute("lang", "es")
    page.goto(host.url("index.html"))
    page.locator(".pw-keep-forget").click()
    expect(page.locator(".pw-keep-all")).to_be_visible()
    page.goto(host.url(QUIZ))
    expect(page.locator("h1")).to_have_text(say("en", "pages.offline.title"))


def test_loading_stops_when_it_is_taken_off_meanwhile(phone: BrowserContext, host: WebHost) -> None:
    page = phone.new_page()
    page.goto(host.url("index.html"))
    page.locator(".pw-keep-all").click()
    page.locator(".pw-keep-forget").click()
    expect(page.locator(".pw-keep-all")).to_be_visible()
    page.wait_for_timeout(1500)
    assert page.evaluate(f"({KEPT})({QUIZ!r})") is False
    page.reload()
    expect(page.locator(".pw-keep-all")).to_be_visible()
    expect(page.locator(".pw-keep-said")).to_contain_text(" MB ")


@pytest.mark.parametrize("folder", ["", "es/"])
def test_after_an_update_only_the_new_build_is_shown(
    phone: BrowserContext,
    host: WebHost,
    second_build: Path,
    folder: str,
) -> None:
    page = phone.new_page()
    keep_all(page, host, folder)
    host.site = second_build
    # The very next visit, with the old worker still in charge.
    page.goto(host.url(f"{folder}{QUIZ}"))
    assert builds(page) == ("2", 2)
    # And if the signal goes at once: what was seen is shown again.
    host.gone = True
    page.goto(host.url(f"{folder}{QUIZ}"))
    assert builds(page) == ("2", 2)
    host.gone = False
    assert page.evaluate(SETTLED) == "activated"
    host.gone = True
    for name in ("index.html", "vines.html", QUIZ):
        page.goto(host.url(f"{folder}{name}"))
        assert page.locator("body").get_attribute("data-build") == "2", name
        assert builds(page)[1] in (None, 2), name
    page.goto(host.url(f"{folder}cases/tidy-vine.html"))
    language = "es" if folder else "en"
    expect(page.locator("h1")).to_have_text(say(language, "pages.offline.title"))


def test_an_update_that_fails_mixes_nothing_and_is_tried_again(
    phone: BrowserContext,
    host: WebHost,
    first_build: Path,
    second_build: Path,
    version_of: Callable[[Path], str],
) -> None:
    page = phone.new_page()
    keep_all(page, host)
    host.site = second_build
    host.failing = {"rules.html"}
    page.goto(host.url("index.html"))
    page.evaluate(SETTLED)
    host.gone = True
    # The old build is whole; what was seen of the new one is new.
    page.goto(host.url(QUIZ))
    assert builds(page) == ("1", 1)
    page.goto(host.url("index.html"))
    assert page.locator("body").get_attribute("data-build") == "2"
    assert builds(page)[1] in (None, 2)
    host.gone, host.failing = False, set()
    page.goto(host.url("vines.html"))
    assert page.evaluate(SETTLED) == "activated"
    host.gone = True
    page.goto(host.url(QUIZ))
    assert builds(page) == ("2", 2)
    assert version_of(first_build) != version_of(second_build)


def test_half_an_upload_gives_no_old_script_to_a_new_page(
    phone: BrowserContext, host: WebHost, first_build: Path, second_build: Path, tmp_path: Path
) -> None:
    page = phone.new_page()
    visit(page, host, QUIZ)
    half = tmp_path / "half"
    half.mkdir()
    for name in ("assets", "offline-worker.js"):
        (half / name).symlink_to(first_build / name)
    (half / "quizzes").symlink_to(second_build / "quizzes")
    host.site = half
    page.goto(host.url(QUIZ))
    assert builds(page) == ("2", None)
    host.site = second_build
    page.goto(host.url(QUIZ))
    assert builds(page) == ("2", 2)


def test_an_old_page_that_stays_open_gets_nothing_of_the_new_build(
    phone: BrowserContext, host: WebHost, second_build: Path
) -> None:
    open_for_long = phone.new_page()
    visit(open_for_long, host, QUIZ)
    other = open_page(phone, host, "index.html")
    host.site = second_build
    assert other.evaluate(SETTLED) == "activated"
    told = open_for_long.evaluate(
        """async () => {
          const src = document.querySelector("script[src*='pencilwood-quiz.js']").src;
          const text = await fetch(src).then((one) => one.text(), () => "none");
          return text.includes("scriptBuild=2");
        }"""
    )
    assert told is False


@pytest.mark.parametrize(
    ("folder", "name"),
    [("", "Larkfell pruning handbook"), ("es/", "Manual de poda de Larkfell")],
    ids=["en", "es"],
)
def test_the_browser_finds_nothing_that_keeps_it_from_being_installed(
    phone: BrowserContext, host: WebHost, folder: str, name: str
) -> None:
    page = phone.new_page()
    visit(page, host, f"{folder}index.html")
    devtools = phone.new_cdp_session(page)
    manifest = devtools.send("Page.getAppManifest")
    assert manifest["errors"] == []
    assert manifest["manifest"]["name"] == name
    assert manifest["manifest"]["startUrl"] == host.url(f"{folder}index.html")
    assert manifest["manifest"]["scope"] == host.url("")
    found = [
        one["errorId"]
        for one in devtools.send("Page.getInstallabilityErrors")["installabilityErrors"]
    ]
    # Playwright's pages are private windows, which Chromium never installs from.
    assert set(found) <= {"in-incognito"}
