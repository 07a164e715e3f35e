"""`pencilwood export`: exercises and quizzes as packages for a learning system."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Iterable, Sequence
from pathlib import Path

from pencilwood.commands.help_page import HelpParser
from pencilwood.findings import has_errors
from pencilwood.packages.package import Package
from pencilwood.site.exporting import CannotExportError, Packer, choose
from pencilwood.site.handbook import open_handbook
from pencilwood.site.qti import qti_packages
from pencilwood.site.scorm import scorm_packages
from pencilwood.site.trouble import UnusableCaseError
from pencilwood.words import say

FINE, WRONG_USE = 0, 2
_PACKERS: dict[str, Packer] = {
    "qti": qti_packages,
    "scorm": scorm_packages,
}
"""Each standard, with what makes its packages."""


def add_arguments(parser: HelpParser) -> None:
    """What `export` takes."""
    told, metavar = parser.said, parser.metavar
    parser.add_argument(
        "standard",
        choices=list(_PACKERS),
        metavar=metavar("standard"),
        help=told("export.standard"),
    )
    parser.add_argument("names", nargs="*", metavar=metavar("name"), help=told("export.names"))
    parser.add_argument("--all", action="store_true", help=told("export.all"))
    parser.add_output_folder("export.output")


def run(given: argparse.Namespace) -> int:
    """Make the packages that were asked for and say what each cannot carry."""
    language: str = given.language
    if bool(given.names) == given.all:
        return _refuse(say(language, "export.names-or-all"))
    opened = open_handbook(given.root, language)
    if opened.handbook is None or has_errors(opened.findings):
        raise UnusableCaseError(opened.findings)
    try:
        chosen = choose(opened.handbook, given.names, language)
        made = list(_PACKERS[given.standard](opened.handbook, chosen, language))
    except CannotExportError as error:
        return _refuse(error.told)
    if not made:
        return _refuse(say(language, "export.nothing", standard=given.standard))
    folder: Path = given.output or given.root / "packages"
    folder.mkdir(parents=True, exist_ok=True)
    for package in made:
        (folder / package.file_name).write_bytes(package.content)
    _tell(made, folder, language)
    return FINE


def _tell(made: Sequence[Package], folder: Path, language: str) -> None:
    """Name each file with what it cannot carry; what goes for all of them is said once."""
    everywhere = [note for note in made[0].notes if all(note in one.notes for one in made)]
    for package in made:
        print(say(language, "export.made", file=str(folder / package.file_name)))
        if len(made) > 1:
            _list(note for note in package.notes if note not in everywhere)
    if everywhere and len(made) > 1:
        print(say(language, "export.everywhere"))
    _list(everywhere)


def _list(notes: Iterable[str]) -> None:
    for note in notes:
        print(f"  - {note}")


def _refuse(told: str) -> int:
    print(f"pencilwood: {told}", file=sys.stderr)
    return WRONG_USE
