"""`pencilwood plan CASE`: the best pruning of a case, cut by cut, with reasons."""

from __future__ import annotations

import argparse
import json

from pencilwood.commands.help_page import HelpParser
from pencilwood.commands.telling import FINE
from pencilwood.site.single import open_case, plan_of
from pencilwood.words import say
from pencilwood.worksheets.case_papers import plan_passes


def add_arguments(parser: HelpParser) -> None:
    """What `plan` takes."""
    parser.add_argument("--json", action="store_true", help=parser.said("json"))
    parser.add_case()


def run(given: argparse.Namespace) -> int:
    """Print it."""
    opened = open_case(given.root, given.case, given.language)
    language, proof = given.language, opened.proof
    if given.json:
        print(json.dumps(plan_of(opened, language), ensure_ascii=False, indent=2))
        return FINE
    for one in plan_passes(proof, language):
        print(one["title"])
        for cut, tool, why in one["lines"]:
            print(f"  {cut}{tool and f' [{tool}]'}{why and f'; {why}'}")
    lost = "lost" if proof.plan.lost else "nothing-lost"
    print(say(language, f"pages.case.plan.{lost}", points=proof.plan.lost))
    return FINE
