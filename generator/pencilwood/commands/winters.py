"""`pencilwood winters CASE`: the vine of a case pruned by two habits over three winters.

Where the case has an arm to be made new, the ways of doing that are followed instead.
"""

from __future__ import annotations

import argparse
import json
import sys

from pencilwood.commands.help_page import HelpParser
from pencilwood.proof.renewal import WAYS, Renewal, Story, steps_of
from pencilwood.proof.winters import PrunedWinter, Winters
from pencilwood.site.single import OpenedCase, open_case
from pencilwood.units import format_length
from pencilwood.vine.growth import NoWoodLeftError
from pencilwood.vine.model import Side
from pencilwood.vine.spur_choice import Stays
from pencilwood.words import say

FINE, FOUND = 0, 1


def add_arguments(parser: HelpParser) -> None:
    """What `winters` takes."""
    parser.add_case()
    parser.add_argument("--json", action="store_true", help=parser.said("json"))


def run(given: argparse.Namespace) -> int:
    """Prune the vine every way and print what each winter comes to."""
    opened = open_case(given.root, given.case, given.language)
    if opened.proof.case.renewed_arm is not None:
        return _new_arm(opened, opened.proof.case.renewed_arm, given)
    winters = Winters(opened.proof.case, opened.profile)
    try:
        by_habit = {stays: winters.by_habit(stays) for stays in Stays}
    except NoWoodLeftError:
        print(f"pencilwood: {say(given.language, 'cli.winters.nothing-left')}", file=sys.stderr)
        return FOUND
    if given.json:
        rows = {str(stays): _as_json(winters, years) for stays, years in by_habit.items()}
        print(json.dumps({"case": given.case, **rows}, ensure_ascii=False, indent=2))
        return FINE
    for stays, years in by_habit.items():
        print(say(given.language, f"pages.winters.habit.{stays}"))
        for number, year in enumerate(years, start=1):
            print(_row(opened, winters, number, year, given.language))
    return FINE


def _new_arm(opened: OpenedCase, side: Side, given: argparse.Namespace) -> int:
    """Print what each way of making an arm new comes to."""
    renewal = Renewal(opened.proof.case, opened.profile, side)
    ways = {name: way for name, way in WAYS.items() if renewal.can_go(way)}
    if given.json:
        rows = {name: _way_as_json(renewal, way) for name, way in ways.items()}
        print(json.dumps({"case": given.case, **rows}, ensure_ascii=False, indent=2))
        return FINE
    for name, way in ways.items():
        print(say(given.language, f"pages.renewal.way.{name}"))
        for number, row in enumerate(_way_as_json(renewal, way), start=1):
            bare = format_length(int(row["bare_mm"]), opened.profile.units, given.language)
            facts = {"n": number, "buds": row["buds"], "bare": bare}
            print(say(given.language, "cli.winters.new-arm-row", **facts))
    return FINE


def _way_as_json(renewal: Renewal, way: Story) -> list[dict[str, str | int | bool]]:
    return [
        {
            "winter": len(story),
            "work": str(story[-1]),
            "buds": renewal.worked(story).buds_on_side,
            "bare_mm": renewal.bare_mm(story),
            "renewed": renewal.is_renewed(story),
        }
        for story in steps_of(way)
    ]


def _row(
    opened: OpenedCase, winters: Winters, number: int, year: PrunedWinter, language: str
) -> str:
    units, most_mm = opened.profile.units, winters.limits["climb at most"]
    row = say(
        language,
        "cli.winters.row",
        n=number,
        climb=format_length(year.climb_mm, units, language),
        within=year.within(most_mm),
        spurs=len(winters.names),
        most=format_length(most_mm, units, language),
        score=year.score,
    )
    if not year.plan_lost:
        return row
    best = "pages.winters.row.best.one" if year.plan_lost == 1 else "pages.winters.row.best"
    return f"{row} {say(language, best, lost=year.plan_lost)}"


def _as_json(winters: Winters, years: tuple[PrunedWinter, ...]) -> list[dict[str, int]]:
    most_mm = winters.limits["climb at most"]
    return [
        {
            "winter": number,
            "climb_mm": year.climb_mm,
            "spurs_within_limit": year.within(most_mm),
            "score": year.score,
            "plan_lost": year.plan_lost,
        }
        for number, year in enumerate(years, start=1)
    ]
