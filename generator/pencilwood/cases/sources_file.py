"""Reads `sources.yml`: everything that the handbook's figures and advice rest on."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path

from pencilwood.cases.cited import Cited
from pencilwood.cases.fields import Key, Row, Table
from pencilwood.cases.kinds import Choice, Text, Words
from pencilwood.cases.named import Named
from pencilwood.cases.reference import HowRead, Source, SourceKind
from pencilwood.cases.report import Report, quoted
from pencilwood.cases.yaml_nodes import read_nodes
from pencilwood.findings import Finding
from pencilwood.words import LANGUAGES

_KINDS: dict[str, SourceKind] = {
    "published": "published",
    "common practice": "common practice",
    "from memory": "from memory",
}
_LONGEST = 300
_READ: dict[str, HowRead] = {
    "read": "read",
    "second hand": "second hand",
    "not read": "not read",
    # What it was called at first; files that say so go on being read.
    "read-2nd": "second hand",
}


TITLE = Key("title", Cited(_LONGEST), "Author, title, publisher, year: as one cites it.")
KIND: Key[SourceKind] = Key("kind", Choice(_KINDS), "What sort of knowledge it is.")
READ: Key[HowRead] = Key("read", Choice(_READ), "Whether we saw the publisher's own text.")
URL = Key("url", Text("https?://[^\\s\"'<>]+", "not-an-address", 500), "Where it stands.", False)
NOTE = Key("note", Words(600), "A remark for readers, in each language.", False)
SOURCES = Named(
    "Every source of the handbook, by a short name.",
    Table("One source.", (TITLE, KIND, READ, URL, NOTE)),
)


def read_sources(
    path: Path,
    languages: Sequence[str] = LANGUAGES,
    shown_as: str | None = None,
    *,
    language: str = "en",
) -> tuple[Mapping[str, Source], list[Finding]]:
    """The sources of a file that could be read, by name, and every slip in it."""
    report = Report(language, languages)
    root = read_nodes(path, report, shown_as)
    if root is None:
        return {}, report.findings()
    found: dict[str, Source] = {}
    for key, row in SOURCES.read(root, report):
        _check_kind(row, report)
        if row.sound:
            found[key] = _source(key, row)
    return found, report.findings()


def _check_kind(row: Row, report: Report) -> None:
    """Custom and memory have nothing that could be read or looked up."""
    kind = row.get(KIND)
    if kind is None or kind == "published":
        return
    if row.get(READ) not in (None, "not read"):
        report.add(row.place_of(READ), "nothing-to-read", kind=quoted(kind))
    if row.has(URL):
        report.add(row.place_of(URL), "nothing-to-read", kind=quoted(kind))


def _source(key: str, row: Row) -> Source:
    note = row.get(NOTE)
    return Source(
        key=key,
        place=row.place,
        title=row.need(TITLE),
        kind=row.need(KIND),
        read=row.need(READ),
        url=row.get(URL) or "",
        note={} if note is None else note.words,
    )
