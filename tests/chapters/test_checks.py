"""What a chapter must meet beside being right."""

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
