"""Names and letters of drawings have about one size on the screen, in Chromium."""

import re
from collections import Counter
from pathlib import Path
from typing import Literal

import pytest
from playwright.sync_api import Page

pytestmark = [pytest.mark.browser, pytest.mark.slow]

LEAST_PX, MOST_PX = 10.9, 16.3
PAGES = (
    "rules/blank-on-arm",
    "rules/cane-not-tied",
    "rules/wood-in-the-middle",
    "cane-pruned-vine",
    "head-trained-vine",
    "why-we-prune",
    "high-cordon",
    "winters/four-spurs",
    "new-arm/a-worn-out-arm",
)
SIZES = """() => [...document.querySelectorAll(".md-content svg.pw-vine")].flatMap((svg) => {
    const perUnit = svg.getScreenCTM().a;
    const names = [...svg.querySelectorAll(".pw-place-name, text.pw-letter")];
    const seen = names.filter((name) => name.getBoundingClientRect().width > 0);
    return seen.map((name) => parseFloat(getComputedStyle(name).fontSize) * perUnit);
})"""


@pytest.mark.parametrize("wide", [320, 390, 768, 1024, 1280, 1600])
@pytest.mark.parametrize("name", PAGES)
def test_names_are_as_large_as_text_and_no_larger(
    desktop_page: Page, built_site: Path, name: str, wide: int
) -> None:
    desktop_page.set_viewport_size({"width": wide, "height": 800})
    desktop_page.goto((built_site / f"{name}.html").as_uri())
    sizes = desktop_page.evaluate(SIZES)
    assert sizes
    assert min(sizes) >= LEAST_PX
    assert max(sizes) <= MOST_PX


@pytest.mark.parametrize("wide", [320, 1280])
def test_letters_of_the_cuts_are_seen_also_on_a_phone(
    desktop_page: Page, built_site: Path, wide: int
) -> None:
    desktop_page.set_viewport_size({"width": wide, "height": 800})
    desktop_page.goto((built_site / "rules/blank-on-arm.html").as_uri())
    letters = desktop_page.locator('.pw-example-bad [data-letter="R3a"] text')
    assert letters.count() == 1
    assert letters.is_visible()


@pytest.mark.parametrize("page", ["winters/four-spurs", "new-arm/a-worn-out-arm"])
@pytest.mark.parametrize("wide", [320, 1280])
def test_winters_letter_the_canes_that_are_chosen_but_not_what_the_last_winter_finds(
    desktop_page: Page, built_site: Path, page: str, wide: int
) -> None:
    desktop_page.set_viewport_size({"width": wide, "height": 800})
    desktop_page.goto((built_site / f"{page}.html").as_uri())
    chosen = desktop_page.locator(".pw-winters-year:not(.pw-winters-found) .pw-cane > .pw-letter")
    assert any(one.is_visible() for one in chosen.all())
    found = desktop_page.locator(".pw-winters-found .pw-letter")
    assert not any(one.is_visible() for one in found.all())


@pytest.mark.parametrize("case", ["one-arm-vine", "weak-vine", "shoots-on-the-head"])
@pytest.mark.parametrize("wide", [320, 1280])
def test_names_and_letters_of_a_whole_vine_to_prune_can_be_read(
    desktop_page: Page, built_site: Path, case: str, wide: int
) -> None:
    desktop_page.set_viewport_size({"width": wide, "height": 800})
    desktop_page.goto((built_site / f"cases/{case}.html").as_uri())
    desktop_page.locator(".pw-stage-whole .pw-mark-here").wait_for()
    sizes = desktop_page.evaluate(SIZES)
    assert sizes
    assert min(sizes) >= LEAST_PX


@pytest.mark.parametrize("media", ["screen", "print"])
def test_every_piece_that_a_winter_names_has_its_letter_in_the_picture(
    desktop_page: Page, built_site: Path, media: Literal["screen", "print"]
) -> None:
    desktop_page.emulate_media(media=media)
    desktop_page.goto((built_site / "winters/four-spurs.html").as_uri())
    named = 0
    for year in desktop_page.locator(".pw-winters-year:has(.pw-fold)").all():
        told = " ".join(year.locator(".pw-fold li").all_text_contents())
        seen = year.locator(".pw-letter:visible").all_text_contents()
        places = Counter(letter for _, letter in set(re.findall(r"(R\d)([a-z])\b", told)))
        named += sum(places.values())
        assert not places - Counter(seen)
    assert named
