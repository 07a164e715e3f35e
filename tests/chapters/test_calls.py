"""What each call of a chapter gives, and what is said of a wrong one."""

import re
from collections.abc import Callable

import pytest

from chapter_files import completed, filled, told
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.unbroken import keep_names_together


@pytest.mark.parametrize(
    ("language", "call", "shown"),
    [
        ("en", 'limit("spur spacing at least")', ">8 cm</a>"),
        ("en", 'limit("buds on a spur at most")', ">2</a>"),
        # A range says its unit once, like every other.
        ("en", 'limit("cane thickness at least", to="cane thickness at most")', ">7 to 13 mm</a>"),
        ("es", 'limit("cane thickness at least", to="cane thickness at most")', ">7 a 13 mm</a>"),
        ("en", 'limit("buds per metre at least", to="buds per metre at most")', ">12 to 18</a>"),
        ("en", 'figure("hand-width")', ">10 cm</a>"),
        # A range that begins in millimetres and ends in centimetres.
        ("en", 'figure("spur-spacing")', ">7.6 to 12.7 cm</a>"),
        ("es", 'figure("spur-spacing")', ">7,6 a 12,7 cm</a>"),
        ("es", 'figure("wounds-open")', ">14 días</a>"),
        ("en", 'figure("dead-buds")', ">15 to 20%</a>"),
        ("en", 'figure("frost")', ">2 °C</a>"),
        ("es", 'figure("shoots")', ">10 a 16 brotes por metro</a>"),
        ("en", 'measured("tidy-vine", "arm_length")', "cm"),
        ("en", 'points("crowded-spurs", "too-close")', "3 points"),
        ("en", 'term("spur", "spurs")', ">spurs</a>"),
        ("es", 'term("spur")', 'title="Un sarmiento corto">pulgar</a>'),
        ("en", 'rule("crowded-spurs")', 'href="rules/crowded-spurs.html">Spurs crowded</a>'),
        ("es", 'vine("tidy-vine")', 'href="cases/tidy-vine.html">'),
        ("en", 'page("scores")', 'href="scores.html">'),
        ("en", 'to_fill("first aider")', 'class="pw-to-fill"'),
        # What a source is called is escaped like every text.
        ("en", 'cite("a-study")', ">A.\u00a0Grower, Hands &amp; arms, 2016</a>"),
    ],
)
def test_inline_calls(handbook: Handbook, language: str, call: str, shown: str) -> None:
    assert shown in filled(handbook, f"Look: {{{{ {call} }}}}.", language)


def test_figures_lead_to_their_source(handbook: Handbook) -> None:
    text = '{{ figure("hand-width") }} {{ limit("spur spacing at least") }} {{ cite("a-study") }}'
    html = filled(handbook, text)
    assert html.count('href="sources.html#source-a-study"') == 2
    assert 'href="sources.html#band-spur-spacing-at-least"' in html


def test_the_profile_changes_every_figure(handbooks: Callable[[str], Handbook]) -> None:
    text = '{{ limit("spur spacing at least") }}, {{ figure("hand-width") }}, {{ figure("frost") }}'
    html = filled(handbooks("units: us"), text)
    assert ">3 in</a>" in html
    pencil = '{{ limit("cane thickness at least", to="cane thickness at most") }}'
    assert ">1/4 to 1/2 in</a>" in filled(handbooks("units: us"), pencil)
    assert ">4 in</a>" in html
    assert ">36 °F</a>" in html
    ends = 'limit("buds per metre at least", to="buds per metre at most")'
    on_arm = f"{{{{ {ends} }}}} a {{{{ arm_unit() }}}}"
    assert ">3.7 to 5.5</a> a foot" in filled(handbooks("units: us"), on_arm)
    assert ">12 to 18</a> a metre" in filled(handbooks(""), on_arm)


def test_what_the_employer_settles_takes_the_place_of_the_line(
    handbooks: Callable[[str], Handbook],
) -> None:
    known = "distance between workers: 3 m, first aider: Ana, break every: {en: 2 h, es: dos horas}"
    settled = handbooks(f"employer: {{{known}}}\n")
    text = (
        '{{ to_fill("distance between workers") }} {{ to_fill("first aider") }}'
        '{{ to_fill("break every") }}'
    )
    html = filled(settled, text)
    assert "300 cm" in html
    assert "Ana" in html
    assert "2 h" in html
    assert "dos horas" not in html
    assert "pw-to-fill" not in html


@pytest.mark.parametrize(
    ("text", "names"),
    [
        ('- First aider: {{ to_fill("first aider") }}', 0),  # The words before say it.
        ('Fill in **here**:  {{to_fill("first aider")}} and go.', 0),
        ('Ask {{ to_fill("first aider") }} where the kit is.', 1),
        ('Two: {{ to_fill("first aider") }} {{ to_fill("emergency number") }}', 1),
    ],
)
def test_a_line_to_fill_in_is_named_where_nothing_else_names_it(
    handbook: Handbook, text: str, names: int
) -> None:
    html = filled(handbook, text)
    assert html.count('"pw-to-fill-name"') == names
    lines = re.findall(r'class="pw-to-fill[" ]', html)
    assert len(lines) == text.count("to_fill")


