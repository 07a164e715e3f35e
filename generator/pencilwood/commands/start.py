"""`pencilwood start`: a new handbook in a folder of its own.

pencilwood start pruning --name "High Bank" --language es,en
"""

from __future__ import annotations

import argparse
import sys
from functools import partial
from pathlib import Path

from pencilwood.cases.profile_file import LONGEST_NAME, UNNAMED
from pencilwood.commands.help_page import OPTION, HelpParser
from pencilwood.site.starter import (
    CannotStartError,
    NotWrittenError,
    check_startable,
    put_in_place,
    starter_files,
)
from pencilwood.words import LANGUAGES, say

FINE, WRONG_USE = 0, 2
ALL = ("all", "both")
"""Both is what it was called while there were two."""


def add_arguments(parser: HelpParser) -> None:
    """What `start` takes; its languages are those of the handbook, and it speaks them too."""
    told, metavar = parser.said, parser.metavar
    parser.add_argument("folder", type=Path, metavar=metavar("folder"), help=told("start.folder"))
    parser.add_argument("--name", metavar=metavar("name"), help=told("start.name"))
    in_reverse = ",".join(reversed(LANGUAGES))
    parser.add_argument(
        OPTION,
        dest="languages",
        type=partial(_languages, parser),
        default=LANGUAGES,
        metavar=metavar("languages"),
        help=told("start.languages", known=", ".join(LANGUAGES), reversed=in_reverse),
    )
    parser.set_defaults(root=Path(), language=LANGUAGES[0])


def _languages(parser: HelpParser, text: str) -> tuple[str, ...]:
    """`es,en` as codes, each once."""
    asked = LANGUAGES if text in ALL else tuple(dict.fromkeys(text.split(",")))
    for code in asked:
        if code not in LANGUAGES:
            known = ", ".join((*LANGUAGES, ALL[0]))
            told = parser.said("start.no-language", found=code, known=known)
            raise argparse.ArgumentTypeError(told)
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
    except NotWrittenError as lacks:
        facts: dict[str, str | int] = {
            "language": lacks.language,
            "file": lacks.missing[0],
            "n": len(lacks.missing),
        }
        return _refuse(languages, "not-written", **facts)
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
