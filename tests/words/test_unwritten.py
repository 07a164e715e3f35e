"""A language that is not whole yet: what is missing is known, and told in one sentence."""

import json
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from pencilwood import cli, words
from pencilwood.commands.telling import WRONG_USE
from pencilwood.words import LANGUAGES, MissingWordsError, catalogue, say, unwritten


@pytest.fixture
def few_words(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """The second language lacks two sentences of the first."""
    written = {"part.a": "A", "part.b": "B", "part.c": "C"}
    first, second = LANGUAGES[:2]
    (tmp_path / f"part.{first}.json").write_text(json.dumps(written), "utf-8")
    (tmp_path / f"part.{second}.json").write_text('{"part": {"b": "Be"}}', "utf-8")
    monkeypatch.setattr(words, "_FOLDER", tmp_path)
    catalogue.cache_clear()
    yield
    catalogue.cache_clear()


@pytest.mark.usefixtures("few_words")
def test_what_is_missing_is_known() -> None:
    assert unwritten(LANGUAGES[0]) == ()
    assert unwritten(LANGUAGES[1]) == ("part.a", "part.c")


@pytest.mark.usefixtures("few_words")
def test_a_missing_sentence_says_where_it_belongs() -> None:
    with pytest.raises(MissingWordsError) as raised:
        say("es", "part.a")
    assert raised.value.told == "es: part.a is not written; expected it in words/*.es.json"


def test_every_language_is_whole() -> None:
    assert [one for one in LANGUAGES if unwritten(one)] == []


@pytest.mark.usefixtures("few_words")
def test_a_command_in_such_a_language_ends_with_a_sentence(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert cli.main(["build", "--root", str(tmp_path), "--language", "es"]) == WRONG_USE
    told = capsys.readouterr().err
    assert re.fullmatch(
        r"pencilwood: es: [\w.-]+ is not written; expected it in words/\*\.es\.json\n", told
    )
