"""The plain text of a chapter: what a reader reads, without marks, links and drawings."""

from __future__ import annotations

import html
import re
from collections.abc import Iterator
from dataclasses import dataclass

from pencilwood.readability import Sentence, sentences

# No pattern here looks ahead for an end that may be missing, beyond the next beginning of its kind:
# a page of openings without an end would take minutes.
_FENCE = re.compile(r"^(```|~~~).*?^\1[^\n]*$", re.DOTALL | re.MULTILINE)
_CODE = re.compile(r"`[^`\n]*`")
_CALL = re.compile(r"\{\{[^{}]*\}\}")
_TAG = re.compile(r"<[^<>]*>")
_LINK_TO = re.compile(r"\]\((?:[^()\n]|\([^()\n]*\))*\)")
_NUMBERING = re.compile(r"^[ \t]*\d+[.)](?=\s)", re.MULTILINE)
_WOOD = re.compile(r"\b[LR]\d+[a-z]*\b")
_YEAR = re.compile(r"\b(?:19|20)\d\d\b")
_CLAUSE = re.compile(
    r"(?:\b\d+\s+)?\b(?:CFR|WAC|CCR|RCW|EN|ANSI|ISO|AS/NZS|OSHA)\s+[A-Z]?\d[\w.\-–()]*"
)
_FIGURE = re.compile(r"\d[\d.,/]*(?:\s?%)?")
_NO_PROSE = (_FENCE, _CODE, _TAG, _LINK_TO, _NUMBERING, _WOOD, _CLAUSE, _YEAR)
_COMMENT = ("<!--", "-->")
_CALLS = (("{{", "}}"), ("{%", "%}"), ("{#", "#}"))

_CITED = re.compile(r'<a class="pw-cite"[^<]*</a>')
_CAPTION = re.compile(r"<figcaption>([^<]*(?:<(?!/?figcaption>)[^<]*)*)</figcaption>")
_BLOCK_HTML = re.compile(r"<(figure|div|section|aside)\b")
_HEADING = re.compile(r"(#{1,6})[ \t]")
_LIST_ITEM = re.compile(r"[ \t]*(?:[-*+]|\d+[.)])[ \t]+")
_MARKS = re.compile(r"\*\*|__|(?<!\w)[*_]|[*_](?!\w)|^>[ \t]?")


@dataclass(frozen=True)
class TypedFigure:
    """A figure that somebody typed into the prose."""

    text: str
    line: int
    column: int


def typed_figures(text: str) -> Iterator[TypedFigure]:
    """Every figure in the prose of a chapter as it is written, calls and code aside."""
    for begin, end in (*_CALLS, _COMMENT):
        text = _without(text, begin, end)
    for pattern in _NO_PROSE:
        text = pattern.sub(_blank, text)
    for number, row in enumerate(text.split("\n"), start=1):
        for match in _FIGURE.finditer(row):
            yield TypedFigure(match[0].rstrip(".,"), number, match.start() + 1)


def _without(text: str, begin: str, end: str) -> str:
    """The text with each stretch between two marks blanked, in one go from its top."""
    kept: list[str] = []
    at = 0
    while (start := text.find(begin, at)) >= 0:
        stop = text.find(end, start + len(begin))
        if stop < 0:
            break
        stop += len(end)
        kept.extend((text[at:start], _spaces(text[start:stop])))
        at = stop
    return "".join((*kept, text[at:]))


def _spaces(text: str) -> str:
    """As many spaces, with the ends of lines kept."""
    return re.sub(r"[^\n]", " ", text)


def _blank(match: re.Match[str]) -> str:
    return _spaces(match[0])


def headings(text: str) -> tuple[int, ...]:
    """The levels of the headings, in their order."""
    rows = without_fences(text).split("\n")
    return tuple(len(match[1]) for row in rows if (match := _HEADING.match(row)))


@dataclass(frozen=True)
class Prose:
    """A paragraph, a list item or a caption, and the line it begins on."""

    text: str
    line: int


def prose(filled: str) -> Iterator[Prose]:
    """What there is to read in a chapter whose calls are filled in; headings and tables aside."""
    held: list[str] = []
    begun = 0
    rows = without_fences(filled).split("\n")
    for number, row in enumerate([*rows, ""], start=1):
        item = _LIST_ITEM.match(row)
        apart = not row.strip() or is_apart(row)
        if held and (apart or item):
            yield Prose(_plain("\n".join(held)), begun)
            held = []
        if _BLOCK_HTML.match(row.strip()):
            yield from (Prose(_plain(found[1]), number) for found in _CAPTION.finditer(row))
        elif not apart:
            begun = begun if held else number
            held.append(row[item.end() :] if item else row)


def without_fences(text: str) -> str:
    """The text with fenced code blanked, every line kept."""
    return _FENCE.sub(_blank, text)


def without_code(text: str) -> str:
    """The text with all code blanked, every sign at its place."""
    return _CODE.sub(_blank, without_fences(text))


def without_calls(text: str) -> str:
    """The text with every `{{ ... }}` blanked, every sign at its place."""
    return _CALL.sub(_blank, text)


def is_apart(row: str) -> bool:
    """Whether a line is no running text: a heading, a table's row, or a block of HTML."""
    text = row.strip()
    return bool(_HEADING.match(text) or text.startswith("|") or _BLOCK_HTML.match(text))


def _plain(text: str) -> str:
    text = _TAG.sub("", _without(_CITED.sub("", text), *_COMMENT))
    text = _LINK_TO.sub("", text).replace("![", "").replace("[", "")
    return html.unescape(_MARKS.sub("", _CODE.sub("", text)))


def read_sentences(filled: str) -> tuple[Sentence, ...]:
    """The sentences of a chapter, each with its line."""
    return tuple(
        Sentence(one.text, block.line + one.line - 1)
        for block in prose(filled)
        for one in sentences(block.text)
    )
