"""Reads the links and pictures that an author types as Markdown has them; the only reader of them.

Two things are looked at (`links`, `markup`): whether a link leads anywhere, and whether it may
stand there at all. The second must not overlook what a Markdown reader might take for a link, so
everything is read that could be one, and said of each whether it is one for certain.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

# Behind "](" of a link or a picture: in angles, where spaces may stand, or with pairs of brackets.
_INLINE = re.compile(r"\]\(\s*(?:<([^<>\n]*)>|<?\s*((?:[^()\s<>]|\([^()\s<>]*\))*))")
# Behind "[name]:" at the beginning of a line, also of a list's or a quotation's. For certain only
# with nothing else on the line but a title: "[note]: see below" is plain text.
_DEFINED = re.compile(
    r"^(?P<before>[ \t>*+.)\d-]*)\[(?P<name>[^\[\]]*)\]:\s*<?(?P<to>\S+)(?=[ \t]*(?:[\"'(]|$))"
    r"(?P<title>[ \t]*(?:(?:\"[^\n]*\"|'[^\n]*'|\([^\n]*\))[ \t]*)?$)?",
    re.MULTILINE,
)
_NAMED = re.compile(r"\](?:\s?\[([^\[\]]*)\])?(?!\()")
_BRACKET = re.compile(r"\\.|[\[\]]|\n[ \t]*\n")
_FOOTNOTE = "^"
_CODE_INDENTS = ("    ", "\t")


@dataclass(frozen=True)
class Link:
    """A link or a picture, at its place in the text."""

    at: int
    to: str
    """Where it leads, as it is typed."""
    is_picture: bool
    is_certain: bool
    """False where a Markdown reader may take it for plain text."""


def links_in(text: str) -> Iterator[Link]:
    """All that is or could be one, in no order."""
    begins = _begins(text)
    for link in _INLINE.finditer(text):
        at = begins.get(link.start(), link.start())
        is_picture = _is_picture(text, at)
        to = link[1] if link[1] is not None else link[2]
        yield Link(at - is_picture, to, is_picture, link.start() in begins and to != "")
    shown = {
        _one_case(named[1] or text[at + 1 : named.start()])
        for named in _NAMED.finditer(text)
        for at in (begins.get(named.start(), 0),)
        if _is_picture(text, at)
    }
    for named in _DEFINED.finditer(text):
        name = _one_case(named["name"])
        at = named.end("before")
        yield Link(at, named["to"].rstrip(">"), name in shown, _is_definition(named))


def line_and_column(text: str, at: int) -> tuple[int, int]:
    """Where a place in the text is, both counted from one."""
    before = text[:at].split("\n")
    return len(before), len(before[-1]) + 1


def _is_definition(named: re.Match[str]) -> bool:
    name_fits = named["name"] != "" and not named["name"].startswith(_FOOTNOTE)
    on_one_line = named["title"] is not None and "\n" not in named[0]
    return name_fits and on_one_line and not named["before"].startswith(_CODE_INDENTS)


def _begins(text: str) -> dict[int, int]:
    """Where each closing bracket of a paragraph was opened, in one go from its top."""
    found: dict[int, int] = {}
    opened: list[int] = []
    for mark in _BRACKET.finditer(text):
        if mark[0] == "[":
            opened.append(mark.start())
        elif mark[0] != "]":
            if "\n" in mark[0]:
                opened.clear()
        elif opened:
            found[mark.start()] = opened.pop()
    return found


def _is_picture(text: str, at: int) -> bool:
    return text[at : at + 1] == "[" and text[max(0, at - 1) : at] == "!"


def _one_case(name: str) -> str:
    return " ".join(name.lower().split())
