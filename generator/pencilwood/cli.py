"""The `pencilwood` command. Exit status: 0 fine, 1 something was found, 2 wrong use.

Only the command that was named is loaded: `build` waits in memory as long as MkDocs works.
"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Sequence
from importlib import import_module
from pathlib import Path

from pencilwood.commands.argparse_words import argparse_in
from pencilwood.commands.help_page import HelpParser, asked_language, page
from pencilwood.commands.telling import FOUND, print_findings, refuse
from pencilwood.site.publish import NotOursError, mend
from pencilwood.site.trouble import NoSuchCaseError, UnusableCaseError, told_of
from pencilwood.words import LANGUAGES, MissingWordsError, say

_COMMANDS = {
    "start": "start",
    "check": "check",
    "build": "build",
    "preview": "preview",
    "case": "field",
    "draw": "draw",
    "measure": "measure",
    "plan": "plan",
    "winters": "winters",
    "print": "papers",
    "block": "block",
    "export": "export",
}
"""The module of each command, in the order in which a trainer meets them."""
_WITHOUT_HANDBOOK = ("start",)


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command and return its exit status."""
    for stream in (sys.stdout, sys.stderr):
        # A terminal of another encoding must not end the program at a Spanish letter.
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")
    typed = sys.argv[1:] if arguments is None else list(arguments)
    language = asked_language(typed)
    named = next((one for one in typed if one in _COMMANDS), "")
    try:
        with argparse_in(language):
            return _run(_parser(named, language).parse_args(typed))
    except MissingWordsError as error:
        return refuse(error.told)


def _run(given: argparse.Namespace) -> int:
    root: Path = given.root
    try:
        if not root.is_dir():
            return refuse(say(given.language, "cli.no-folder", folder=str(root)))
        mend(root / "site")
        return int(given.run(given))
    except NoSuchCaseError as error:
        return refuse(error.told)
    except UnusableCaseError as error:
        print_findings(error.findings, given.language)
        return FOUND
    except NotOursError as error:
        return refuse(say(given.language, "cli.not-ours", folder=str(error)))
    except OSError as error:
        return refuse(told_of(error, given.language))
    except KeyboardInterrupt:
        return 130


def _parser(named: str = "", language: str = LANGUAGES[0]) -> HelpParser:
    """Every command, with the arguments of the one that was named, or else of all."""
    parser = HelpParser(language, prog="pencilwood", **page(language, "pencilwood"))
    parser.add_language(LANGUAGES[0])
    commands = parser.add_subparsers(
        dest="command",
        required=True,
        title=parser.said("commands"),
        metavar=parser.metavar("command"),
    )
    for name, module in _COMMANDS.items():
        about = parser.said(f"{name}.about")
        one = commands.add_parser(name, help=about, language=language, **page(language, name))
        if named in (name, ""):
            _add_arguments(one, name, module)
    return parser


def _add_arguments(parser: HelpParser, name: str, module: str) -> None:
    if name not in _WITHOUT_HANDBOOK:
        parser.add_usual()
    own = import_module(f"pencilwood.commands.{module}")
    own.add_arguments(parser)
    parser.set_defaults(run=own.run)


if __name__ == "__main__":
    sys.exit(main())
