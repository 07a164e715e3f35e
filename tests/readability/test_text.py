"""Where sentences begin and end, and what counts as a word."""

import pytest

from pencilwood.readability import Sentence, measure, sentences


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        ("Cut low. Then stop.", ["Cut low.", "Then stop."]),
        ("Keep 1.5 m free. Go on.", ["Keep 1.5 m free.", "Go on."]),
        ("Is it sound? Keep it!", ["Is it sound?", "Keep it!"]),
        ("¿Está sana? ¡Déjela!", ["¿Está sana?", "¡Déjela!"]),
        ("Look at two things: age and health.", ["Look at two things:", "age and health."]),
        ("He said “stop.” Then he left.", ["He said “stop.”", "Then he left."]),
        # A list item or a line of a table ends where the next begins.
        ("Red wood\n\nGreen wood", ["Red wood", "Green wood"]),
        ("One line\ngoes on.", ["One line goes on."]),
        ("...", []),
        ("", []),
    ],
)
def test_sentences(text: str, parts: list[str]) -> None:
    assert [one.text for one in sentences(text)] == parts


def test_a_sentence_knows_its_line() -> None:
    text = "\n\nFirst one. Second\none. Third.\n\n\nFourth."
    assert [(one.text, one.line) for one in sentences(text)] == [
        ("First one.", 3), ("Second one.", 3), ("Third.", 4), ("Fourth.", 7)
    ]  # fmt: skip


def test_words_are_counted_as_written() -> None:
    assert Sentence("Don't cut L3a, 1.5 m up - yet.", 1).words == (
        "Don't", "cut", "L3a", "1.5", "m", "up", "yet"
    )  # fmt: skip


def test_a_text_without_words_has_no_size() -> None:
    assert measure("...", "en") is None
    assert measure([], "es") is None
