"""The page of a new arm, as a learner uses it: everything shown is what Python worked out."""

from __future__ import annotations

import gzip
import random
import re
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from pencilwood.cases.case import Case, Profile
from pencilwood.pages.renewal_page import renewal_page, renewal_path
from pencilwood.proof.renewal import WAYS, Renewal, Story
from pencilwood.proof.winters import WINTERS
from pencilwood.units import format_length
from pencilwood.vine.arm_renewal import Work
from pencilwood.vine.measures import buds_kept
from svg_reading import of_class, read, view_box
from winter_pages import LARGEST_BYTES, write_pages

pytestmark = pytest.mark.browser

STAGE = ".pw-winters-stage"
SLUG = "a-worn-out-arm"
STORIES: tuple[Story, ...] = (
    WAYS["in-steps"],
    WAYS["at-once"],
    (Work.LAY, Work.LENGTHEN, Work.SPACE),
    (Work.KEEP, Work.OFF, Work.SAVE),
)


@pytest.fixture(scope="module")
def folder(worn: tuple[Profile, Case], tmp_path_factory: pytest.TempPathFactory) -> Path:
    profile, case = worn
    site = tmp_path_factory.mktemp("new-arm")
    write_pages(site, profile, case, renewal_page, renewal_path(SLUG))
    return site


def open_page(page: Page, folder: Path, language: str) -> None:
    place = "" if language == "en" else "es/"
    page.goto((folder / f"{place}{renewal_path(SLUG)}.html").as_uri())


def choose(page: Page, work: Work) -> None:
    page.locator(f"input[name=pw-renewal-work][value={work}]").check()


def go_on(page: Page) -> None:
    page.locator(".pw-winters .pw-main").click()


def offered(page: Page) -> tuple[str, ...]:
    radios = page.locator(f"{STAGE} input[type=radio]")
    return tuple(radios.evaluate_all("all => all.map(one => one.value)"))


def wood(page: Page, where: str) -> set[str]:
    """Names of the wood of which this is true in the drawing at hand."""
    found = page.locator(f"{STAGE} svg [data-part]{where}")
    return set(found.evaluate_all("all => all.map(one => one.dataset.part)"))


def gone_on_side(renewal: Renewal, story: Story) -> set[str]:
    """Names of what the latest work took off where the arm is renewed."""
    done = renewal.worked(story)
    parts = (one for one in done.left.parts.parts if one.position.side is done.found.side)
    return {part.name for part in parts if done.left.state(part.name) == 0}


def told_bare(renewal: Renewal, story: Story, language: str) -> str:
    """The longest bare stretch as the page tells it, in one piece."""
    return format_length(renewal.bare_mm(story), "metric", language).replace(" ", "\u00a0")


@pytest.mark.parametrize("story", STORIES, ids=["-".join(one) for one in STORIES])
@pytest.mark.parametrize(("size", "language"), [("phone", "es"), ("desktop", "en")])
def test_three_winters_are_what_was_worked_out(
    request: pytest.FixtureRequest,
    folder: Path,
    renewal: Renewal,
    story: Story,
    size: str,
    language: str,
) -> None:
    page: Page = request.getfixturevalue(f"{size}_page")
    open_page(page, folder, language)
    for winter in range(1, WINTERS + 1):
        before, now = story[: winter - 1], story[:winter]
        assert offered(page) == tuple(str(one) for one in renewal.works(before))
        choose(page, story[winter - 1])
        done = renewal.worked(now)
        side = {
            part.name for part in done.left.parts.parts if part.position.side is done.found.side
        }
        gone = {name for name in side if done.left.state(name) == 0}
        assert wood(page, ".pw-gone") == gone
        laid = page.locator(f"{STAGE} .pw-laid:not([display])").count()
        assert laid == (done.laid is not None)
        assert page.locator(f"{STAGE} .pw-sawn:not([display])").count() == done.is_sawn
        if done.laid is not None:
            assert not page.locator(f"{STAGE} [data-part='{done.laid.name}']").is_visible()
        go_on(page)
        expect(page.locator(f"{STAGE} h3")).to_be_focused()
        text = page.locator(STAGE).inner_text()
        for buds in (done.buds_on_side, buds_kept(done.left)):
            assert f"{buds} " in text.replace("\u00a0", " ")
        # A number and its unit or noun stand on one line, in the sentence and in the table.
        assert text.count(told_bare(renewal, now, language)) > 1
        assert page.locator(f"{STAGE} ul li").count() == len(renewal.charges(now))
        go_on(page)
    assert page.locator(".pw-winters-done tbody tr").count() == WINTERS
    expect(page.locator(".pw-renewal-end")).to_be_visible()
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")


def test_a_winter_without_a_choice_is_asked_for(desktop_page: Page, folder: Path) -> None:
    open_page(desktop_page, folder, "en")
    go_on(desktop_page)
    expect(desktop_page.locator(".pw-winters-missing")).to_have_text("Choose one first.")
    expect(desktop_page.locator(f"{STAGE} h3")).to_have_text("Winter 1 of 3")
    choose(desktop_page, Work.SAVE)
    expect(desktop_page.locator(".pw-winters-missing")).to_have_text("")


