"""`pencilwood plan CASE`: the best pruning of a case, cut by cut, with reasons."""

from __future__ import annotations

import argparse
import json

from pencilwood.commands.telling import FINE
from pencilwood.site.single import open_case, plan_of
from pencilwood.words import say


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """What `plan` takes."""
    parser.add_argument("--json", action="store_true", help="print JSON for a machine")
    parser.add_argument("case", metavar="CASE", help="short name of the case")


def run(given: argparse.Namespace) -> int:
    """Print it."""
    opened = open_case(given.root, given.case, given.language)
    plan = plan_of(opened, given.language)
    if given.json:
        print(json.dumps(plan, ensure_ascii=False, indent=2))
        return FINE
    for cut in plan["cuts"]:
        to = f" -> {cut['buds']}" if cut["buds"] is not None else ""
        print(
            f"{cut['pass']}: {cut['part']}{to} [{cut['tool']}] {' '.join(cut['reasons'])}".rstrip()
        )
    print(say(given.language, "cli.plan-lost", lost=plan["lost"]))
    return FINE
