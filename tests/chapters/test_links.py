"""Links of a chapter: each leads to a page, a place or a file that is there, or is told."""

from dataclasses import replace
from pathlib import Path

import pytest

from chapter_files import chapter, told
from pencilwood.pages.chapters.chapter_page import check_chapter
from pencilwood.pages.handbook import Handbook
from pencilwood.site.handbook import open_handbook
from pencilwood.site.own_pages import own_pages


@pytest.mark.parametrize(
    ("text", "beside", "expected"),
    [
        pytest.param("![a](vine.jpg)", (), "beside the chapters, where none is yet", id="none"),
        pytest.param("![a](vines.jpg)", ("vine.jpg",), 'did you mean "vine.jpg"', id="near"),
        pytest.param("[a](x.pdf)", ("vine.jpg",), "expected one of: vine.jpg", id="all files"),
        pytest.param("[a](scores.html)", ("vine.jpg",), 'did you mean "scores.md"', id="a page"),
    ],
)
def test_a_missing_file_is_told_with_what_is_there(
    handbook: Handbook, text: str, beside: tuple[str, ...], expected: str
) -> None:
    (finding,) = told(replace(handbook, pictures=dict.fromkeys(beside, b"")), text)
    assert expected in finding.expected


PLACES = """

## La púa de **pocas** yemas

## Wood

## Wood

## Two [words](https://example.org)

## Named {: #own }
"""


def test_a_link_to_a_page_is_told_with_the_name_that_a_link_needs(handbook: Handbook) -> None:
    (far,) = told(handbook, "[x](cases/tidy-wine.md)")
    assert 'did you mean "cases/tidy-vine.md"' in far.expected
    (back,) = told(handbook, "[x](../score.md)", "es")
    assert 'did you mean "../scores.md"' in back.expected


def test_places_of_the_pages_of_three_winters_are_known(project: Path) -> None:
    opened = open_handbook(project)
    assert opened.handbook is not None
    names = ("winters/four-spurs", "new-arm/a-worn-out-arm")
    links = " ".join(f"[x]({name}.md#none)" for name in names)
    found = told(opened.handbook, links)
    assert [one.name for one in found] == ["unknown-anchor"] * 2
    assert told(opened.handbook, links.replace("#none", "#growth")) == []


def test_with_a_fault_elsewhere_only_what_is_certain_is_told(handbook: Handbook) -> None:
    text = "[x](cases/not-read.md) [y](scores.md#none) [z](tolls.md)"
    pages = own_pages(handbook, is_faultless=False)
    found = check_chapter(handbook, chapter(text), "en", own_pages=pages).findings
    assert [(one.name, one.place.column) for one in found] == [("unknown-link", 44)]


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("Good.\n\nSee [the tools](tolls.md).", [("unknown-link", 3, 5)]),
        ("[x](nowhere.md#part)", [("unknown-link", 1, 1)]),
        ("Two:\n\n[x]: nowhere.md", [("unknown-link", 3, 1)]),
        ("![a vine](vine.jpg)", [("missing-picture", 1, 1)]),
        ('A ![vine](photos/vine.png "A row") here', [("missing-picture", 1, 3)]),
        ("[![vine](vine.png)](test.md)", [("missing-picture", 1, 2)]),
        ("[x](sheet.pdf) [y](scores.html)", [("unknown-file", 1, 1), ("unknown-file", 1, 16)]),
        ("[x](#heads)\n\n## Head", [("unknown-anchor", 1, 1)]),
        ("- [x](test.md#heads)\n\n## Head", [("unknown-anchor", 1, 3)]),
        # A chapter, a page of ours, elsewhere; what stands beside; what is only shown as code.
        ("[x](test.md) [y](scores.md#prices) [w](https://example.org/a.md)", []),
        # Pages that we make ourselves, beside the chapters and in folders.
        ("[x](scores.md#none) [y](rules.md)", [("unknown-anchor", 1, 1)]),
        ("[x](rules/crowded-spurs.md#why) [y](words.md#word-spur)", []),
        ("See [x](rules/crowded-spurs.md#whi)", [("unknown-anchor", 1, 5)]),
        ("[x](cases/tidy-vine.md#words) [y](sources.md#source-a-study)", []),
        (
            "[x](cases/tidy-vine.md#word) [y](safety.md#x)",
            [("unknown-anchor", 1, 1), ("unknown-anchor", 1, 30)],
        ),
        # Folders of ours, our single pages, another language, and what leads out of the site.
        (
            "[x](cases/tidy-wine.md) [y](rules/crowded.md#why)",
            [("unknown-link", 1, 1), ("unknown-link", 1, 25)],
        ),
        ("[x](workers.md) [y](index.md) [z](sums.md) [q](quizzes.md)", [("unknown-link", 1, 44)]),
        (
            "[x](es/scores.md#prices) [y](es/scores.md#none) [z](es/test.md)",
            [("unknown-anchor", 1, 26), ("unknown-link", 1, 49)],
        ),
        ("[x](../away.md) [y](/rules.md)", [("unknown-link", 1, 1), ("unknown-link", 1, 17)]),
        # The text of the front page is no page of its own.
        ("[x](home.md)", [("unknown-link", 1, 1)]),
        ("[![vine](row.png)](tolls.md)", [("unknown-link", 1, 1), ("missing-picture", 1, 2)]),
        ("![x][row]\n\n[row]: row.png", [("missing-picture", 3, 1)]),
        ("- [row]: row.md\n\n[^a]: row.md", [("unknown-link", 1, 3)]),
        ("![A row](photos/row%20a.jpg) [x](papers/sheet.pdf)", []),
        ("`[x](nowhere.md)`\n\n```\n[x](nowhere.md)\n![y](z.png)\n```", []),
        # Brackets in a name, as copies of a picture have them; angles are told as HTML, once.
        ("![A row](photos/row_(1).jpg) [y](photos/row_(2).jpg)", [("unknown-file", 1, 30)]),
        ("![A row](<photos/row a.jpg>)", [("html-in-text", 1, 10)]),
        # What only looks like a link: a mark before it, or words behind its name.
        ("\\[x](nowhere.md)\n\n[note]: see below", []),
        ("[x]: nowhere.md 'A row'", [("unknown-link", 1, 1)]),
        # Places of a page, named as the site generator names them.
        (f"[a](#a-test) [b](#la-pua-de-pocas-yemas) [c](#own){PLACES}", []),
        (f"[a](#wood_1) [b](#two-words) [c](test.md#wood){PLACES}", []),
    ],
)
def test_a_link_that_leads_nowhere_is_told_with_its_line(
    handbook: Handbook, text: str, found: list[tuple[str, int, int]]
) -> None:
    around = {
        "photos/row a.jpg": b"",
        "photos/row_(1).jpg": b"",
        "papers/sheet.pdf": b"",
        "es/vine.jpg": b"",
    }
    all_told = told(replace(handbook, pictures=around), text)
    assert [(one.name, one.place.line, one.place.column) for one in all_told] == found