def test_a_choice_can_be_changed_and_shows_as_it_is(
    phone_page: Page, folder: Path, renewal: Renewal
) -> None:
    open_page(phone_page, folder, "en")
    works = list(renewal.works(()))
    for work in random.Random(1).sample(works * 2, 2 * len(works)):
        choose(phone_page, work)
        done = renewal.worked((work,))
        assert phone_page.locator(f"{STAGE} .pw-sawn:not([display])").count() == done.is_sawn
        laid = phone_page.locator(f"{STAGE} .pw-laid:not([display])").count()
        assert laid == (done.laid is not None)


def test_a_winter_can_be_taken_back_and_all_begun_again(desktop_page: Page, folder: Path) -> None:
    open_page(desktop_page, folder, "en")
    for work in (Work.SAVE, Work.LAY):
        choose(desktop_page, work)
        go_on(desktop_page)
        go_on(desktop_page)
    heading = desktop_page.locator(f"{STAGE} h3")
    expect(heading).to_have_text("Winter 3 of 3")
    desktop_page.get_by_role("button", name="Back to the winter before").click()
    expect(heading).to_have_text("Winter 2 of 3")
    assert desktop_page.locator(".pw-winters-done tbody tr").count() == 1
    assert offered(desktop_page) == ("keep", "save", "lay", "off")
    desktop_page.get_by_role("button", name="Start again").click()
    expect(heading).to_have_text("Winter 1 of 3")
    assert desktop_page.locator(".pw-winters-done").count() == 0


def test_keys_alone_make_a_new_arm(desktop_page: Page, folder: Path, renewal: Renewal) -> None:
    open_page(desktop_page, folder, "en")
    story = WAYS["in-steps"]
    desktop_page.locator(f"{STAGE} input").first.focus()
    for winter in range(WINTERS):
        works = renewal.works(story[:winter])
        desktop_page.keyboard.press("Space")
        for _ in range(works.index(story[winter])):
            desktop_page.keyboard.press("ArrowDown")
        desktop_page.keyboard.press("Tab")
        desktop_page.keyboard.press("Enter")
        expect(desktop_page.locator(f"{STAGE} h3")).to_have_text(f"Winter {winter + 1} is done")
        desktop_page.keyboard.press("Tab")
        desktop_page.keyboard.press("Enter")
        # The heading has the focus; the choices come next.
        desktop_page.keyboard.press("Tab")
    expect(desktop_page.locator(".pw-renewal-end")).to_contain_text("It bore every year.")


@pytest.mark.parametrize("language", ["en", "es"])
def test_all_ways_are_told_without_the_script(
    folder: Path, renewal: Renewal, language: str
) -> None:
    place = "" if language == "en" else "es/"
    text = (folder / f"{place}{renewal_path(SLUG)}.html").read_text("utf-8")
    for way in WAYS.values():
        for winter in range(1, WINTERS + 1):
            assert f"{told_bare(renewal, way[:winter], language)}." in text
    assert 'href="https://extension.oregonstate.edu/video/how-renew-grapevine-cordon"' in text
    assert len(gzip.compress(text.encode(), 9)) < LARGEST_BYTES


def test_the_young_cane_is_named(folder: Path, renewal: Renewal) -> None:
    (laid,) = (one.laid for one in [renewal.worked((Work.LAY,))] if one.laid)
    page = (folder / f"{renewal_path(SLUG)}.html").read_text("utf-8")
    assert f"The young cane of the first winter is {laid.name}." in page


@pytest.mark.parametrize(
    ("language", "hope", "woken"),
    [
        ("en", "One of them, if it comes, can be laid", "The large cut woke a bud."),
        ("es", "Uno, si sale, se puede tender", "El corte grande despertó una yema."),
    ],
)
def test_an_arm_sawn_off_at_once_says_where_its_young_cane_comes_from(
    folder: Path, language: str, hope: str, woken: str
) -> None:
    place = "" if language == "en" else "es/"
    text = (folder / f"{place}{renewal_path(SLUG)}.html").read_text("utf-8")
    ways = text[text.index('id="ways"') :]
    parts = dict(zip(WAYS, ways.split("<h3>")[1:], strict=True))
    winters = parts["at-once"].split("</figcaption>")
    assert hope in winters[0]
    assert woken in winters[1]
    assert woken not in parts["in-steps"]


def test_no_id_is_on_the_page_twice(desktop_page: Page, folder: Path) -> None:
    open_page(desktop_page, folder, "en")
    choose(desktop_page, Work.LAY)
    ids = desktop_page.evaluate("[...document.querySelectorAll('[id]')].map((one) => one.id)")
    assert len(ids) == len(set(ids))


@pytest.mark.parametrize("language", ["en", "es"])
def test_no_name_hangs_out_of_its_drawing(folder: Path, language: str) -> None:
    # L1 and L2 go a row down where seven spurs stand close on a cane that was laid.
    place = "" if language == "en" else "es/"
    html = (folder / f"{place}{renewal_path(SLUG)}.html").read_text("utf-8")
    drawings = [read(svg) for svg in re.findall(r"<svg [^>]*pw-vine.*?</svg>", html, re.DOTALL)]
    assert len(drawings) > 20
    for drawing in drawings:
        left, top, right, bottom = view_box(drawing)
        for name in of_class(drawing, "pw-place-name"):
            size = float(name.attrib["font-size"])
            x, y = float(name.attrib["x"]), float(name.attrib["y"])
            where = f"{drawing.attrib['id']} {name.text}"
            assert top + size < y < bottom - size / 4, where
            assert left + size < x < right - size, where
