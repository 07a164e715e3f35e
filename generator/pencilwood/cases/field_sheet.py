"""Reads a measuring sheet that was typed into a spreadsheet: a CSV file becomes a vine.

Above are lines of a name and a value (`trunk thickness,55 mm`), then the line of headings, then
one line for each piece of wood. The cells are put together as the `vine:` block of a case would
be, and read by the same reader, so that the same findings come, each with its line.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from pencilwood.cases.csv_cells import Cell, Line, likely_separator, split_cells
from pencilwood.cases.field_columns import (
    COLUMNS,
    FORMER_WORDS,
    FRAME,
    WORDS,
    YEARS,
    spellings,
)
from pencilwood.cases.field_wood import Frame, Wood, vine_node
from pencilwood.cases.report import Report, quoted
from pencilwood.cases.source import read_text
from pencilwood.cases.vine_file import read_vine
from pencilwood.cases.vine_table import VINE
from pencilwood.findings import Finding
from pencilwood.places import Place
from pencilwood.units import UNIT_NAMES, UnitSystem
from pencilwood.vine.model import Vine
from pencilwood.words import LANGUAGES, say

LARGEST_SHEET_BYTES = 200_000
"""A line for each of the most pieces that a vine may have takes a third of it."""
_HEADING = re.compile(r"(?P<name>[^()]*)(\((?P<unit>[^()]*)\))?")
_BARE = re.compile(r"[0-9]+([.,][0-9]+)?|([0-9]+ +)?[0-9]+/[0-9]+")


@dataclass(frozen=True)
class _Heading:
    """A column or a line's name, and the unit of its bare numbers."""

    name: str
    unit: str


def read_field_sheet(
    path: Path,
    shown_as: str | None = None,
    *,
    language: str = "en",
    units: UnitSystem = "metric",
) -> tuple[Vine | None, list[Finding]]:
    """The vine of a CSV file, or None and every reason why it is none."""
    report = Report(language, units=units)
    file = shown_as or str(path)
    text = read_text(path, file, report, LARGEST_SHEET_BYTES)
    if text is None:
        return None, report.findings()
    lines = split_cells(text, file, likely_separator(text), report)
    start = next((number for number, line in enumerate(lines) if _is_headings(line)), None)
    if start is None:
        names = ", ".join(column.heading("metric", language) for column in COLUMNS)
        report.add(Place(file), "csv-no-headings", names=names)
        return None, report.findings()
    frame = dict(_frame(lines[:start], report))
    headings = _headings(lines[start], report)
    wood = [_wood(line, headings, report) for line in lines[start + 1 :]]
    vine = vine_of(Place(file), lines[start][0].place, frame, wood, report)
    return vine, report.findings()


def vine_of(
    file: Place, headings: Place, frame: Frame, wood: Sequence[Wood], report: Report
) -> Vine | None:
    """The vine that a sheet's lines describe, or None when findings say why there is none."""
    node = vine_node(file, headings, frame, wood, report)
    row = VINE.kind.read(node, "", report)
    read = None if row is None else read_vine(row, report)
    if report.errors or read is None or read.parts is None:
        return None
    return read.parts.vine


def _is_headings(line: Line) -> bool:
    return _heading(line[0].text, spellings("field.column", ["position"])) is not None


def _heading(text: str, known: dict[str, str]) -> _Heading | None:
    match = _HEADING.fullmatch(text)
    name = known.get(" ".join(match["name"].lower().split())) if match else None
    if match is None or name is None:
        return None
    unit = (match["unit"] or "").strip().lower()
    years = [say(language, "field.years") for language in LANGUAGES]
    return _Heading(name, YEARS if unit in years else unit)


def _frame(lines: Sequence[Line], report: Report) -> Iterator[tuple[str, tuple[Cell, ...]]]:
    """The lines above the headings: a name, and the cells with what it is."""
    known = spellings("field.frame", FRAME)
    given: dict[str, Place] = {}
    for line in lines:
        heading = _heading(line[0].text, known)
        if heading is None:
            hint = report.hint(line[0].text, known)
            report.add(line[0].place, "csv-unknown-line", found=quoted(line[0].text), hint=hint)
        elif heading.name in given:
            first = given[heading.name].line
            report.add(line[0].place, "csv-twice", found=quoted(line[0].text), line=first)
        else:
            given[heading.name] = line[0].place
            yield heading.name, tuple(_cell(cell, heading) for cell in line[1:] if cell.text)


def _headings(line: Line, report: Report) -> list[_Heading | None]:
    known = spellings("field.column", [column.name for column in COLUMNS])
    headings: list[_Heading | None] = []
    given: dict[str, Place] = {}
    for cell in line:
        heading = _heading(cell.text, known)
        if heading is None and cell.text:
            hint = report.hint(cell.text, known)
            report.add(cell.place, "csv-unknown-column", found=quoted(cell.text), hint=hint)
        elif heading is not None and heading.name in given:
            first = given[heading.name].line
            report.add(cell.place, "csv-twice", found=quoted(cell.text), line=first)
        elif heading is not None and heading.unit not in ("", YEARS, *UNIT_NAMES):
            units = ", ".join(UNIT_NAMES)
            report.add(cell.place, "csv-unknown-unit", found=quoted(heading.unit), units=units)
        if heading is not None:
            given.setdefault(heading.name, cell.place)
        headings.append(heading)
    return headings


def _wood(line: Line, headings: Sequence[_Heading | None], report: Report) -> Wood:
    """The cells of one line by column, words in English and numbers with their units."""
    cells: dict[str, Cell] = {}
    for number, cell in enumerate(line):
        heading = headings[number] if number < len(headings) else None
        if cell.text and heading is None:
            report.add(cell.place, "csv-no-heading-here", found=quoted(cell.text))
        elif cell.text and heading is not None:
            cells.setdefault(heading.name, _cell(cell, heading))
    return Wood(line[0].place, cells)


def _cell(cell: Cell, heading: _Heading) -> Cell:
    text = cell.text
    if heading.unit and _BARE.fullmatch(text):
        text = f"{text} {heading.unit}"
    if heading.name in WORDS:
        known = {**FORMER_WORDS, **spellings("field.word", WORDS[heading.name])}
        text = known.get(text.lower(), text)
    return Cell(cell.place, text)
