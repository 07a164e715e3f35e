"""Hostile text stays text in papers, and in a sheet for a spreadsheet."""

import csv
import io
import re
from typing import Any

import pytest
from pypdf import PdfReader

from pencilwood.cases.field_columns import SHEET_FORMS
from pencilwood.cases.field_writer import field_sheet
from pencilwood.words import LANGUAGES
from pencilwood.worksheets.case_papers import answer_key, worksheet
from pencilwood.worksheets.house_papers import course_booklet, wall_poster
from pencilwood.worksheets.typeset import typeset
from planting import MARK

pytestmark = pytest.mark.slow


@pytest.mark.parametrize("language", LANGUAGES)
def test_papers_print_it_and_do_not_follow_it(planted: Any, language: str) -> None:
    book = planted.handbook
    proof, profile = book.case_by_slug["tidy-vine"], book.profile
    papers = (
        worksheet(proof, profile, language),
        answer_key(proof, profile, language),
        wall_poster(proof, profile, language),
        course_booklet(book.cases, profile, language),
    )
    for paper in papers:
        text = "".join(page.extract_text() for page in pages(typeset(paper, "a4")))
        assert MARK in text
    key = "".join("".join(page.extract_text() for page in pages(typeset(papers[1], "a4"))).split())
    # Typst's own marks are still there: nothing was computed, called or set in a mathematical font.
    assert f"*x*#{MARK}$x$\\#panic()" in key


def pages(pdf: bytes) -> Any:
    return PdfReader(io.BytesIO(pdf)).pages


@pytest.mark.parametrize("language", LANGUAGES)
def test_no_cell_of_a_sheet_is_a_formula(planted: Any, language: str) -> None:
    # A spreadsheet works out what begins with one of these
    # (https://owasp.org/www-community/attacks/CSV_Injection); a number may be negative.
    number = re.compile(r"-?\d+(\.\d+)?")
    vines = [one.case.vine for one in planted.handbook.cases]
    sheets = [vine for vine in vines if vine.form.name in SHEET_FORMS]
    assert sheets
    for vine in sheets:
        for row in csv.reader(io.StringIO(field_sheet(vine, language))):
            for cell in row:
                assert cell[:1] not in ("=", "+", "-", "@", "\t", "\r") or number.fullmatch(cell)
                assert MARK not in cell
