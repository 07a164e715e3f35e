"""The letters of papers: those of the pages, and numbers that stay whole."""

from __future__ import annotations

import pytest
from pypdf import PdfReader

from pencilwood.worksheets.numbers_whole import with_whole_numbers
from workshop import Workshop

PAPERS = [
    ("--what", "card"),
    ("--what", "measuring-sheet"),
    ("--what", "poster", "--case", "tidy-vine"),
    ("--what", "worksheet", "--case", "tidy-vine"),
    ("--what", "key", "--case", "tidy-vine"),
]


def fonts_of(reader: PdfReader) -> set[str]:
    """The names of all fonts of a paper, without the mark that it holds a part of each."""
    pages = [page["/Resources"]["/Font"].values() for page in reader.pages]  # type: ignore[index]
    names = {str(font.get_object()["/BaseFont"]) for fonts in pages for font in fonts}
    return {name.partition("+")[2].partition("-Identity")[0] for name in names}


@pytest.mark.parametrize("asked", PAPERS, ids=lambda asked: asked[1])
@pytest.mark.parametrize("language", ["en", "es"])
def test_papers_are_set_in_the_letters_of_the_pages(
    workshop: Workshop, asked: tuple[str, ...], language: str
) -> None:
    ran = workshop.run("print", *asked, "--language", language)
    assert ran.status == 0, ran.err
    (path,) = (workshop.root / "print").iterdir()
    fonts = fonts_of(PdfReader(path))
    assert {"AtkinsonHyperlegible-Regular", "Alegreya-Bold"} <= fonts
    assert fonts <= {"AtkinsonHyperlegible-Regular", "AtkinsonHyperlegible-Bold", "Alegreya-Bold"}


@pytest.mark.parametrize(
    ("told", "whole"),
    [
        ("7 mm to 13 mm", "7\u00a0mm to 13\u00a0mm"),
        ("2 yemas en cada pulgar", "2\u00a0yemas en cada pulgar"),
        ("3 1/2 in", "3\u00a01/2\u00a0in"),
        ("pass 2, then 3", "pass 2, then 3"),
        ("no number", "no number"),
    ],
)
def test_a_number_stays_with_what_it_counts(told: str, whole: str) -> None:
    assert with_whole_numbers({"say": [(told, 4)]}) == {"say": [[whole, 4]]}


def test_drawings_keep_their_spaces() -> None:
    drawing = {"svg": '<path d="M1 2 3 mm"/>', "code": "<svg>1 mm</svg>", "alt": "1 mm"}
    assert with_whole_numbers(drawing) == {**drawing, "alt": "1\u00a0mm"}
