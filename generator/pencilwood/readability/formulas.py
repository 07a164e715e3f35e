"""The published readability formulas, on counts of words, sentences and syllables.

All of them were made for running text of about a hundred words or more; on a few words they
swing widely, and Flesch's scale leaves its range of 0 to 100. They see neither how rare a word
is nor what a picture says.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class TextSize:
    """What the formulas count."""

    words: int
    sentences: int
    syllables: int

    @property
    def words_per_sentence(self) -> float:
        """How long a sentence is on average."""
        return self.words / self.sentences

    @property
    def syllables_per_word(self) -> float:
        """How long a word is on average."""
        return self.syllables / self.words


def flesch_reading_ease(size: TextSize) -> float:
    """English, R. Flesch: 100 is very easy, 0 very hard."""
    return 206.835 - 1.015 * size.words_per_sentence - 84.6 * size.syllables_per_word


def flesch_kincaid_grade(size: TextSize) -> float:
    """English, Flesch-Kincaid: the school grade that the text asks for, unrounded."""
    return 0.39 * size.words_per_sentence + 11.8 * size.syllables_per_word - 15.59


def szigriszt_pazos(size: TextSize) -> float:
    """Spanish, F. Szigriszt-Pazos 1993, on whose scale INFLESZ names its bands."""
    return 206.835 - 62.3 * size.syllables_per_word - size.words_per_sentence


def fernandez_huerta(size: TextSize) -> float:
    """Spanish, J. Fernández-Huerta 1959, as corrected by G. Law 2011.

    The formula is often printed with 0.60 times the syllables of one word instead of a hundred,
    or with sentences per hundred words in place of words per sentence. Both give nonsense.
    """
    return 206.84 - 60 * size.syllables_per_word - 1.02 * size.words_per_sentence


INFLESZ_BANDS = (
    # The lowest score that belongs to the band, and the band's name as published.
    (80.0, "muy fácil"),
    (65.0, "bastante fácil"),
    (55.0, "normal"),
    (40.0, "algo difícil"),
    (float("-inf"), "muy difícil"),
)


def inflesz_band(score: float) -> str:
    """The band of the INFLESZ scale (I. Barrio-Cantalejo and others, 2008)."""
    return next(name for lowest, name in INFLESZ_BANDS if score >= lowest)
