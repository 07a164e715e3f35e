"""Hostile text in every text of every file stays text: on pages, in scripts and in drawings."""

import json
from collections.abc import Iterator
from html.parser import HTMLParser
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from pencilwood.cases.schema import schemas
from pencilwood.proof.winters import WINTERS
from planting import HOSTILE, MARK, schema_of

pytestmark = pytest.mark.slow

# A vine of each form.
ROOMS = {"tidy-vine", "two-new-canes", "around-the-head", "hanging-spurs"}
# Attributes that hold words for people, or data that a script reads as text.
WORDS = {"title", "alt", "content", "aria-label", "aria-description", "value", "placeholder"}


def spoken(schema: Any, keys: tuple[str, ...] = ()) -> Iterator[tuple[str, ...]]:
    """Every place of a schema where words in a language stand."""
    if schema.get("type") == "string" and not {"pattern", "enum"} & schema.keys():
        yield keys
    for name, inner in schema.get("properties", {}).items():
        yield from spoken(inner, (*keys, name))
    for kind, name in (("additionalProperties", "*"), ("items", "[]")):
        if isinstance(schema.get(kind), dict):
            yield from spoken(schema[kind], (*keys, name))
    for way in ("anyOf", "oneOf"):
        for inner in schema.get(way, ()):
            yield from spoken(inner, keys)


def fits(keys: tuple[str, ...], place: tuple[str, ...]) -> bool:
    pairs = zip(keys, place, strict=True) if len(keys) == len(place) else [("a", "b")]
    return all(wanted in ("*", key) for key, wanted in pairs)


# Numbers, a unit that is the same in each language, and what only an answer far from the plan
# may give.
NOT_PLANTED = {
    ("blocks", "[]", "figures", "*"),
    ("*", "unit"),
    ("far from plan", "why", "*"),
}


def test_every_text_field_of_every_kind_of_file_is_planted(planted: Any) -> None:
    for name, schema in schemas().items():
        there = {
            value.keys
            for file, one in planted.files.items()
            if schema_of(file)["title"] == schema["title"]
            for value in one.values
            if value.planted < len(HOSTILE)
        }
        missing = [
            place
            for place in sorted(set(spoken(schema)) - NOT_PLANTED)
            if not any(fits(keys, place) for keys in there)
        ]
        assert missing == [], name


class Strange(HTMLParser):
    """What of a page's elements and attributes hostile text has become."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.found: list[str] = []
        self.data_block = False
        self.shown = 0
        self.feed(html)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = dict(attrs)
        self.data_block = given.get("type") == "application/json"
        self.script = tag == "script" and not self.data_block
        for name, value in given.items():
            hostile = MARK in name or (MARK in (value or "") and not self._is_words(name))
            if name.startswith("on") or hostile:
                self.found.append(f"<{tag} {name}={value!r}>")

    @staticmethod
    def _is_words(name: str) -> bool:
        return name in WORDS or name.startswith("data-")

    def handle_data(self, data: str) -> None:
        if MARK not in data:
            return
        self.shown += 1
        if self.data_block:
            json.loads(data)
        elif self.script:
            self.found.append(data)

    def handle_comment(self, data: str) -> None:
        if MARK in data:
            self.found.append(f"<!--{data}-->")


def test_no_element_and_no_attribute_is_made_of_it(hostile_site: Path) -> None:
    shown = 0
    for path in sorted(hostile_site.rglob("*.html")):
        page = Strange(path.read_text("utf-8"))
        assert page.found == [], path.relative_to(hostile_site)
        shown += page.shown
    assert shown > 500


@pytest.mark.parametrize(
    "page",
    [
        pytest.param("cases/two-new-canes", id="words beside canes that are tied"),
        pytest.param("new-arm/a-worn-out-arm", id="an arm made new has the title of its vine"),
        pytest.param("winters/four-spurs", id="so have three winters"),
        pytest.param("quizzes/cane-pruned", id="questions about canes"),
        pytest.param("quizzes/head-trained", id="questions about spurs around a head"),
        pytest.param("quizzes/high-cordons", id="questions about hanging spurs"),
    ],
)
@pytest.mark.parametrize("folder", ["", "es/"])
def test_each_kind_of_page_was_given_some(hostile_site: Path, folder: str, page: str) -> None:
    shown = Strange((hostile_site / f"{folder}{page}.html").read_text("utf-8"))
    assert shown.shown > 0
    assert shown.found == []


def test_drawings_and_scripts_hold_it_as_text(hostile_site: Path) -> None:
    for path in sorted(hostile_site.rglob("*.svg")):
        assert Strange(path.read_text("utf-8")).found == [], path
    for path in sorted(hostile_site.rglob("*manifest.webmanifest")):
        assert MARK in json.loads(path.read_text("utf-8"))["name"]
    index = (hostile_site / "search" / "search_index.js").read_text("utf-8")
    json.loads(index.removeprefix("var __index = "))


def worth_opening(site: Path) -> list[Path]:
    """All pages but chapters after the first, and rooms after the first vine of each form."""
    pages = [path.relative_to(site).as_posix() for path in sorted(site.rglob("*.html"))]
    chapters = {path.stem for path in (site.parent / "content" / "chapters" / "en").glob("*.md")}
    chapters -= {"home", "why-we-prune"}
    rooms = {path.stem for path in (site / "project").glob("*.html")} - ROOMS
    return [
        site / one
        for one in pages
        if Path(one).stem not in (rooms if "project/" in one else chapters)
    ]


def follow_the_arm(page: Page) -> None:
    """Make an arm new, where a page is about that: each winter's words come one by one."""
    arm = page.locator("[data-pencilwood-renewal]")
    for _ in range(WINTERS if arm.count() else 0):
        arm.locator("input[type=radio]").last.check()
        # Once for what it comes to, once for the winter after.
        arm.locator(".pw-main").click()
        arm.locator(".pw-main").click()


@pytest.mark.browser
def test_nothing_of_it_runs_and_no_page_breaks_its_policy(
    browser: Browser, hostile_site: Path
) -> None:
    context = browser.new_context()
    context.add_init_script(
        f"window.ran = []; window.{MARK} = () => window.ran.push('ran');"
        "document.addEventListener('securitypolicyviolation',"
        " (one) => window.ran.push(`${one.violatedDirective} ${one.blockedURI}`));"
    )
    page = context.new_page()
    troubles: list[str] = []
    page.on("dialog", lambda dialog: troubles.append(dialog.message))
    page.on("pageerror", lambda error: troubles.append(f"{page.url}: {error}"))
    for path in worth_opening(hostile_site):
        page.goto(path.as_uri())
        page.evaluate("document.querySelectorAll('details').forEach((one) => { one.open = true; })")
        ways = page.locator(".pw-ask-way button")
        if ways.count():
            ways.first.click()
        follow_the_arm(page)
        assert page.evaluate("window.ran") == [], path.relative_to(hostile_site)
    page.goto((hostile_site / "index.html").as_uri())
    page.locator(".md-search__input").click()
    page.locator(".md-search__input").press_sequentially("script", delay=40)
    page.wait_for_timeout(500)
    assert page.evaluate("window.ran") == []
    assert troubles == []
    context.close()
