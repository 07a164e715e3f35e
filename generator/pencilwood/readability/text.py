"""Counts the sentences, words and syllables of plain text."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass

from pencilwood.readability.english import english_syllables
from pencilwood.readability.formulas import TextSize
from pencilwood.readability.spanish import spanish_syllables

_WORD = re.compile(r"[^\W_]+(?:['’.,][^\W_]+)*")
# A full stop between digits (1.5) or before a small letter (e.g. this) ends nothing. A colon or a
# semicolon ends a sentence, as in R. Flesch's own counting rules (from memory).
_END = re.compile(
    r"(?<![.!?…:;])[.!?…:;]++[\"'”’»)\]]*+(?=\s+[^\Wa-záéíóúüñ]|\s*$|\s+[¿¡\"“«(])|[:;]\s"
)
_BY_LANGUAGE: Mapping[str, Callable[[str], int]] = {
    "en": english_syllables,
    "es": spanish_syllables,
}


@dataclass(frozen=True)
class Sentence:
    """One sentence and the line of the text it begins on, counted from 1."""

    text: str
    line: int

    @property
    def words(self) -> tuple[str, ...]:
        """Its words and numerals."""
        return tuple(_WORD.findall(self.text))


def syllables(word: str, language: str) -> int:
    """Syllables of a word; a numeral has one for each digit, as if it were read out so."""
    digits = sum(sign.isdigit() for sign in word)
    if not digits:
        return _BY_LANGUAGE[language](word)
    letters = "".join(sign for sign in word if sign.isalpha())
    return digits + (_BY_LANGUAGE[language](letters) if letters else 0)


def sentences(text: str) -> tuple[Sentence, ...]:
    """The sentences of a text; a blank line ends one as a full stop does."""
    found: list[Sentence] = []
    for block, line in _blocks(text):
        at = 0
        for end in [*(match.end() for match in _END.finditer(block)), len(block)]:
            piece = block[at:end]
            if _WORD.search(piece):
                lead = piece[: len(piece) - len(piece.lstrip())]
                before = block[:at].count("\n") + lead.count("\n")
                found.append(Sentence(" ".join(piece.split()), line + before))
            at = end
    return tuple(found)


def _blocks(text: str) -> Iterable[tuple[str, int]]:
    line = 1
    for block in re.split(r"(\n[ \t]*\n+)", text):
        if block.strip():
            yield block, line
        line += block.count("\n")


def measure(text: str | Iterable[Sentence], language: str) -> TextSize | None:
    """The counts of a text in one language; None when it has no word."""
    all_sentences = sentences(text) if isinstance(text, str) else tuple(text)
    words = [word for sentence in all_sentences for word in sentence.words]
    if not words:
        return None
    return TextSize(
        words=len(words),
        sentences=len(all_sentences),
        syllables=sum(syllables(word, language) for word in words),
    )
