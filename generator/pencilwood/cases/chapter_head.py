"""Reads the head of a chapter: the lines between two rows of dashes at its top."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Literal

from pencilwood.cases.fields import Key, Table
from pencilwood.cases.kinds import Choice, Text, Whole
from pencilwood.cases.report import Report
from pencilwood.cases.yaml_nodes import parse_nodes
from pencilwood.findings import Finding
from pencilwood.places import Place

Audience = Literal["worker", "trainer"]

_AUDIENCES: dict[str, Audience] = {"worker": "worker", "trainer": "trainer"}
_RULE = re.compile(r"^---[ \t]*$", re.MULTILINE)

TITLE = Key("title", Text(longest=120), "Title of the page.")
FOR: Key[Audience] = Key("for", Choice(_AUDIENCES), "Who it is written for.")
ORDER = Key("order", Whole(0, 9999), "Its place among the chapters, smallest first.")
HEAD_TABLE = Table("The head of a chapter.", (TITLE, FOR, ORDER))


@dataclass(frozen=True)
class ChapterHead:
    """What a chapter says of itself, and where its text begins."""

    title: str
    audience: Audience
    order: int
    order_place: Place
    audience_place: Place
    body_from: int
    """Number of characters before the text."""


def has_head(text: str) -> bool:
    """Whether a text begins with a row of dashes."""
    return _RULE.match(text) is not None


def read_head(
    text: str, file: str, *, language: str = "en"
) -> tuple[ChapterHead | None, list[Finding]]:
    """The head of a chapter that has one, or None and every reason why it cannot be read."""
    report = Report(language)
    begin = _RULE.match(text)
    end = None if begin is None else _RULE.search(text, begin.end())
    if begin is None or end is None:
        report.add(Place(file), "head-without-end")
        return None, report.findings()
    root = parse_nodes(text[: end.start()], report, file)
    row = None if root is None else HEAD_TABLE.read(root, "", report)
    if row is None or report.errors:
        return None, report.findings()
    head = ChapterHead(
        title=row.need(TITLE),
        audience=row.need(FOR),
        order=row.need(ORDER),
        order_place=row.place_of(ORDER),
        audience_place=row.place_of(FOR),
        body_from=end.end(),
    )
    return head, report.findings()
