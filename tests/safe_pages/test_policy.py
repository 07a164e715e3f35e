"""No page of the demo handbook loads or runs anything but its own files, as Chromium sees it."""

import re
from collections.abc import Iterator
from html.parser import HTMLParser
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect

from exercise_page import choose
from pencilwood.pages.policy import HEADERS, OWN_TEXT, with_policy
from web_host import WebHost, web_host

# What a page has broken of its policy, in the browser's own words, and when it is done.
WATCH = """
window.broken = [];
document.addEventListener("securitypolicyviolation", (one) => {
  window.broken.push(`${one.violatedDirective}: ${one.blockedURI} ${one.sample}`);
});
"""

# Whatever a learner can press, pressed at random, the same each time; how many different ones.
PRESS = """async ({seed, times}) => {
  const pressed = new Set();
  for (let turn = 0; turn < times; turn += 1) {
    const inner = "button:not(:disabled), input:not(:disabled), [data-part]";
    const there = [...document.querySelectorAll("[data-pw-used]")]
      .flatMap((part) => [...part.querySelectorAll(inner)])
      .filter((one) => one.getClientRects().length > 0);
    seed = (seed * 48271) % 2147483647;
    const one = there[seed % there.length];
    pressed.add(one.outerHTML);
    one.dispatchEvent(new MouseEvent("click", { bubbles: true, cancelable: true }));
    if (one.matches("input[type=radio], input[type=checkbox]")) one.click();
    await new Promise((done) => requestAnimationFrame(done));
  }
  return pressed.size;
}"""


