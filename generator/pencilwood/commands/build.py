"""`pencilwood build`: the site. Little is loaded here, since it waits in memory for MkDocs."""

from __future__ import annotations

import argparse
import sys
from importlib import import_module
from pathlib import Path

from pencilwood.commands.help_page import HelpParser
from pencilwood.commands.telling import FINE, FOUND, refuse
from pencilwood.site.lock import BusyError
from pencilwood.site.publish import CONFIG, publish
from pencilwood.words import say
from pencilwood.worksheets.typeset import HAND_SIZES

_PACKING = "pencilwood.commands.packing"
_PAPERING = "pencilwood.commands.papering"


def add_arguments(parser: HelpParser) -> None:
    """What `build` takes."""
    for name, kind in (("site", "folder"), ("zip", "file")):
        told = parser.said(f"build.{name}")
        parser.add_argument(f"--{name}", type=Path, metavar=parser.metavar(kind), help=told)
    parser.add_argument(
        "--papers",
        nargs="?",
        choices=HAND_SIZES,
        const=True,
        metavar=parser.metavar("size"),
        help=parser.said("build.papers"),
    )


def run(given: argparse.Namespace) -> int:
    """Check and build, and pack where that is asked for."""
    root = given.root
    if not (root / CONFIG).is_file():
        return refuse(say(given.language, "cli.no-config", file=str(root / CONFIG)))
    site: Path = given.site or root / "site"
    packing = import_module(_PACKING) if given.zip else None
    if packing and (refusal := packing.refusal(given.zip, root, site, given.language)):
        return refuse(refusal)
    papering = import_module(_PAPERING) if given.papers else None
    if papering and (refusal := papering.refusal(root, given.language)):
        return refuse(refusal)
    papers = papering.size(root, given.papers) if papering else ""
    try:
        published = publish(root, site, given.language, papers)
    except BusyError as error:
        print(say(given.language, "cli.busy", site=str(error)), file=sys.stderr)
        return FOUND
    if published.told:
        print(published.told, file=sys.stderr)
    if not published.succeeded:
        print(say(given.language, "cli.not-built", site=str(published.site)), file=sys.stderr)
        return FOUND
    print(say(given.language, "cli.built", page=str(published.site / "index.html")))
    if packing:
        print(packing.pack(published.site, given.zip, root, given.language))
    return FINE
