"""What every chapter must meet beside being right: readable, explained, no figure typed by hand."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from pencilwood.pages.chapters.problems import Problems
from pencilwood.pages.chapters.prose import headings, read_sentences, typed_figures
from pencilwood.pages.handbook import Chapter
from pencilwood.readability import SCALES, Scale, Sentence, TextSize, measure

MOST_WORDS = 15.0
"""Words in a sentence of a page for workers, on average at most."""
_WORST = 3
_MOST_LOOKED_AT = 5_000_000
"""Letters that are looked at behind all opening brackets of a chapter: about a second's work."""


@dataclass(frozen=True)
class Reading:
    """How hard one chapter is to read."""

    chapter: str
    language: str
    audience: str
    size: TextSize

    @property
    def scale(self) -> Scale:
        """The scale of its language."""
        return SCALES[self.language]

    @property
    def score(self) -> float:
        """How hard it is on that scale."""
        return self.scale.score(self.size)

    @property
    def band(self) -> str:
        """What the scale calls this score, if it has a name for it."""
        return self.scale.band(self.score)


def reading_of(chapter: Chapter, filled: str) -> Reading | None:
    """The score of a chapter that has words, in a language that has a scale."""
    if chapter.language not in SCALES:
        return None
    size = measure(read_sentences(filled), chapter.language)
    if size is None or chapter.audience is None:
        return None
    return Reading(chapter.name, chapter.language, chapter.audience, size)


def check_readable(reading: Reading, filled: str, problems: Problems) -> None:
    """The gate of a worker's chapter; a finding names the sentences that weigh most."""
    spoken = read_sentences(filled)
    scale = reading.scale
    if scale.past_limit(reading.size) > 0:
        worst = _hardest(spoken, reading.language)
        facts = {"score": f"{reading.score:.1f}", "worst": _quoted(worst)}
        problems.add((worst[0].line, 1), scale.too_hard, limit=int(scale.limit), **facts)
    if reading.size.words_per_sentence > MOST_WORDS:
        worst = sorted(spoken, key=lambda one: -len(one.words))[:_WORST]
        facts = {"words": f"{reading.size.words_per_sentence:.1f}", "worst": _quoted(worst)}
        problems.add((worst[0].line, 1), "long-sentences", most=int(MOST_WORDS), **facts)


def _hardest(spoken: Sequence[Sentence], language: str) -> list[Sentence]:
    """Sentences that pull the score most, counted by their words."""

    def weight(one: Sentence) -> float:
        size = measure([one], language)
        return SCALES[language].past_limit(size) * size.words if size else 0.0

    return sorted(spoken, key=weight, reverse=True)[:_WORST]


def _quoted(worst: Sequence[Sentence]) -> str:
    return " / ".join(f'"{_short(one.text)}" ({one.line})' for one in worst)


def _short(text: str) -> str:
    return text if len(text) <= 90 else f"{text[:87]}..."


def check_typed(chapter: Chapter, problems: Problems) -> None:
    """No figure in the prose that a call could give."""
    for one in typed_figures(chapter.markdown):
        problems.add((one.line, one.column), "typed-number", found=one.text)


def check_brackets(chapter: Chapter, problems: Problems) -> None:
    """No paragraph over which the Markdown reader would brood: it looks for each bracket's end."""
    line, looked_at = 1, 0
    for paragraph in chapter.markdown.split("\n\n"):
        looked_at += paragraph.count("[") * len(paragraph)
        if looked_at > _MOST_LOOKED_AT:
            # Calls and texts before the paragraph are fine; its first bracket is shown.
            before = paragraph[: paragraph.index("[")].split("\n")
            problems.add((line + len(before) - 1, len(before[-1]) + 1), "many-brackets")
            return
        line += paragraph.count("\n") + 2


def differences(first: Chapter, other: Chapter) -> Iterator[str]:
    """In what two languages of one chapter differ where they must agree."""
    if first.audience != other.audience:
        yield "differs-for"
    if first.order != other.order:
        yield "differs-order"
    if headings(first.markdown) != headings(other.markdown):
        yield "differs-headings"


def same_order(chapters: Sequence[Chapter]) -> Iterator[tuple[Chapter, Chapter]]:
    """Neighbouring chapters of one reader that claim the same place."""
    in_order = sorted(chapters, key=lambda one: (one.audience or "", one.order, one.name))
    for one, after in pairwise(in_order):
        if one.audience and (one.audience, one.order) == (after.audience, after.order):
            yield one, after
