"""Splits a CSV file into cells that know where they stand, as a text editor counts."""

from __future__ import annotations

from dataclasses import dataclass

from pencilwood.cases.report import Report
from pencilwood.places import Place

SEPARATORS = (",", ";", "\t")
"""What spreadsheets put between cells; where the comma is for decimals it is a semicolon."""


@dataclass(frozen=True)
class Cell:
    """One cell, without the spaces around its text."""

    place: Place
    text: str


Line = tuple[Cell, ...]


def likely_separator(text: str) -> str:
    """The separator that comes most often; a comma when none does."""
    return max(SEPARATORS, key=text.count)


def split_cells(text: str, file: str, separator: str, report: Report) -> list[Line]:
    """The lines that hold anything; a finding for a quotation mark that is never closed."""
    return _Splitter(text.replace("\r\n", "\n").replace("\r", "\n"), file, separator).all(report)


class _Splitter:
    def __init__(self, text: str, file: str, separator: str) -> None:
        self.text = text
        self.file = file
        self.separator = separator
        self.at = 0
        self.line = 1
        self.line_start = 0

    def all(self, report: Report) -> list[Line]:
        lines: list[Line] = []
        while self.at < len(self.text):
            line = self._one_line(report)
            if any(cell.text for cell in line):
                lines.append(line)
        return lines

    def _one_line(self, report: Report) -> Line:
        cells = [self._cell(report)]
        while self.at < len(self.text) and self.text[self.at] == self.separator:
            self.at += 1
            cells.append(self._cell(report))
        self._step()
        return tuple(cells)

    def _cell(self, report: Report) -> Cell:
        while self.at < len(self.text) and self.text[self.at] == " ":
            self.at += 1
        place = Place(self.file, self.line, self.at - self.line_start + 1)
        if self.at < len(self.text) and self.text[self.at] == '"':
            return Cell(place, self._quoted(place, report).strip())
        start = self.at
        while self.at < len(self.text) and self.text[self.at] not in (self.separator, "\n"):
            self.at += 1
        return Cell(place, self.text[start : self.at].strip())

    def _quoted(self, place: Place, report: Report) -> str:
        """Text between quotation marks, two of which stand for one."""
        found = ""
        self.at += 1
        while self.at < len(self.text):
            sign = self.text[self.at]
            if sign == '"' and self.text[self.at + 1 : self.at + 2] != '"':
                self.at += 1
                return found + self._rest()
            found += sign
            if sign == '"':
                self.at += 1
            self._step()
        report.add(place, "open-quote")
        return found

    def _rest(self) -> str:
        """Whatever follows a closing mark before the cell ends."""
        start = self.at
        while self.at < len(self.text) and self.text[self.at] not in (self.separator, "\n"):
            self.at += 1
        return self.text[start : self.at]

    def _step(self) -> None:
        if self.text[self.at : self.at + 1] == "\n":
            self.line += 1
            self.line_start = self.at + 1
        self.at += 1