@pytest.mark.parametrize(
    ("text", "is_row"),
    [
        ('- First aider: {{ to_fill("first aider") }}', True),
        ('First aider: {{ to_fill("first aider") }}', True),
        ('First aider: {{ to_fill("first aider") }} and go.', False),
        ('The **first** aider: {{ to_fill("first aider") }}', False),  # Two things and a line.
        ('Two: {{ to_fill("first aider") }} {{ to_fill("emergency number") }}', False),
    ],
)
def test_only_a_label_and_its_line_make_a_row(
    handbook: Handbook, text: str, *, is_row: bool
) -> None:
    assert ("pw-to-fill-row" in filled(handbook, text)) == is_row


def test_initials_and_codes_of_a_source_are_not_torn_apart() -> None:
    title = keep_names_together("E. J. Wickson <ed.>, State, WAC 296-307-05505, in 2001")
    assert title == (
        "E.\u00a0J.\u00a0Wickson &lt;ed.&gt;, State, "
        '<span class="pw-whole">WAC 296-307-05505</span>, in 2001'
    )
    assert keep_names_together("See 40 CFR 170.401") == "See 40\u00a0CFR\u00a0170.401"
    rule = keep_names_together("California, 8 CCR 3203(a)(3): a rule")
    assert rule == 'California, 8\u00a0CCR\u00a0<span class="pw-whole">3203(a)(3)</span>: a rule'


def test_a_word_is_explained_once_on_a_page(handbook: Handbook) -> None:
    html = filled(handbook, 'A {{ term("spur") }} and a {{ term("spur") }}.')
    assert html.count("pw-term") == 1
    assert html.endswith("and a spur.")


@pytest.mark.parametrize("state", ["before", "rough", "thinning-out", "fine", "plan", "answer"])
def test_a_vine_can_be_drawn_in_every_state(handbook: Handbook, state: str) -> None:
    html = filled(handbook, f'{{{{ draw("tidy-vine", state="{state}", caption="So.") }}}}')
    assert "<figcaption>So. L: left, R: right. " in html
    assert '<span class="pw-scale-words">To scale;' in html
    assert "\n" not in html.strip()


@pytest.mark.parametrize(
    ("call", "is_near"),
    [
        # The wood fills the picture, unless the whole vine with its wires is asked for.
        ('draw("tidy-vine", state="answer")', True),
        ('draw("tidy-vine", state="before", down_to="wood")', True),
        ('draw("tidy-vine", state="before", down_to="ground")', False),
        ('draw("tidy-vine", state="answer", down_to="ground")', False),
    ],
)
def test_a_whole_vine_is_seen_from_near_or_down_to_the_ground(
    handbook: Handbook, call: str, is_near: bool
) -> None:
    html = completed(handbook, f"{{{{ {call} }}}}")
    _, top, _, height = (float(one) for one in re.findall(r'viewBox="([^"]*)"', html)[0].split())
    assert (top + height < 0, "pw-near" in html) == (is_near, is_near)


