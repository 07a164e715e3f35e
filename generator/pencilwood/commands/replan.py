"""`pencilwood case replan CASE`: the computed plan takes the place of a case's answer.

For vines that came from elsewhere, or whose handbook changed its figures since.
"""

from __future__ import annotations

import argparse
from itertools import count
from pathlib import Path

from pencilwood.cases.case_writer import answer_entries
from pencilwood.cases.entries import with_entries
from pencilwood.cases.report import Report
from pencilwood.cases.yaml_nodes import MapNode, parse_nodes
from pencilwood.commands.telling import FINE, FOUND, print_findings
from pencilwood.findings import has_errors
from pencilwood.proof.draft import replan_case
from pencilwood.site.case_files import CASES
from pencilwood.site.single import open_case
from pencilwood.site.trouble import UnusableCaseError
from pencilwood.words import say


def replan(given: argparse.Namespace) -> int:
    """Write the case's file anew, keep the former one beside it, and prove what came of it."""
    opened = open_case(given.root, given.case, given.language)
    file: Path = given.root / CASES / f"{given.case}.yml"
    text = file.read_text(encoding="utf-8-sig")
    report = Report(given.language)
    root = parse_nodes(text, report, str(file))
    if not isinstance(root, MapNode):
        raise UnusableCaseError(tuple(report.findings()))
    case = replan_case(opened.proof.case, opened.profile)
    written = with_entries(text, root, answer_entries(case))
    kept = _free_name(file)
    kept.write_bytes(file.read_bytes())
    file.write_text(written, encoding="utf-8", newline="\n")
    print(say(given.language, "field.replanned", file=str(file), kept=kept.name))
    findings = open_case(given.root, given.case, given.language).proof.findings
    print_findings(findings, given.language)
    return FOUND if has_errors(findings) else FINE


def _free_name(file: Path) -> Path:
    """A name for the former file that the handbook does not read and that nothing has yet."""
    names = (file.with_name(f"{file.name}.before{n if n > 1 else ''}") for n in count(1))
    return next(name for name in names if not name.exists())
