"""Reads `glossary.yml`: the trade words in every language of the handbook."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from functools import cache
from pathlib import Path

from pencilwood.cases.fields import Key, ListOf, Row, Table
from pencilwood.cases.kinds import Choice, Text
from pencilwood.cases.named import Named
from pencilwood.cases.reference import Term, TermWords
from pencilwood.cases.report import Report
from pencilwood.cases.yaml_nodes import read_nodes
from pencilwood.findings import Finding
from pencilwood.words import LANGUAGES

WORD = Key("word", Text(longest=60), "The word, as a page shows it.")
PLURAL = Key("plural", Text(longest=60), "The same for several.")
MEANING = Key("meaning", Text(longest=300), "What it means, in plain words.")
ALSO = Key("also", ListOf(Text(longest=80), 0, 20), "Other words for it, by region.", False)
WORD_TABLE = Table("A trade word in one language.", (WORD, PLURAL, MEANING, ALSO))
SOURCE = Key("source", Text(), "Short name of the source, as in sources.yml.")
MARK = Key(
    "mark",
    Choice({"by hand": True, "everywhere": False}),
    "Left out: the first use on a worker's page is marked. By hand: only where term() stands.",
    False,
)


@cache
def glossary(languages: tuple[str, ...]) -> Named:
    """The form of the file; a handbook may keep words of languages that it does not use yet."""
    keys = tuple(
        Key(one, WORD_TABLE, f"The word in this language ({one}).", one in languages)
        for one in LANGUAGES
    )
    return Named(
        "Every trade word, by a short name.", Table("One trade word.", (*keys, SOURCE, MARK))
    )


def read_glossary(
    path: Path,
    source_keys: Collection[str],
    languages: Sequence[str] = LANGUAGES,
    shown_as: str | None = None,
    *,
    language: str = "en",
) -> tuple[Mapping[str, Term], list[Finding]]:
    """The trade words of a file that could be read, by name, and every slip in it."""
    report = Report(language, languages)
    root = read_nodes(path, report, shown_as)
    if root is None:
        return {}, report.findings()
    found: dict[str, Term] = {}
    for key, row in glossary(tuple(languages)).read(root, report):
        source = row.get(SOURCE)
        if source is not None:
            report.check_known(source, row.place_of(SOURCE), source_keys, "unknown-source")
        if row.sound:
            found[key] = Term(
                key, row.place, dict(_words(row)), row.need(SOURCE), row.get(MARK) or False
            )
    return found, report.findings()


def _words(row: Row) -> Iterator[tuple[str, TermWords]]:
    for language in LANGUAGES:
        one = row.values.get(language)
        if isinstance(one, Row):
            also = tuple(placed.value for placed in one.get(ALSO) or ())
            words = TermWords(one.need(WORD), one.need(PLURAL), one.need(MEANING), also)
            yield language, words
