"""`pencilwood measure CASE`: the measures of a case, before pruning and after."""

from __future__ import annotations

import argparse
import json

from pencilwood.commands.telling import FINE
from pencilwood.site.single import measures_of, open_case


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """What `measure` takes."""
    parser.add_argument("--json", action="store_true", help="print JSON for a machine")
    parser.add_argument("case", metavar="CASE", help="short name of the case")


def run(given: argparse.Namespace) -> int:
    """Print them."""
    opened = open_case(given.root, given.case, given.language)
    measures = measures_of(opened)
    if given.json:
        print(json.dumps(measures, ensure_ascii=False, indent=2))
    else:
        for name, value in measures["answer"].items():
            print(f"{name}: {measures['before'].get(name, '-')} -> {value}")
    return FINE