@pytest.mark.parametrize("state", ["before", "fine", "answer"])
def test_letters_stand_in_a_close_up_alone(handbook: Handbook, state: str) -> None:
    whole = completed(handbook, f'{{{{ draw("tidy-vine", state="{state}") }}}}')
    near = completed(handbook, f'{{{{ draw("tidy-vine", state="{state}", at="L1") }}}}')
    assert ("pw-letter" in whole, "pw-letter" in near) == (False, True)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (
            'See {{ limt("spur spacing") }}.',
            'a.md:1:8: a chapter has no call of this name; did you mean "limit"?; '
            'found "limt" (unknown-call)',
        ),
        (
            'A {{ figure("hand-width") }} {{ figure("hand-widht") }}',
            "a.md:1:33: there is no figure of this name in figures.yml; "
            'did you mean "hand-width"?; found "hand-widht" (unknown-figure)',
        ),
        (
            '\n\n{{ vine("tidy-vin") }}',
            'a.md:3:4: there is no case of this name; did you mean "tidy-vine"?; '
            'found "tidy-vin" (unknown-case-called)',
        ),
        (
            '{{ measured("tidy-vine", "buds_kep") }}',
            "a.md:1:4: nothing of this name is measured on a vine; "
            'did you mean "buds_kept"?; found "buds_kep" (unknown-fact)',
        ),
        (
            '{{ term("spurr") }}',
            "a.md:1:4: there is no word of this name in glossary.yml; "
            'did you mean "spur"?; found "spurr" (unknown-term)',
        ),
        (
            '{{ cite("a-studi") }}',
            "a.md:1:4: there is no source of this name in sources.yml; "
            'did you mean "a-study"?; found "a-studi" (unknown-source-called)',
        ),
        (
            '{{ picture("tool-size") }}',
            'a.md:1:4: there is no picture of this name; did you mean "tool-sizes"?; '
            'found "tool-size" (unknown-picture)',
        ),
        (
            '{{ draw("tidy-vine", state="finished") }}',
            "a.md:1:4: a drawing has no such state; expected one of: answer, before, fine, plan, "
            'rough, thinning-out; found "finished" (unknown-state)',
        ),
        (
            '{{ draw("tidy-vine", down_to="grond") }}',
            'a.md:1:4: a drawing does not go down to this; did you mean "ground"?; '
            'found "grond" (unknown-depth)',
        ),
        (
            '{{ draw("tidy-vine", at="L9") }}',
            "a.md:1:4: this vine has no such place; expected one of: L1, L2, L3, L4, L5, R1, R2, "
            'R3, R4, R5, R6; found "L9" (unknown-position)',
        ),
        (
            '{{ safety("lopers") }}',
            'a.md:1:4: there is no safety note of this name; did you mean "loppers"?; '
            'found "lopers" (unknown-note-called)',
        ),
        (
            "{{ term() }}",
            "a.md:1:4: term is called in a way that it does not know; "
            'expected it as in {{ term("spur", "spurs") }} (wrong-call)',
        ),
        (
            "{{ points(1, 2) }}",
            "a.md:1:4: points is called in a way that it does not know; expected it as in "
            '{{ points("crowded-spurs", "too-close") }} (wrong-call)',
        ),
        (
            'Look at {{ picture("tool-sizes") }}',
            "a.md:1:12: a drawing or a safety box stands within other text; expected it alone on "
            "its line, with a free line above and below (not-alone)",
        ),
        (
            'Text above\n{{ picture("tool-sizes") }}',
            "a.md:2:4: a drawing or a safety box stands within other text; expected it alone on "
            "its line, with a free line above and below (not-alone)",
        ),
    ],
)
def test_a_wrong_call_is_told_with_its_place(handbook: Handbook, text: str, said: str) -> None:
    assert said in [finding.render() for finding in told(handbook, text)]


@pytest.mark.parametrize(
    ("text", "line", "column", "name"),
    [
        ("a\nb {{ limit( }}", 2, 3, "cannot-be-filled-in"),
        ("{{ unclosed", 1, 1, "cannot-be-filled-in"),
        ("{% if %}", 1, 1, "cannot-be-filled-in"),
        # What reaches for the machine, counts, loops or fills the memory is no call of ours.
        ("x\n{{ 'a'.b.c }}", 2, 1, "not-a-call"),
        ('{{ "".__class__.__mro__ }}', 1, 1, "not-a-call"),
        ("{% include 'secret' %}", 1, 1, "not-a-call"),
        ("ok {{ 'a' | nothing }}", 1, 4, "not-a-call"),
        ("\n{{ 1 / 0 }}", 2, 1, "not-a-call"),
        ("{{ 10 ** 10 ** 10 }}", 1, 1, "not-a-call"),
        ("{{ 'a' * 10 ** 10 }}", 1, 1, "not-a-call"),
        ("{{ 'a' | center(10 ** 10) }}", 1, 1, "not-a-call"),
        ("{% for a in 'ab' %}{{ a }}{% endfor %}", 1, 1, "not-a-call"),
        ("{% filter upper %}a{% endfilter %}", 1, 1, "not-a-call"),
        # A call without its brackets, or with a list in place of texts.
        ("{{ term }}", 1, 1, "not-a-call"),
        ("{{ term(*'ab') }}", 1, 1, "not-a-call"),
        ("a\n {{ " + "(" * 5000 + ")" * 5000 + " }}", 2, 2, "not-a-call"),
    ],
)
def test_what_cannot_be_filled_in_is_told(
    handbook: Handbook, text: str, line: int, column: int, name: str
) -> None:
    (only,) = [one for one in told(handbook, text) if one.name != "typed-number"]
    assert only.name == name
    assert (only.place.line, only.place.column) == (line, column)
    assert "Traceback" not in only.render()


def test_a_text_in_brackets_stands_for_itself(handbook: Handbook) -> None:
    assert filled(handbook, "So: {{ '{{' }}") == "So: {{"


def test_all_wrong_calls_of_a_chapter_are_told_together(handbook: Handbook) -> None:
    text = '{{ term("a") }} {{ term("b") }}\n\n{{ rule("c") }}'
    found = [(one.name, one.place.line, one.place.column) for one in told(handbook, text)]
    assert found == [
        ("unknown-term", 1, 4), ("unknown-term", 1, 20), ("unknown-rule-called", 3, 4)
    ]  # fmt: skip


def test_nothing_of_the_machine_is_within_reach(handbook: Handbook) -> None:
    for name in ("range", "lipsum", "cycler", "open", "self", "desk"):
        (only,) = told(handbook, f"{{{{ {name} }}}}")
        assert only.name == "unknown-call"
