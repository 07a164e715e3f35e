"""Syllables of words whose number is known."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from pencilwood.readability import syllables

FOLDER = Path(__file__).parent


def known(language: str) -> Iterator[tuple[str, int]]:
    text = (FOLDER / f"words.{language}.txt").read_text(encoding="utf-8")
    for line in text.splitlines():
        if not line.startswith("#"):
            count, words = line.split(":")
            yield from ((word, int(count)) for word in words.split())


@pytest.mark.parametrize("language", ["en", "es"])
def test_words_of_a_list(language: str) -> None:
    words = list(known(language))
    assert len(words) > 80
    wrong = [(word, n, syllables(word, language)) for word, n in words]
    assert [one for one in wrong if one[1] != one[2]] == []


def test_case_and_apostrophes_change_nothing() -> None:
    assert syllables("PRUNING", "en") == syllables("pruning", "en") == 2
    assert syllables("don't", "en") == syllables("don’t", "en") == 1
    assert syllables("vine's", "en") == 1
    assert syllables("ÁGUILA", "es") == 3


def test_a_numeral_has_a_syllable_for_each_digit() -> None:
    assert syllables("12", "en") == 2
    assert syllables("1.5", "en") == 2
    assert syllables("L3", "es") == 2


def test_every_word_has_a_syllable() -> None:
    assert syllables("cm", "en") == syllables("hmm", "es") == 1
