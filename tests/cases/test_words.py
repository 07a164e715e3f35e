"""The catalogue of sentences: the same keys and the same facts in every language."""

import ast
import re
from pathlib import Path
from string import Formatter

import pytest

from pencilwood import words
from pencilwood.words import LANGUAGES, MissingWordsError, catalogue, knows, say

# Also a language that is only being written: its files are here before the program speaks it.
WRITTEN = sorted({path.name.split(".")[-2] for path in Path(words.__file__).parent.glob("*.json")})
OTHERS = [language for language in WRITTEN if language != LANGUAGES[0]]
ALIKE = {
    "block.unit.m2/kg",
    "block.source.buds_per_spur",
    "pages.sums.source.smart-robinson",
}
"""Units and names of books, which are the same in every language."""


def facts(sentence: str) -> set[str]:
    return {name for _, name, _, _ in Formatter().parse(sentence) if name is not None}


@pytest.mark.parametrize("language", OTHERS)
def test_every_language_has_the_same_keys(language: str) -> None:
    missing = [key for key in catalogue("en") if key not in catalogue(language)]
    unknown = [key for key in catalogue(language) if key not in catalogue("en")]
    assert (missing, unknown) == ([], [])


def test_the_languages_that_are_spoken_are_written() -> None:
    assert set(LANGUAGES) <= set(WRITTEN)


@pytest.mark.parametrize("language", OTHERS)
def test_every_language_names_the_same_facts(language: str) -> None:
    different = [
        key
        for key, sentence in catalogue("en").items()
        if facts(sentence) != facts(catalogue(language).get(key, sentence))
    ]
    assert different == []


def words_in(sentence: str) -> list[str]:
    return re.findall(r"[^\W\d_]{2,}", re.sub(r"\{[^}]*\}", "", sentence))


@pytest.mark.parametrize("language", OTHERS)
def test_no_sentence_is_left_as_it_was_copied(language: str) -> None:
    copied = [
        key
        for key, sentence in catalogue("en").items()
        if len(words_in(sentence)) > 1 and catalogue(language).get(key) == sentence
    ]
    assert set(copied) <= ALIKE, copied


@pytest.mark.parametrize("language", WRITTEN)
def test_no_sentence_is_empty_or_breaks_a_line_of_findings(language: str) -> None:
    ours = {key: text for key, text in catalogue(language).items() if key.startswith("cases.")}
    assert len(ours) > 100
    assert [key for key, text in ours.items() if not text.strip() or "\n" in text] == []


def names_of_findings(call: ast.AST) -> set[str]:
    """The names that are written out in a call of `report.add` or `report.warn`."""
    if not isinstance(call, ast.Call) or not isinstance(call.func, ast.Attribute):
        return set()
    if call.func.attr not in ("add", "warn") or len(call.args) < 2:
        return set()
    inside = ast.walk(call.args[1])
    return {
        one.value for one in inside if isinstance(one, ast.Constant) and isinstance(one.value, str)
    }


def test_every_finding_of_the_readers_says_what_is_wrong(project: Path) -> None:
    """Each name that the readers pass to a report has its words."""
    named = set()
    for path in sorted((project / "generator/pencilwood/cases").glob("*.py")):
        for call in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            named |= names_of_findings(call)
    assert len(named) > 50
    assert [name for name in sorted(named) if not knows(f"cases.{name}.what")] == []


def test_facts_are_filled_in() -> None:
    said = say("en", "cases.did-you-mean", near="thickness")
    assert said == 'did you mean "thickness"?'
    # Braces in a trainer's own text are text.
    assert say("es", "cases.did-you-mean", near="{x}") == '¿quiso decir "{x}"?'


def test_a_missing_sentence_is_an_error() -> None:
    with pytest.raises(MissingWordsError, match=re.escape("en: cases.no-such-thing")):
        say("en", "cases.no-such-thing")


def test_a_missing_fact_is_an_error() -> None:
    with pytest.raises(MissingWordsError, match="near"):
        say("en", "cases.did-you-mean")
