"""`pencilwood measure CASE`: the measures of a case, before pruning and after."""

from __future__ import annotations

import argparse
import json

from pencilwood.commands.help_page import HelpParser
from pencilwood.commands.telling import FINE
from pencilwood.site.single import measures_of, open_case
from pencilwood.words import say
from pencilwood.worksheets.measures_table import rows


def add_arguments(parser: HelpParser) -> None:
    """What `measure` takes."""
    parser.add_argument("--json", action="store_true", help=parser.said("json"))
    parser.add_case()


def run(given: argparse.Namespace) -> int:
    """Print them."""
    opened = open_case(given.root, given.case, given.language)
    if given.json:
        print(json.dumps(measures_of(opened), ensure_ascii=False, indent=2))
        return FINE
    for name, asked, before, answer, plan in rows(opened.proof, opened.profile, given.language):
        facts = {"name": name, "before": before, "answer": answer, "plan": plan}
        if asked:
            print(say(given.language, "cli.measure.asked", asked=asked, **facts))
        else:
            print(say(given.language, "cli.measure.row", **facts))
    return FINE
