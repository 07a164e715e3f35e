"""Sources, figures, trade words, heads of chapters: what they hold, and what is said of slips."""

from collections.abc import Callable
from fractions import Fraction
from pathlib import Path

import pytest

from case_files import lines
from chapter_files import FIGURES, GLOSSARY, SOURCES
from pencilwood.block.measures import POUND_G
from pencilwood.cases.chapter_head import read_head
from pencilwood.cases.figures_file import read_figures
from pencilwood.cases.glossary_file import read_glossary
from pencilwood.cases.profile_file import EMPLOYER_FIELDS, read_profile
from pencilwood.cases.sources_file import read_sources
from pencilwood.findings import Finding

KEYS = ("a-study", "our-habit")
PROFILE = "vineyard: A\nlanguages: [en, es]\nunits: metric\npass mark: 80\n"


def _sources(path: Path) -> list[Finding]:
    return read_sources(path, shown_as="f.yml")[1]


def _figures(path: Path) -> list[Finding]:
    return read_figures(path, KEYS, shown_as="f.yml")[1]


def _glossary(path: Path) -> list[Finding]:
    return read_glossary(path, KEYS, shown_as="f.yml")[1]


def written(folder: Path, text: str) -> Path:
    path = folder / "f.yml"
    path.write_text(text, encoding="utf-8")
    return path


def test_good_files(tmp_path: Path) -> None:
    sources, found = read_sources(written(tmp_path, SOURCES))
    assert found == []
    assert sources["a-study"].note["es"] == "La primera parte."
    assert sources["our-habit"].read == "not read"
    figures, found = read_figures(written(tmp_path, FIGURES), sources)
    assert found == []
    assert figures["hand-width"].low.number == 100
    assert not figures["hand-width"].is_range
    assert figures["spur-spacing"].high.number == 127
    assert figures["wounds-open"].unit == {"en": "days", "es": "días"}
    assert figures["dead-buds"].unit == {"en": "%", "es": "%"}
    assert figures["shoots"].low.number == Fraction(10)
    terms, found = read_glossary(written(tmp_path, GLOSSARY), sources)
    assert found == []
    assert terms["spur"].words["es"].also == ("pitón",)
    assert (terms["head"].by_hand, terms["spur"].by_hand) == (True, False)


def test_figures_of_our_own_follow_from_those_that_were_read(project: Path) -> None:
    content = project / "content"
    sources, _ = read_sources(content / "sources.yml")
    figures, found = read_figures(content / "figures.yml", sources)
    assert found == []
    gap_mm = figures["close-spurs"].low.number
    # As pages show the gap: in inches as it was read, or in whole centimetres.
    for shown_mm in (gap_mm, round(gap_mm, -1)):
        buds_per_m = 2 * 1000 / Fraction(shown_mm)
        # "About": to the nearest five.
        assert figures["close-spurs-density"].low.number == round(buds_per_m / 5) * 5
    assert figures["pound-of-prunings"].low.number == round(POUND_G / 1000, 4)


def test_what_was_seen_in_a_copy_is_read_under_its_old_name_too(tmp_path: Path) -> None:
    text = "".join(
        f"{name}: {{title: x, kind: published, read: {read}}}\n"
        for name, read in (("new", "second hand"), ("old", "read-2nd"))
    )
    sources, found = read_sources(written(tmp_path, text))
    assert found == []
    assert {one.read for one in sources.values()} == {"second hand"}


def test_a_title_may_hold_words_of_ours_in_each_language(tmp_path: Path) -> None:
    text = (
        "old: {title: {en: An old book, es: Un libro viejo}, kind: published, read: read}\n"
        "paper: {title: The paper, kind: published, read: read}\n"
    )
    sources, found = read_sources(written(tmp_path, text))
    assert found == []
    assert sources["old"].title.words == {"en": "An old book", "es": "Un libro viejo"}
    assert not sources["old"].title.as_printed
    assert sources["paper"].title.words == {"en": "The paper", "es": "The paper"}
    assert sources["paper"].title.as_printed


