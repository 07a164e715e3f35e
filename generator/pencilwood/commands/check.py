"""`pencilwood check`: every proof of the handbook, all findings together."""

from __future__ import annotations

import argparse
import json
from pathlib import PurePosixPath

from pencilwood.commands.help_page import HelpParser
from pencilwood.commands.telling import FINE, FOUND, print_findings
from pencilwood.findings import has_errors
from pencilwood.site.case_files import CASES
from pencilwood.site.chapter_report import chapter_report, chapters_as_json
from pencilwood.site.handbook import Opened, open_handbook
from pencilwood.site.quiz_report import quiz_report, quizzes_as_json
from pencilwood.site.workers import collect_rarely
from pencilwood.words import say

_UNSUITED = frozenset({"no-reason-given", "answer-fails", "answer-breaks-must"})
"""What is found of an answer when the handbook's figures are no longer those it was made by."""


def add_arguments(parser: HelpParser) -> None:
    """What `check` takes."""
    parser.add_argument("--json", action="store_true", help=parser.said("json"))
    for what in ("chapters", "quizzes"):
        parser.add_argument(f"--{what}", action="store_true", help=parser.said(f"check.{what}"))


def run(given: argparse.Namespace) -> int:
    """Prove all of it and print what was found."""
    collect_rarely()
    opened = open_handbook(given.root, given.language)
    if given.json:
        print(json.dumps(_as_json(opened), ensure_ascii=False, indent=2))
    else:
        print_findings(opened.findings, given.language)
        if given.chapters:
            print(*chapter_report(opened, given.language), sep="\n")
        if given.quizzes:
            print(*quiz_report(opened, given.language), sep="\n")
        print(_summary(opened, given.language))
    return FOUND if has_errors(opened.findings) else FINE


def _as_json(opened: Opened) -> dict[str, object]:
    return {
        "fine": not has_errors(opened.findings),
        "findings": [finding.as_json() for finding in opened.findings],
        "cases": [
            {
                "case": proof.case.slug,
                "plan_lost": proof.plan.lost,
                "answer_score": proof.answer_score,
                "random_tries": proof.luck.tries,
                "random_passes": proof.luck.passes,
                "lucky_pass_interval": list(proof.luck.interval),
                "habit_scores": dict(proof.habit_scores),
            }
            for proof in opened.proofs
        ],
        "chapters": chapters_as_json(opened),
        "quizzes": quizzes_as_json(opened),
    }


def _summary(opened: Opened, language: str) -> str:
    errors = sum(finding.level == "error" for finding in opened.findings)
    if errors:
        unsuited = sorted(
            PurePosixPath(one.place.file).stem
            for one in opened.findings
            if one.name in _UNSUITED and one.place.file.startswith(f"{CASES}/")
        )
        hint = [say(language, "cli.replan", case=unsuited[0])] if unsuited else []
        return "\n".join([*hint, say(language, "cli.found", n=errors)])
    return say(language, "cli.fine", cases=len(opened.proofs), warnings=len(opened.findings))
