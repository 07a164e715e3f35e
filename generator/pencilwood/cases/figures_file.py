"""Reads `figures.yml`: the figures that chapters show, each with its source."""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path

from pencilwood.cases.fields import Key, Row, Schema, Table, one_value
from pencilwood.cases.kinds import Text, Words
from pencilwood.cases.named import Named
from pencilwood.cases.reference import Amount, Figure
from pencilwood.cases.report import Report, quoted
from pencilwood.cases.yaml_nodes import MapNode, Node, read_nodes
from pencilwood.findings import Finding
from pencilwood.units import UNIT_NAMES, US_UNIT_NAMES, UnitError, parse_length
from pencilwood.words import LANGUAGES, knows, say

_NUMBER = re.compile(r"([0-9]{1,9})([.,][0-9]{1,4})?( ?%)?")
_PERCENT = "%"


@dataclass(frozen=True)
class _Quantity:
    """A length with its unit, a number, or a number with a percent sign."""

    def read(self, node: Node, key: str, report: Report) -> tuple[Amount, str] | None:
        """The amount, and "%" where it carries one."""
        text = one_value(node, key, report)
        if text is None:
            return None
        match = _NUMBER.fullmatch(text)
        if match:
            number = Fraction(match[1] + (match[2] or "").replace(",", "."))
            return Amount(number, is_length=False), _PERCENT if match[3] else ""
        try:
            length = Fraction(parse_length(text))
            return Amount(length, is_length=True, is_us=text.endswith(US_UNIT_NAMES)), ""
        except UnitError:
            units = ", ".join(UNIT_NAMES)
            report.add(node.place, "not-a-figure", key=key, found=quoted(text), units=units)
            return None

    def schema(self) -> Schema:
        """A number, or text of the right form."""
        units = "|".join(("%", *UNIT_NAMES))
        pattern = rf"^[0-9]+([.,][0-9]+)?([ /0-9]*)({units})$"
        return {"anyOf": [{"type": "number"}, {"type": "string", "pattern": pattern}]}


@dataclass(frozen=True)
class _Unit:
    """What a number counts: a word that the program knows, or a word in each language."""

    def read(self, node: Node, key: str, report: Report) -> Mapping[str, str] | None:
        """The word by language."""
        if isinstance(node, MapNode):
            spoken = Words(80).read(node, key, report)
            return None if spoken is None else spoken.words
        text = one_value(node, key, report)
        if text is None:
            return None
        if knows(f"cases.unit.{text}"):
            return {language: say(language, f"cases.unit.{text}") for language in LANGUAGES}
        report.add(node.place, "unknown-counted", key=key, found=quoted(text))
        return None

    def schema(self) -> Schema:
        """A word, or a word in each language."""
        return {"anyOf": [{"type": "string"}, Words(80).schema()]}


NAME = Key("name", Words(80), "What the figure is of, for the list of sources.", False)
VALUE = Key("value", _Quantity(), "The figure, where it is one value.", False)
FROM = Key("from", _Quantity(), "The lower end, where it is a range.", False)
TO = Key("to", _Quantity(), "The upper end.", False)
UNIT = Key("unit", _Unit(), "What a number without a unit of length counts.", False)
SOURCE = Key("source", Text(), "Short name of the source, as in sources.yml.")
FIGURES = Named(
    "Every figure that chapters show, by a short name.",
    Table("One figure.", (NAME, VALUE, FROM, TO, UNIT, SOURCE)),
)


def read_figures(
    path: Path,
    source_keys: Collection[str],
    languages: Sequence[str] = LANGUAGES,
    shown_as: str | None = None,
    *,
    language: str = "en",
) -> tuple[Mapping[str, Figure], list[Finding]]:
    """The figures of a file that could be read, by name, and every slip in it."""
    report = Report(language, languages)
    root = read_nodes(path, report, shown_as)
    if root is None:
        return {}, report.findings()
    found: dict[str, Figure] = {}
    for key, row in FIGURES.read(root, report):
        figure = _figure(key, row, report)
        source = row.get(SOURCE)
        if source is not None:
            report.check_known(source, row.place_of(SOURCE), source_keys, "unknown-source")
        if figure is not None and row.sound:
            found[key] = figure
    return found, report.findings()


def _figure(key: str, row: Row, report: Report) -> Figure | None:
    ends = _ends(row, report)
    source = row.get(SOURCE)
    if ends is None or source is None:
        return None
    (low, low_sign), (high, high_sign) = ends
    unit = row.get(UNIT) or {}
    if low.is_length != high.is_length or low_sign != high_sign or low.number > high.number:
        report.add(row.place_of(TO), "ends-do-not-fit")
        return None
    if (low.is_length or low_sign) and unit:
        report.add(row.place_of(UNIT), "unit-twice")
        return None
    if low_sign:
        unit = dict.fromkeys(report.languages, low_sign)
    name = row.get(NAME)
    return Figure(key, row.place, low, high, unit, source, name.words if name else {})


def _ends(row: Row, report: Report) -> tuple[tuple[Amount, str], tuple[Amount, str]] | None:
    """Both ends of the figure; one value is both."""
    one, low, high = row.get(VALUE), row.get(FROM), row.get(TO)
    given = (row.has(VALUE), row.has(FROM), row.has(TO))
    if given not in ((True, False, False), (False, True, True)):
        report.add(row.place, "value-or-range")
        return None
    if one is not None:
        return one, one
    return None if low is None or high is None else (low, high)
