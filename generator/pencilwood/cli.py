"""The `pencilwood` command. Exit status: 0 fine, 1 something was found, 2 wrong use.

Only the command that was named is loaded: `build` waits in memory as long as MkDocs works.
"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Sequence
from importlib import import_module
from pathlib import Path

from pencilwood.commands.telling import FOUND, print_findings, refuse
from pencilwood.site.publish import NotOursError, mend
from pencilwood.site.trouble import NoSuchCaseError, UnusableCaseError, told_of
from pencilwood.words import LANGUAGES, MissingWordsError, say

_COMMANDS = (
    ("check", "check", "Prove all of the handbook; build nothing."),
    ("build", "build", "Check, then build the site."),
    ("preview", "preview", "Show the pages on this machine while you write; Ctrl-C ends it."),
    ("draw", "draw", "Draw the vine of a case as an SVG file."),
    ("measure", "measure", "Print the measures of a case."),
    ("plan", "plan", "Print the best pruning of a case, cut by cut, with reasons."),
    ("start", "start", "Make a new handbook in a folder of its own."),
    ("case", "field", "Make a case of a vine measured in the row."),
    ("print", "papers", "Make papers for the workshop as PDFs."),
    ("block", "block", "Work out buds, crop, hours and more."),
    ("export", "export", "Make packages for a learning system."),
    ("winters", "winters", "Follow a vine over three winters, pruned in two ways."),
)
"""Name, module and what it is for."""
_WITHOUT_HANDBOOK = ("start",)


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command and return its exit status."""
    for stream in (sys.stdout, sys.stderr):
        # A terminal of another encoding must not end the program at a Spanish letter.
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")
    typed = sys.argv[1:] if arguments is None else list(arguments)
    given = _parser(typed[0] if typed else "").parse_args(typed)
    root: Path = given.root
    try:
        if not root.is_dir():
            return refuse(say(given.language, "cli.no-folder", folder=str(root)))
        mend(root / "site")
        return int(given.run(given))
    except (NoSuchCaseError, MissingWordsError) as error:
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


def _parser(named: str = "") -> argparse.ArgumentParser:
    """Every command, with the arguments of the one that was named, or else of all."""
    parser = argparse.ArgumentParser(
        prog="pencilwood", description="Checks, plans, draws and builds a pruning handbook."
    )
    commands = parser.add_subparsers(dest="command", required=True, metavar="COMMAND")
    is_known = any(named == name for name, _, _ in _COMMANDS)
    for name, module, about in _COMMANDS:
        one = commands.add_parser(name, help=about, description=about)
        if named == name or not is_known:
            _add_arguments(one, name, module)
    return parser


def _add_arguments(parser: argparse.ArgumentParser, name: str, module: str) -> None:
    if name not in _WITHOUT_HANDBOOK:
        parser.add_argument("--root", type=Path, default=Path(), help="folder of the handbook")
        parser.add_argument(
            "--language", choices=LANGUAGES, default="en", help="language of what is printed"
        )
    own = import_module(f"pencilwood.commands.{module}")
    own.add_arguments(parser)
    parser.set_defaults(run=own.run)


if __name__ == "__main__":
    sys.exit(main())
