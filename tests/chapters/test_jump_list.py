"""The list of a page's headings on a phone: in view while reading, out of the way once used."""

from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

pytestmark = [pytest.mark.browser, pytest.mark.slow]


def test_the_list_stays_in_view_and_folds_up_over_the_heading_asked_for(
    phone_page: Page, built_site: Path
) -> None:
    page = phone_page
    page.goto((built_site / "training-language-and-records.html").as_uri())
    listed = page.locator(".pw-jump")
    page.mouse.wheel(0, 3000)
    expect(listed.locator("summary")).to_be_in_viewport()
    listed.locator("summary").click()
    last = listed.locator("a").last
    wanted = page.locator(f"h2{last.get_attribute('href')}")
    last.click()
    expect(listed).not_to_have_attribute("open", "")
    expect(wanted).to_be_in_viewport()
    bar, heading = listed.bounding_box(), wanted.bounding_box()
    assert bar is not None
    assert heading is not None
    assert heading["y"] >= bar["y"] + bar["height"]


def test_escape_folds_the_list_up(phone_page: Page, built_site: Path) -> None:
    page = phone_page
    page.goto((built_site / "tools.html").as_uri())
    page.locator(".pw-jump summary").click()
    expect(page.locator(".pw-jump")).to_have_attribute("open", "")
    page.keyboard.press("Escape")
    expect(page.locator(".pw-jump")).not_to_have_attribute("open", "")
    expect(page.locator(".pw-jump summary")).to_be_focused()


def test_no_column_of_a_table_is_too_narrow_to_read(phone_page: Page, built_site: Path) -> None:
    page = phone_page
    page.goto((built_site / "training-language-and-records.html").as_uri())
    widths = page.locator("td").evaluate_all("cells => cells.map(c => c.offsetWidth)")
    assert widths
    assert min(widths) >= 120


@pytest.mark.parametrize(
    ("name", "folds"),
    [
        # Chapters, with pictures and without.
        ("tools", True),
        ("working-safely", True),
        ("block-numbers", True),
        # The pages that list them.
        ("workers", True),
        ("trainers", True),
        ("teachers", True),
        # Pages to look things up in.
        ("sources", False),
        ("safety", False),
    ],
)
def test_pages_of_one_kind_list_their_headings_alike_on_a_wide_screen(
    desktop_page: Page, built_site: Path, name: str, folds: bool
) -> None:
    page = desktop_page
    page.set_viewport_size({"width": 1280, "height": 800})
    page.goto((built_site / f"{name}.html").as_uri())
    expect(page.locator(".pw-jump")).to_be_visible(visible=folds)
    expect(page.locator(".pw-headings")).to_be_visible(visible=not folds)
