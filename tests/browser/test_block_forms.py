"""The block pages and the forms, in Chromium, from the disk."""

from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from browser import unmet_by

pytestmark = [pytest.mark.browser, pytest.mark.slow]

BLOCK_PAGES = tuple(
    f"{folder}{name}"
    for folder in ("", "es/")
    for name in ("blocks", "blocks/mill-terrace", "blocks/long-row", "blocks/old-orchard", "sums")
)


def open_sum(page: Page, site: Path, name: str, language: str = "") -> None:
    page.goto((site / language / "sums.html").as_uri() + f"#sum-{name}")
    expect(page.locator(f'[data-sum="{name}"] details.pw-sum')).to_have_attribute("open", "")


@pytest.mark.parametrize("name", BLOCK_PAGES)
def test_pages_fit_a_phone_and_pass_axe(
    phone_page: Page, built_site: Path, project: Path, npm: str, name: str
) -> None:
    phone_page.goto((built_site / f"{name}.html").as_uri())
    assert phone_page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    for fold in phone_page.locator("article details").all():
        fold.evaluate("fold => { fold.open = true; }")
    assert unmet_by(phone_page, project, "article") == []


def test_an_answer_comes_while_fields_are_filled(phone_page: Page, built_site: Path) -> None:
    open_sum(phone_page, built_site, "fit")
    form = phone_page.locator('[data-sum="fit"]')
    answer = form.locator(".pw-answer")
    expect(answer).to_have_text("Fill in the fields and the result appears here.")
    phone_page.fill("#pw-sum-fit-wanted_buds", "40")
    phone_page.fill("#pw-sum-fit-arm_mm", "70")
    expect(answer).to_contain_text("Your arms hold 28 buds, 40 buds are asked for")
    form.get_by_text("How it is worked out").click()
    expect(form.locator("ol")).to_contain_text("14 spurs × 2 buds = 28 buds.")


def test_nonsense_gets_a_sentence_beside_its_field(phone_page: Page, built_site: Path) -> None:
    open_sum(phone_page, built_site, "crew", "es")
    field = phone_page.locator("#pw-sum-crew-vines")
    field.fill("muchas")
    beside = phone_page.locator("#pw-sum-crew-vines-trouble")
    expect(beside).to_have_text('Esto no es un número: "muchas". Escriba por ejemplo 2,5.')
    expect(field).to_have_attribute("aria-invalid", "true")
    field.fill("4000")
    expect(beside).to_be_hidden()
    # Neither people nor days: the sum itself says what is missing, at the field.
    expect(phone_page.locator("#pw-sum-crew-people-trouble")).to_contain_text("personas")
    phone_page.fill("#pw-sum-crew-people", "6")
    expect(phone_page.locator('[data-sum="crew"] .pw-answer')).to_contain_text("60 a 70 h")


def test_a_change_of_units_keeps_the_amount(phone_page: Page, built_site: Path) -> None:
    open_sum(phone_page, built_site, "vines")
    phone_page.get_by_label("US", exact=True).check()
    phone_page.fill("#pw-sum-vines-row_mm", "9")
    phone_page.fill("#pw-sum-vines-vine_mm", "6")
    answer = phone_page.locator('[data-sum="vines"] .pw-answer')
    expect(answer).to_contain_text("807 per acre")
    phone_page.get_by_label("Metric", exact=True).check()
    expect(phone_page.locator("#pw-sum-vines-row_mm")).to_have_value("2.74")
    expect(phone_page.locator("label[for=pw-sum-vines-row_mm]")).to_contain_text("(m)")


def test_a_range_goes_in_and_comes_out(phone_page: Page, built_site: Path) -> None:
    open_sum(phone_page, built_site, "buds")
    phone_page.get_by_label("lowest and a highest").check()
    for part, text in (("-low", "0.9"), ("", "1.1"), ("-high", "1.3")):
        phone_page.fill(f"#pw-sum-buds-prunings_g{part}", text)
    answer = phone_page.locator('[data-sum="buds"] .pw-answer')
    expect(answer).to_contain_text("40 to 57 buds (most likely 49)")
    phone_page.fill("#pw-sum-buds-prunings_g-low", "1.2")
    expect(phone_page.locator("#pw-sum-buds-prunings_g-trouble")).to_contain_text(
        "lowest to highest"
    )


def test_start_again_brings_back_what_is_usual(phone_page: Page, built_site: Path) -> None:
    open_sum(phone_page, built_site, "room")
    spacing = phone_page.locator("#pw-sum-room-spur_spacing_mm")
    expect(spacing).to_have_value("10")
    spacing.fill("7")
    phone_page.locator('[data-sum="room"]').get_by_role("button", name="Start again").click()
    expect(spacing).to_have_value("10")


def test_a_block_shows_its_steps_and_plots(phone_page: Page, built_site: Path) -> None:
    phone_page.goto((built_site / "blocks" / "old-orchard.html").as_uri())
    assert phone_page.locator("svg.pw-plot").count() == 4
    expect(phone_page.locator("article")).to_contain_text("common practice, no source")
    phone_page.get_by_role("link", name="Try it with other numbers").last.click()
    expect(phone_page.locator('[data-sum="thinning"] details.pw-sum')).to_have_attribute("open", "")
