"""What argparse says by itself, in the language of the command.

It looks each of its sentences up by `gettext`, under two names that it keeps in its module; while
a command runs, these lead to our words.
"""

from __future__ import annotations

import argparse
import re
from collections.abc import Iterator, Mapping
from contextlib import contextmanager

from pencilwood.words import say

ARGPARSE_SAYS: Mapping[str, str] = {
    "usage: ": "usage",
    "positional arguments": "named",
    "options": "options",
    "show this help message and exit": "help",
    "argument %(argument_name)s: %(message)s": "of-argument",
    "the following arguments are required: %s": "required",
    "one of the arguments %s is required": "required-group",
    "expected one argument": "one",
    "expected at most one argument": "one",
    "expected at least one argument": "one",
    "expected %s argument": "some",
    "expected %s arguments": "some",
    "ignored explicit argument %r": "ignored",
    "ambiguous option: %(option)s could match %(matches)s": "ambiguous",
    "unrecognized arguments: %s": "unknown",
    "unexpected option string: %s": "unknown",
    "not allowed with argument %s": "not-with",
    "invalid %(type)s value: %(value)r": "value",
}
"""Its sentences, as its source has them, and the end of our key. Others stay as they are."""
_HOLE = re.compile(r"%(?:\((\w+)\))?([sr])")


@contextmanager
def argparse_in(language: str) -> Iterator[None]:
    """Let argparse say its own sentences in this language."""

    def translated(sentence: str) -> str:
        key = ARGPARSE_SAYS.get(sentence)
        return sentence if key is None else _with_holes(language, f"help.argparse.{key}", sentence)

    def one_or_many(one: str, many: str, number: int) -> str:
        return translated(one if number == 1 else many)

    ours = {"_": translated, "ngettext": one_or_many}
    theirs = {name: getattr(argparse, name) for name in ours}
    _set_in_argparse(ours)
    try:
        yield
    finally:
        _set_in_argparse(theirs)


def _set_in_argparse(functions: Mapping[str, object]) -> None:
    for name, function in functions.items():
        setattr(argparse, name, function)


def _with_holes(language: str, key: str, sentence: str) -> str:
    """Our sentence, with the holes of theirs that argparse fills afterwards."""
    facts = {}
    for name, kind in _HOLE.findall(sentence):
        hole = f"%({name})s" if name else "%s"
        facts[name or "it"] = f'"{hole}"' if kind == "r" else hole
    return say(language, key, **facts)
