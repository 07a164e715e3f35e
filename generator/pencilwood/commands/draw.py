"""`pencilwood draw CASE`: the vine of a case as an SVG file."""

from __future__ import annotations

import argparse
import sys

from pencilwood.commands.help_page import HelpParser
from pencilwood.commands.telling import FINE
from pencilwood.site.single import STATES, drawing_of, open_case


def add_arguments(parser: HelpParser) -> None:
    """What `draw` takes."""
    parser.add_argument(
        "--state",
        choices=STATES,
        default=STATES[0],
        metavar=parser.metavar("state"),
        help=parser.said("draw.state"),
    )
    parser.add_output_file()
    parser.add_case()


def run(given: argparse.Namespace) -> int:
    """Draw it."""
    opened = open_case(given.root, given.case, given.language)
    svg = drawing_of(opened, given.state, given.language)
    if given.output is None:
        sys.stdout.write(svg)
    else:
        given.output.write_text(svg, encoding="utf-8", newline="\n")
    return FINE
