"""The page of three winters, as a learner uses it: everything shown is what Python worked out."""

from __future__ import annotations

import gzip
from collections.abc import Callable
from html import unescape
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from pencilwood.cases.case import Case, Profile
from pencilwood.pages.winters_page import winters_page, winters_path
from pencilwood.proof.winters import PrunedWinter, Story, Winters
from pencilwood.units import format_length
from pencilwood.vine.spur_choice import Stays
from winter_pages import LARGEST_BYTES, write_pages

pytestmark = pytest.mark.browser

N, F = Stays.NEAR, Stays.FAR
Open = Callable[[Page, str], None]


@pytest.fixture(scope="module")
def folder(
    profile_and_case: tuple[Profile, Case], tmp_path_factory: pytest.TempPathFactory
) -> Path:
    profile, case = profile_and_case
    site = tmp_path_factory.mktemp("winters")
    write_pages(site, profile, case, winters_page, winters_path(case.slug))
    return site


@pytest.fixture
def open_page(folder: Path) -> Open:
    def opened(page: Page, language: str) -> None:
        place = "" if language == "en" else "es/"
        page.goto((folder / f"{place}winters" / "four-spurs.html").as_uri())

    return opened


def choose(page: Page, name: str, stays: Stays) -> None:
    page.locator(f"input[name=pw-winters-{name}][value={stays[0]}]").check()


def prune(page: Page, winters: Winters, choices: list[Stays]) -> None:
    for name, stays in zip(winters.names, choices, strict=True):
        choose(page, name, stays)
    page.locator(".pw-winters .pw-main").click()


def drawn(page: Page, more: str = "") -> set[str]:
    """Names of the wood in the drawing at hand."""
    wood = page.locator(f".pw-winters-stage svg [data-part]{more}")
    return set(wood.evaluate_all("all => all.map(one => one.dataset.part)"))


def expect_told(page: Page, year: PrunedWinter, language: str) -> None:
    """The page tells a pruned winter as Python worked it out."""
    stage = page.locator(".pw-winters-stage")
    expect(stage.locator("h3")).to_contain_text(f" {year.score} ")
    expect(stage.locator("h3")).to_be_focused()
    climb = format_length(year.climb_mm, "metric", language)
    expect(stage.locator("p").first).to_contain_text(climb)
    losses = sum(one.points > 0 for one in year.charges)
    assert stage.locator("ul li").count() == max(1, losses)
    states = zip(year.parts.parts, year.left.states, strict=True)
    assert drawn(page, ".pw-gone") == {part.name for part, left in states if not left}


@pytest.mark.parametrize("language", ["en", "es"])
@pytest.mark.parametrize("size", ["phone", "desktop"])
def test_three_winters_are_what_was_worked_out(
    request: pytest.FixtureRequest, open_page: Open, winters: Winters, language: str, size: str
) -> None:
    page: Page = request.getfixturevalue(f"{size}_page")
    open_page(page, language)
    stories: list[Story] = [()] * 4
    for turn in ([F, N, N, F], [F, F, N, N], [N, F, N, F]):
        year = winters.pruned(stories, turn)
        assert drawn(page) == {one.name for one in year.parts.parts}
        prune(page, winters, turn)
        expect_told(page, year, language)
        page.locator(".pw-winters .pw-main").click()
        stories = [(*story, one) for story, one in zip(stories, turn, strict=True)]
    assert page.locator(".pw-winters-done tbody tr").count() == 3
    assert drawn(page) == {one.name for one in winters.mixed(stories).parts}
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")


def test_a_place_without_a_choice_is_named(desktop_page: Page, open_page: Open) -> None:
    open_page(desktop_page, "en")
    choose(desktop_page, "R1", N)
    desktop_page.locator(".pw-winters .pw-main").click()
    expect(desktop_page.locator(".pw-winters-missing")).to_have_text(
        "Choose at each place first: R2, R3, R4"
    )


def test_a_winter_can_be_taken_back_and_all_begun_again(
    desktop_page: Page, open_page: Open, winters: Winters
) -> None:
    open_page(desktop_page, "en")
    prune(desktop_page, winters, [F, F, F, F])
    desktop_page.get_by_role("button", name="Back to the winter before").click()
    expect(desktop_page.locator(".pw-winters-stage h3")).to_have_text("Winter 1 of 3")
    assert desktop_page.locator(".pw-winters-done").count() == 0
    prune(desktop_page, winters, [N, N, N, N])
    score = winters.by_habit(N)[0].score
    expect(desktop_page.locator(".pw-winters-stage h3")).to_have_text(f"Score {score} of 100")
    desktop_page.get_by_role("button", name="Start again").click()
    expect(desktop_page.locator(".pw-winters-stage h3")).to_have_text("Winter 1 of 3")


def test_keys_alone_prune_a_winter(desktop_page: Page, open_page: Open, winters: Winters) -> None:
    open_page(desktop_page, "en")
    desktop_page.get_by_role("button", name="The far cane everywhere").focus()
    desktop_page.keyboard.press("Enter")
    for _ in winters.names:
        desktop_page.keyboard.press("Tab")
    desktop_page.keyboard.press("ArrowUp")
    desktop_page.keyboard.press("Tab")
    desktop_page.keyboard.press("Enter")
    score = winters.pruned([()] * 4, [F, F, F, N]).score
    expect(desktop_page.locator(".pw-winters-stage h3")).to_have_text(f"Score {score} of 100")


def test_both_habits_are_told_without_the_script(folder: Path, winters: Winters) -> None:
    text = unescape((folder / "winters" / "four-spurs.html").read_text("utf-8"))
    text = text.replace("\u00a0", " ")
    for stays in Stays:
        for year in winters.by_habit(stays):
            climb = format_length(year.climb_mm, "metric", "en").replace("\u00a0", " ")
            assert f"Spurs up to {climb}" in text
            lost = sum(charge.points for charge in year.charges)
            assert f"This pruning loses {lost or 'no'} points." in text
            not_saved = f"Even the best pruning would lose {year.plan_lost} of them"
            assert (not_saved in text) == (year.plan_lost > 0)
            assert year.score == 100 - lost + year.plan_lost, "the page and the exercise agree"
    assert "an assumption of this handbook" in text


def test_the_page_is_light(folder: Path) -> None:
    for page in sorted(folder.rglob("four-spurs.html")):
        assert len(gzip.compress(page.read_bytes(), 9)) < LARGEST_BYTES


def test_no_id_is_on_the_page_twice(desktop_page: Page, open_page: Open) -> None:
    open_page(desktop_page, "en")
    desktop_page.get_by_role("button", name="The near cane everywhere").click()
    # The second winter's drawing is put together of two.
    desktop_page.locator(".pw-winters .pw-main").click()
    desktop_page.locator(".pw-winters .pw-main").click()
    ids = desktop_page.evaluate("[...document.querySelectorAll('[id]')].map((one) => one.id)")
    assert len(ids) == len(set(ids))
