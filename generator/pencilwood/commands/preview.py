"""`pencilwood preview`: the pages while somebody writes. Little is loaded here, as in `build`."""

from __future__ import annotations

import argparse
import subprocess

from pencilwood.commands.help_page import HelpParser
from pencilwood.commands.telling import FOUND, print_findings, refuse
from pencilwood.site.publish import (
    CONFIG,
    make_room_for_chapters,
    mkdocs_command,
    mkdocs_environment,
)
from pencilwood.site.settings import look_at_settings
from pencilwood.words import say

_USUAL_ADDRESS = "127.0.0.1:8000"


def add_arguments(parser: HelpParser) -> None:
    """What `preview` takes."""
    parser.add_argument(
        "--address",
        default=_USUAL_ADDRESS,
        metavar=parser.metavar("address"),
        help=parser.said("preview.address", usual=_USUAL_ADDRESS),
    )


def run(given: argparse.Namespace) -> int:
    """Serve them until Ctrl-C."""
    if not (given.root / CONFIG).is_file():
        return refuse(say(given.language, "cli.no-config", file=str(given.root / CONFIG)))
    settings, findings = look_at_settings(given.root, given.language)
    if settings is None:
        print_findings(findings, given.language)
        return FOUND
    make_room_for_chapters(given.root)
    command = mkdocs_command(given.root, "serve", "--dev-addr", given.address)
    return subprocess.run(  # noqa: S603 - our own interpreter, and no shell
        command, env=mkdocs_environment(given.language), check=False
    ).returncode