@pytest.mark.parametrize(
    ("read", "text", "said"),
    [
        (_sources, "[a, b]", "1:1: this file needs named entries"),
        (_sources, "A b: {title: x, kind: published, read: read}", "(not-a-slug)"),
        (_sources, "a: {title: x, kind: published}", "1:4: "),
        (_sources, "a: {title: {en: x}, kind: published, read: read}", "(missing-language)"),
        (_sources, "a: {title: x, kind: rumour, read: read}", "(not-a-choice)"),
        (_sources, "a: {title: x, kind: from memory, read: read}", "(nothing-to-read)"),
        (
            _sources,
            "a: {title: x, kind: common practice, read: not read, url: https://x.org}",
            "(nothing-to-read)",
        ),
        (_sources, "a: {title: x, kind: published, read: read, url: x.org}", "(not-an-address)"),
        (_sources, "a: {title: x, kind: published, read: read, note: {en: y}}", "es"),
        (_figures, "a: {value: 10 cm}", "(missing-key)"),
        (_figures, "a: {value: 10 cm, source: a-studi}", 'did you mean "a-study"?'),
        (_figures, "a: {value: ten, source: a-study}", "(not-a-figure)"),
        (_figures, "a: {from: 8 cm, source: a-study}", "(value-or-range)"),
        (_figures, "a: {value: 8 cm, to: 9 cm, source: a-study}", "(value-or-range)"),
        (_figures, "a: {from: 9 cm, to: 8 cm, source: a-study}", "(ends-do-not-fit)"),
        (_figures, "a: {from: 9 cm, to: 12, source: a-study}", "(ends-do-not-fit)"),
        (_figures, "a: {value: 9 cm, unit: days, source: a-study}", "(unit-twice)"),
        (_figures, "a: {value: 9, unit: moons, source: a-study}", "(unknown-counted)"),
        (_glossary, GLOSSARY.replace(", plural: spurs", ""), "(missing-key)"),
        (_glossary, GLOSSARY.replace("  es: {word: vara", "  fr: {word: vara"), "(unknown-key)"),
        (_glossary, GLOSSARY.replace("mark: by hand", "mark: never"), "(not-a-choice)"),
        (_glossary, GLOSSARY.replace("source: our-habit", "source: habit"), "(unknown-source)"),
    ],
)
def test_slips(tmp_path: Path, read: Callable[[Path], list[Finding]], text: str, said: str) -> None:
    found = lines(read(written(tmp_path, text)))
    assert any(said in line for line in found), found
    assert all(line.startswith("f.yml:") for line in found)


def test_head_of_a_chapter() -> None:
    text = "---\ntitle: Ladders\nfor: worker\norder: 150\n---\nText.\n"
    head, found = read_head(text, "a.md")
    assert found == []
    assert head is not None
    assert (head.title, head.audience, head.order) == ("Ladders", "worker", 150)
    assert text[head.body_from :] == "\nText.\n"
    assert head.order_place.line == 4


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("---\ntitle: x\n", "a.md:1:1: the head of this chapter has no end"),
        ("---\ntitle: x\nfor: everyone\norder: 1\n---\n", "a.md:3:6: "),
        ("---\ntitle: x\nfor: worker\n---\n", "(missing-key)"),
        ("---\ntitle: x\nfor: worker\norder: first\n---\n", "a.md:4:8: "),
        ("---\ntitle: x\nfor: worker\norder: 1\nauthor: me\n---\n", "(unknown-key)"),
    ],
)
def test_slips_in_the_head(text: str, said: str) -> None:
    head, found = read_head(text, "a.md")
    assert head is None
    assert any(said in line for line in lines(found)), lines(found)


def test_what_the_employer_settles(tmp_path: Path) -> None:
    in_each = "break every: {en: every two hours, es: cada dos horas}"
    settled = f"employer: {{distance between workers: 3 m, first aider: Ana, {in_each}}}\n"
    profile, found = read_profile(written(tmp_path, PROFILE + settled), ())
    assert found == []
    assert profile is not None
    assert profile.employer == {
        "distance between workers": 3000,
        "first aider": dict.fromkeys(profile.languages, "Ana"),
        "break every": {"en": "every two hours", "es": "cada dos horas"},
    }


@pytest.mark.parametrize(
    ("settled", "name"),
    [
        ("employer: {distance between workers: 3}\n", "no-unit"),
        ("employer: {first aid: Ana}\n", "unknown-key"),
        ("employer: {break every: [a, b]}\n", "not-one-value"),
    ],
)
def test_slips_in_what_the_employer_settles(tmp_path: Path, settled: str, name: str) -> None:
    profile, found = read_profile(written(tmp_path, PROFILE + settled), ())
    assert profile is None
    assert [one.name for one in found] == [name]


def test_the_fields_have_words(tmp_path: Path) -> None:
    assert len(EMPLOYER_FIELDS) == 8
