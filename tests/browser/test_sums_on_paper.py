"""The page of sums on paper: a form for each, with the formula by which it is worked by hand."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Page, expect
from pypdf import PdfReader

from pencilwood.block.questions import QUESTIONS
from pencilwood.words import say

pytestmark = [pytest.mark.browser, pytest.mark.slow]


@pytest.mark.parametrize("language", ["en", "es"])
def test_each_sum_prints_its_formula(built_site: Path, desktop_page: Page, language: str) -> None:
    folder = "" if language == "en" else f"{language}/"
    desktop_page.goto((built_site / f"{folder}sums.html").as_uri())
    formulas = desktop_page.locator(".pw-by-hand")
    expect(formulas).to_have_count(len(QUESTIONS))
    expect(formulas.first).to_be_hidden()
    desktop_page.emulate_media(media="print")
    for number, name in enumerate(QUESTIONS):
        expect(formulas.nth(number)).to_be_visible()
        expect(formulas.nth(number)).to_contain_text(say(language, f"pages.sums.by-hand.{name}"))


def test_no_sum_runs_over_the_end_of_a_sheet(
    built_site: Path, desktop_page: Page, tmp_path: Path
) -> None:
    """Its heading and the line for its result are on one page."""
    desktop_page.goto((built_site / "sums.html").as_uri())
    desktop_page.wait_for_selector(".pw-block-forms.pw-live")
    desktop_page.pdf(path=tmp_path / "sums.pdf", format="A4")
    texts = [
        " ".join(page.extract_text().split()) for page in PdfReader(tmp_path / "sums.pdf").pages
    ]
    for name in QUESTIONS:
        heading = say("en", f"block.question.{name}")
        formula = say("en", f"pages.sums.by-hand.{name}").split(" = ")[0]
        holding = [text for text in texts if heading in text and formula in text]
        assert holding, name
        behind = holding[0].partition(heading)[2]
        assert say("en", "block.form.result") in behind, name


def test_a_most_likely_number_stays_with_its_words(built_site: Path, desktop_page: Page) -> None:
    desktop_page.goto((built_site / "sums.html").as_uri())
    usual = desktop_page.locator(".pw-usual").filter(has_text="most likely").first
    assert "(most\u00a0likely\u00a035)" in (usual.text_content() or "")
