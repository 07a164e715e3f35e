"""What a chapter must meet beside being right."""

from dataclasses import replace

import pytest

from chapter_files import filled, told
from pencilwood.pages.chapters.prose import headings, prose, typed_figures
from pencilwood.pages.handbook import Handbook

HARD_EN = (
    "Immediately discontinue operations.\n\n"
    "Inadequately maintained instrumentation substantially increases occupational "
    "susceptibility to musculoskeletal injury."
)
HARD_ES = (
    "Pare.\n\nLa utilización inadecuada de herramientas deterioradas incrementa "
    "significativamente la probabilidad de padecimientos musculoesqueléticos."
)
LONG = (
    "You cut the wood and you look at the cut and then you go on to the next one on the arm. " * 5
)


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("Keep 10 cm free.", [("10", 1, 6)]),
        ("About 3.5 or 50 % of them.", [("3.5", 1, 7), ("50 %", 1, 14)]),
        ("So\n- leave 2 buds", [("2", 2, 9)]),
        # Names of wood, numbering, years, clauses, code and calls are no figures.
        ("Look at L3 and R12ab.", []),
        ("1. First\n2) second", []),
        ("Read in 2016 and 1998.", []),
        ("See 29 CFR 1928.21(b) and WAC 296-307-05503(1), EN 388.", []),
        ("`12 mm`\n\n```yaml\nbuds: 9\n```", []),
        ('{{ draw("tidy-vine", at="L3") }} {# 5 #} <!-- 6 -->', []),
        ("[here](page-2.html)", []),
        ("After 2016 there were 12.", [("12", 1, 23)]),
    ],
)
def test_typed_figures(text: str, found: list[tuple[str, int, int]]) -> None:
    assert [(one.text, one.line, one.column) for one in typed_figures(text)] == found


def test_a_typed_figure_is_an_error(handbook: Handbook) -> None:
    (only,) = told(handbook, "Good.\n\nLeave 8 cm.")
    assert only.render() == (
        "a.md:3:7: a figure is typed by hand, so that it can go stale; expected a call such as "
        "limit(...), figure(...) or measured(...), or a number in words; "
        'found "8" (typed-number)'
    )


def test_a_figure_in_a_caption_is_an_error(handbook: Handbook) -> None:
    (only,) = told(handbook, '{{ picture("tool-sizes", caption="Up to 13 mm") }}')
    assert only.name == "typed-number"


@pytest.mark.parametrize(
    ("text", "language", "name", "line"),
    [
        (HARD_EN, "en", "hard-english", 3),
        (HARD_ES, "es", "hard-spanish", 3),
        (f"Short.\n\n{LONG}", "en", "long-sentences", 3),
    ],
)
def test_a_hard_page_for_workers_is_refused_where_it_is_hardest(
    handbook: Handbook, text: str, language: str, name: str, line: int
) -> None:
    found = {one.name: one for one in told(handbook, text, language, audience="worker")}
    assert found[name].place.line == line
    assert "(3)" in found[name].found


def test_the_gate_is_for_workers_only(handbook: Handbook) -> None:
    assert told(handbook, HARD_EN) == []


def test_an_easy_page_passes(handbook: Handbook) -> None:
    assert told(handbook, "Cut low. Look up. Go on.", audience="worker") == []
    assert told(handbook, "Corte abajo. Mire bien.", "es", audience="worker") == []


def test_prose_leaves_out_what_is_not_read_as_text() -> None:
    text = (
        "# Head\n\nOne *two* [three](x.html).\n- item\n- `code` more\n\n| a | b |\n\n"
        "<figure>x<figcaption>Seen &amp; told</figcaption></figure>\n\n"
        '<section>box</section>\n\nSee <a class="pw-cite" href="s">Long Title</a> here.\n'
    )
    assert [(one.text.strip(), one.line) for one in prose(text)] == [
        ("One two three.", 3),
        ("item", 4),
        ("more", 5),
        ("Seen & told", 9),
        ("See  here.", 13),
    ]


def test_headings_in_code_are_none() -> None:
    assert headings("## A\n\n```\n# no\n```\n\n### B") == (2, 3)


def test_trade_words_are_explained_at_their_first_use(handbook: Handbook) -> None:
    html = filled(handbook, "A cane, two canes, a fruiting cane.", audience="worker")
    assert html.count("pw-term") == 2
    assert ">cane</a>, two canes, a <a" in html
    assert ">fruiting cane</a>." in html


def test_words_of_the_writer_and_everyday_words_are_left_alone(handbook: Handbook) -> None:
    text = 'Turn your head. Canes first. Then {{ term("cane", "the canes") }}.\n\n## Spurs'
    html = filled(handbook, text, audience="worker")
    assert html.count("pw-term") == 1
    assert "Turn your head. Canes first." in html
    assert html.endswith("## Spurs")


def test_links_keep_their_words(handbook: Handbook) -> None:
    html = filled(handbook, "[a spur](test.md) `spur` then spurs", audience="worker")
    assert html.startswith("[a spur](test.md) `spur` then <a")


def test_pages_for_trainers_are_left_as_written(handbook: Handbook) -> None:
    assert filled(handbook, "A cane.") == "A cane."


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
