"""Every sentence the program says, in each language, under one key.

The words stand in JSON files beside this one: `en.json` and `es.json` for what everybody uses,
`cases.en.json` and `cases.es.json` for one part of the program. They may be nested; the names
on the way join with dots: `{"cases": {"no-unit": {"what": "..."}}}` is `cases.no-unit.what`.
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from functools import cache
from pathlib import Path

from pencilwood.words.languages import LANGUAGES as LANGUAGES

_FOLDER = Path(__file__).parent


class MissingWordsError(KeyError):
    """A sentence that the program wants to say and nobody has written."""

    @property
    def told(self) -> str:
        """What is missing, without the quotes of a key."""
        return str(self.args[0])


@cache
def catalogue(language: str) -> Mapping[str, str]:
    """All sentences of one language by key; a key that two files give is an error."""
    words: dict[str, str] = {}
    for path in sorted(_FOLDER.glob(f"*{language}.json")):
        if path.name.split(".")[-2] != language:
            continue
        for key, sentence in _flat(json.loads(path.read_text(encoding="utf-8")), ""):
            if key in words:
                raise ValueError(f"{path.name}: {key} is written twice")
            words[key] = sentence
    return words


def knows(key: str, language: str = LANGUAGES[0]) -> bool:
    """Whether a sentence with this key is written."""
    return key in catalogue(language)


def unwritten(language: str) -> tuple[str, ...]:
    """Keys of the first language's sentences that are not written in this one."""
    return tuple(sorted(catalogue(LANGUAGES[0]).keys() - catalogue(language).keys()))


def fitting(key: str, own: str) -> str:
    """The key under which a sentence is written for something of its own, else the usual key."""
    special = f"{key}.{own}"
    return special if own and knows(special) else key


def say(language: str, key: str, /, **facts: str | int) -> str:
    """The sentence with this key, its placeholders filled from `facts`.

    Raises MissingWordsError when the sentence, or a fact that it names, is missing.
    """
    words = catalogue(language)
    if key not in words:
        raise MissingWordsError(
            f"{language}: {key} is not written; expected it in words/*.{language}.json"
        )
    try:
        return words[key].format_map(facts)
    except KeyError as missing:
        raise MissingWordsError(f"{language}: {key} names {missing}, which is not given") from None


def _flat(entry: object, key: str) -> Iterator[tuple[str, str]]:
    if isinstance(entry, dict):
        for name, inner in entry.items():
            yield from _flat(inner, f"{key}.{name}" if key else str(name))
    elif isinstance(entry, str):
        yield key, entry
    else:
        raise TypeError(f"{key}: words must be text")
