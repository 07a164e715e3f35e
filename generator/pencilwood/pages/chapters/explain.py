"""Marks each trade word where a worker's chapter uses it first, with its meaning and a link.

The writer may do so by `term(...)`; whatever the writer has left is marked here. Words that also
have an everyday meaning are marked by hand only (`mark: by hand` in glossary.yml).
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping

from markupsafe import Markup

from pencilwood.pages.chapters.prose import is_apart, without_fences
from pencilwood.pages.chapters.writing import Writing

# What a word cannot be marked in: links, tags, code.
_CLOSED = re.compile(
    r"<a\b[^<]*(?:<(?!/a>|a\b)[^<]*)*</a>|<[^<>]*>|!?\[[^\[\]]*\]\([^()]*\)|`[^`]*`"
)


def explain_words(writing: Writing, filled: str, link: Callable[[str, str], Markup]) -> str:
    """The text with a link (made from key and word) at the first use of each trade word."""
    words = _words(writing)
    if not words:
        return filled
    # Longer words first, so that a fruiting cane is not taken for a cane.
    by_length = sorted(words, key=len, reverse=True)
    either = re.compile(rf"\b(?:{'|'.join(map(re.escape, by_length))})\b", re.IGNORECASE)
    told = set(writing.terms)

    def mark(match: re.Match[str]) -> str:
        # A letter may match another of the same sound without being its small letter: a long s.
        key = words.get(match[0].lower())
        if key is None or key in told:
            return match[0]
        told.add(key)
        return str(link(key, match[0]))

    looked_at = without_fences(filled).split("\n")
    rows = filled.split("\n")
    for number, row in enumerate(looked_at):
        if row.strip() and not is_apart(row):
            rows[number] = _in_row(row, either, mark)
    return "\n".join(rows)


def _words(writing: Writing) -> Mapping[str, str]:
    """Every word that is marked without being asked for, in small letters, and its key."""
    found: dict[str, str] = {}
    for key, term in writing.desk.handbook.reference.terms.items():
        words = term.words[writing.chapter.language]
        if not term.by_hand:
            found.setdefault(words.word.lower(), key)
            found.setdefault(words.plural.lower(), key)
    return found


def _in_row(row: str, either: re.Pattern[str], mark: Callable[[re.Match[str]], str]) -> str:
    pieces: list[str] = []
    at = 0
    for closed in _CLOSED.finditer(row):
        pieces.extend((either.sub(mark, row[at : closed.start()]), closed[0]))
        at = closed.end()
    return "".join((*pieces, either.sub(mark, row[at:])))