class Head(HTMLParser):
    """The policy of a page, and what stood before it."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.policy = ""
        self.before: list[str] = []
        self.handlers: list[str] = []
        self.feed(html)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = dict(attrs)
        if given.get("http-equiv") == "Content-Security-Policy":
            self.policy = given["content"] or ""
        elif not self.policy:
            self.before.append(tag)
        self.handlers.extend(name for name in given if name.startswith("on") or name == "style")


def pages_of(site: Path) -> list[str]:
    return sorted(path.relative_to(site).as_posix() for path in site.rglob("*.html"))


@pytest.mark.slow
def test_every_page_has_a_strict_policy_before_anything_else(built_site: Path) -> None:
    for name in pages_of(built_site):
        head = Head((built_site / name).read_text("utf-8"))
        # https://www.w3.org/TR/CSP3/#meta-element: it holds only for what comes after it.
        assert head.before == ["html", "head", "meta"], name
        directives = dict(one.split(" ", 1) for one in head.policy.split("; "))
        assert "unsafe" not in head.policy, name
        assert "*" not in head.policy, name
        assert "http" not in head.policy, name
        # The page for a room opens the vine's own page, for its drawing.
        room = name.removeprefix("es/").startswith("project/")
        assert directives["frame-src"] == ("'self'" if room else "'none'"), name
        for nothing in ("default-src", "object-src", "base-uri", "form-action"):
            assert directives[nothing] == "'none'", (name, nothing)
        assert directives["style-src"] == "'self'", name
        assert re.fullmatch(r"'self'( 'sha256-[\w+/]{43}=')*", directives["script-src"]), name
        assert head.handlers == [], name


def test_scripts_in_a_trainers_own_text_are_never_allowed() -> None:
    begin, end = OWN_TEXT
    page = (
        '<html><head><meta charset="utf-8"><script>theme()</script></head>'
        f"<body>{begin}<script>bad()</script>{end}<script>inside()</script>{end}"
        "<script>late()</script></body></html>"
    )
    allowed = re.findall(r"'sha256-[^']+'", Head(with_policy(page)).policy)
    alone = [
        re.findall(r"'sha256-[^']+'", Head(with_policy(f'<meta charset="utf-8">{one}')).policy)
        for one in ("<script>theme()</script>", "<script>late()</script>")
    ]
    assert allowed == [*alone[0], *alone[1]]
    assert OWN_TEXT[0] not in with_policy(page)


def test_headers_for_a_web_host_are_written_down(project: Path) -> None:
    told = (project / "DEVELOPERS.md").read_text("utf-8")
    for line in HEADERS:
        assert line in told


@pytest.fixture(scope="module")
def host(built_site: Path) -> Iterator[WebHost]:
    with web_host(built_site) as one:
        yield one


@pytest.fixture
def watched(browser: Browser) -> Iterator[tuple[BrowserContext, Page, list[str]]]:
    """One context for all pages, and everything that went wrong in it."""
    context = browser.new_context()
    context.add_init_script(WATCH)
    troubles: list[str] = []
    page = context.new_page()
    page.on("pageerror", lambda error: troubles.append(f"{page.url}: {error}"))
    page.on(
        "console",
        lambda one: (
            troubles.append(f"{page.url}: {one.text}") if one.type in ("error", "warning") else None
        ),
    )
    yield context, page, troubles
    context.close()


@pytest.mark.browser
@pytest.mark.slow
@pytest.mark.parametrize("from_disk", [True, False], ids=["disk", "server"])
def test_no_page_breaks_its_policy_or_asks_a_foreign_address(
    watched: tuple[BrowserContext, Page, list[str]],
    host: WebHost,
    built_site: Path,
    from_disk: bool,
) -> None:
    context, page, troubles = watched
    base = f"{built_site.as_uri()}/" if from_disk else host.url("")
    asked: set[str] = set()
    context.on("request", lambda request: asked.add(request.url))
    # All pages from the disk; the same pages come from a server, so every fourth will do.
    names = pages_of(built_site)[:: 1 if from_disk else 4]
    for name in names:
        page.goto(f"{base}{name}")
        broken = page.evaluate("window.broken")
        assert broken == [], (name, broken)
    assert troubles == []
    foreign = {one for one in asked if not one.startswith((base, "data:", "blob:"))}
    assert foreign == set()
    assert len(asked) > len(names)


@pytest.mark.browser
@pytest.mark.slow
@pytest.mark.parametrize("folder", ["", "es/"], ids=["en", "es"])
@pytest.mark.parametrize(
    "name",
    [
        pytest.param("cases/two-new-canes", id="canes are chosen, cut and tied"),
        pytest.param("cases/around-the-head", id="spurs around a head"),
        pytest.param("cases/hanging-spurs", id="shoots hang from one high wire"),
        pytest.param("quizzes/cane-pruned", id="what a cane stays as is asked"),
        pytest.param("quizzes/head-trained", id="a quiz with a vine around a head"),
        pytest.param("winters/four-spurs", id="three winters are chosen"),
        pytest.param("new-arm/a-worn-out-arm", id="an arm is made new"),
    ],
)
def test_whatever_is_pressed_the_policy_holds(
    watched: tuple[BrowserContext, Page, list[str]], built_site: Path, name: str, folder: str
) -> None:
    context, page, troubles = watched
    asked: set[str] = set()
    context.on("request", lambda request: asked.add(request.url))
    page.goto(f"{built_site.as_uri()}/{folder}{name}.html")
    used = page.locator(".pw-exercise, .pw-quiz")
    used.first.evaluate("(one) => { one.dataset.pwUsed = ''; }")
    before = used.first.inner_html()
    assert page.evaluate(PRESS, {"seed": len(name), "times": 60}) > 10
    assert used.first.inner_html() != before
    assert page.evaluate("window.broken") == []
    assert troubles == []
    foreign = {one for one in asked if not one.startswith((built_site.as_uri(), "data:", "blob:"))}
    assert foreign == set()


@pytest.mark.browser
@pytest.mark.slow
@pytest.mark.parametrize("from_disk", [True, False], ids=["disk", "server"])
@pytest.mark.parametrize(
    ("folder", "words", "found"),
    [("", "tripod", "Ladders"), ("es/", "apretados", "Pulgares")],
    ids=["en", "es"],
)
def test_search_and_exercise_work_under_the_policy(
    watched: tuple[BrowserContext, Page, list[str]],
    host: WebHost,
    built_site: Path,
    from_disk: bool,
    folder: str,
    words: str,
    found: str,
) -> None:
    _, page, troubles = watched
    base = f"{built_site.as_uri()}/" if from_disk else host.url("")
    page.goto(f"{base}{folder}cases/tidy-vine.html")
    choose(page)
    page.locator(".pw-exercise button.pw-main:visible").first.click()
    box = page.locator(".md-search__input")
    box.click()
    box.press_sequentially(words, delay=40)
    expect(page.locator(".md-search-result__list")).to_contain_text(found)
    page.keyboard.press("Escape")
    before = page.locator("body").get_attribute("data-md-color-scheme")
    page.locator("label[for^=__palette]:visible").first.click()
    expect(page.locator("body")).not_to_have_attribute("data-md-color-scheme", str(before))
    assert page.evaluate("window.broken") == []
    assert troubles == []


@pytest.mark.browser
@pytest.mark.slow
def test_the_browser_itself_stops_what_gets_past_us(
    browser: Browser, built_site: Path, tmp_path: Path
) -> None:
    html = (built_site / "safety.html").read_text("utf-8")
    bad = (
        "<script>window.ran = 1</script><img src=x onerror='window.ran = 2'>"
        "<img src='http://127.0.0.1:9/spy.png'>"
        "<iframe srcdoc='<script>parent.ran=3</script>'></iframe>"
        "<a id=bad href='javascript:window.ran=4'>x</a><base href='http://127.0.0.1:9/'>"
        "<form id=bad-form action='http://127.0.0.1:9/'></form>"
        "<object data='index.html'></object>"
    )
    page = browser.new_page()
    spoilt = tmp_path / "spoilt.html"
    spoilt.write_text(html.replace("</h1>", f"</h1>{bad}", 1), "utf-8")
    page.add_init_script(WATCH)
    page.goto(spoilt.as_uri())
    page.evaluate("document.querySelector('#bad').click()")
    page.evaluate("document.querySelector('#bad-form').submit()")
    page.wait_for_timeout(200)
    broken = {one.split(":")[0] for one in page.evaluate("window.broken")}
    assert page.evaluate("window.ran") is None
    wanted = {"script-src-elem", "script-src-attr", "img-src", "base-uri", "form-action"}
    assert wanted <= broken, broken
    assert "object-src" in broken, broken
    page.close()
