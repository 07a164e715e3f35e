"""Reads the safety notes that cases call for by name."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path

from pencilwood.cases.case_keys import SLUG
from pencilwood.cases.cited import Cited
from pencilwood.cases.fields import Key, ListOf, Row, Table
from pencilwood.cases.kinds import Choice, Words
from pencilwood.cases.report import Report, quoted
from pencilwood.cases.safety import About, Advice, SafetyNote, Signal, Status
from pencilwood.cases.yaml_nodes import read_nodes
from pencilwood.findings import Finding
from pencilwood.words import LANGUAGES

_SIGNALS: dict[str, Signal] = {"danger": "danger", "warning": "warning", "caution": "caution"}
_ABOUT: dict[str, About] = {"tools": "tools", "ladders": "ladders", "you": "you"}
_STATUS: dict[str, Status] = {
    "read": "read",
    "read at second hand": "read at second hand",
    "common practice, no source": "common practice, no source",
    "from memory": "from memory",
}
_PUBLISHED = ("read", "read at second hand")

SAY = Key("say", Words(400), "The advice, in each language.")
STATUS: Key[Status] = Key("status", Choice(_STATUS), "How well we know it.")
SOURCE = Key("source", Cited(200), "Who published it, where somebody did.", False)
ADVICE_ROW = Table("One piece of advice.", (SAY, STATUS, SOURCE))

NOTE = Key("note", SLUG, "Short name, by which cases call for the note.")
SIGNAL: Key[Signal] = Key("signal", Choice(_SIGNALS), "How badly one can get hurt.")
ABOUT: Key[About] = Key("about", Choice(_ABOUT), "Where on the safety page it stands.")
TITLE = Key("title", Words(120), "Title in each language.")
ADVICE = Key("advice", ListOf(ADVICE_ROW, 1, 20), "What to do, one thing at a time.")
NOTE_ROW = Table("One safety note.", (NOTE, SIGNAL, ABOUT, TITLE, ADVICE))

NOTES = Key("notes", ListOf(NOTE_ROW, 1, 100), "Every safety note.")
SAFETY_TABLE = Table("The safety notes of the handbook.", (NOTES,))


def read_safety(
    path: Path,
    languages: Sequence[str] = LANGUAGES,
    shown_as: str | None = None,
    *,
    language: str = "en",
) -> tuple[tuple[SafetyNote, ...], list[Finding]]:
    """The safety notes of a file that could be read, and every slip in it."""
    report = Report(language, languages)
    root = read_nodes(path, report, shown_as)
    row = None if root is None else SAFETY_TABLE.read(root, "", report)
    if row is None:
        return (), report.findings()
    return tuple(_notes(row, report)), report.findings()


def _notes(row: Row, report: Report) -> Iterator[SafetyNote]:
    lines: dict[str, int] = {}
    for placed in row.get(NOTES) or ():
        one = placed.value
        name = one.get(NOTE)
        if name in lines:
            line = lines[name]
            report.add(one.place_of(NOTE), "named-twice", name=quoted(name), line=line)
        elif name is not None:
            lines[name] = one.place_of(NOTE).line
        errors = report.errors
        advice = tuple(_advice(one, report))
        if one.sound and report.errors == errors:
            yield SafetyNote(
                name=one.need(NOTE),
                signal=one.need(SIGNAL),
                about=one.need(ABOUT),
                title=one.need(TITLE).words,
                advice=advice,
                place=one.place,
            )


def _advice(note: Row, report: Report) -> Iterator[Advice]:
    for placed in note.get(ADVICE) or ():
        one = placed.value
        status, source = one.get(STATUS), one.get(SOURCE)
        if status in _PUBLISHED and not one.has(SOURCE):
            report.add(one.place_of(STATUS), "status-without-source", status=quoted(status))
        if status is not None and status not in _PUBLISHED and one.has(SOURCE):
            report.add(one.place_of(SOURCE), "source-without-status", status=quoted(status))
        if one.sound:
            yield Advice(one.need(SAY).words, one.need(STATUS), source)
