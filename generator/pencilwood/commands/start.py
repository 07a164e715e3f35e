"""`pencilwood start`: a new handbook in a folder of its own.

pencilwood start pruning --name "High Bank" --language es,en
"""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from pencilwood.cases.profile_file import LONGEST_NAME, UNNAMED
from pencilwood.findings import shown
from pencilwood.site.starter import CannotStartError, check_startable, put_in_place, starter_files
from pencilwood.words import LANGUAGES, say

FINE, WRONG_USE = 0, 2
ALL = ("all", "both")
"""Both is what it was called while there were two."""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """What `start` takes; its languages are those of the handbook, and it speaks them too."""
    parser.add_argument("folder", type=Path, metavar="DIR", help="folder to make")
    parser.add_argument("--name", help="name of the vineyard (it can be set later)")
    parser.add_argument(
        "--language",
        dest="languages",
        type=_languages,
        default=LANGUAGES,
        metavar="LANGUAGES",
        help=f"languages of the handbook, the one that opens first: {LANGUAGES[0]}, or "
        f"{','.join(reversed(LANGUAGES))}; all (the default)",
    )
    parser.set_defaults(root=Path(), language=LANGUAGES[0])


def _languages(text: str) -> tuple[str, ...]:
    """`es,en` as codes, each once."""
    asked = LANGUAGES if text in ALL else tuple(dict.fromkeys(text.split(",")))
    for code in asked:
        if code not in LANGUAGES:
            known = ", ".join((*LANGUAGES, ALL[0]))
            raise argparse.ArgumentTypeError(
                f'"{shown(code)}" is no language; expected some of {known}'
            )
    return asked


def run(given: argparse.Namespace) -> int:
    """Make the handbook, or say in each of its languages why not."""
    languages: tuple[str, ...] = given.languages
    given.language = languages[0]
    name = UNNAMED[languages[0]] if given.name is None else given.name.strip()
    if not name or len(name) > LONGEST_NAME or not name.isprintable():
        return _refuse(languages, "bad-name", most=LONGEST_NAME)
    try:
        folder = given.folder.resolve()
        check_startable(folder)
        put_in_place(starter_files(name, languages), folder)
    except CannotStartError as refused:
        return _refuse(languages, refused.reason, folder=str(refused.folder))
    for language in languages:
        print(say(language, "start.made", folder=str(folder)))
        print(say(language, "start.now", folder=str(given.folder)))
    return FINE


def _refuse(languages: tuple[str, ...], reason: str, **facts: str | int) -> int:
    for language in languages:
        print(f"pencilwood: {say(language, f'start.{reason}', **facts)}", file=sys.stderr)
    return WRONG_USE
