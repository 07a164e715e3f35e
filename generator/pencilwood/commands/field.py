"""`pencilwood case`: a vine measured in the row becomes a case.

    pencilwood case from-csv row-seven.csv          a measuring sheet, typed into a spreadsheet
    pencilwood case new                             the same, question by question
    pencilwood case to-csv tidy-vine                back to a sheet, to measure it again
    pencilwood case replan tidy-vine                answered anew by the handbook's own figures

The new file is a whole case that passes its proofs where the vine lets it: the computed plan
stands for the answer until the trainer puts their own in.
"""

from __future__ import annotations

import argparse
import re
import sys
from collections.abc import Sequence
from dataclasses import asdict
from functools import partial
from pathlib import Path

from pencilwood.cases.case import Case, Profile
from pencilwood.cases.case_file import CaseSurroundings, read_case
from pencilwood.cases.case_keys import LEVEL_KIND, SLUG
from pencilwood.cases.case_writer import case_title, write_case
from pencilwood.cases.field_columns import SHEET_FORMS
from pencilwood.cases.field_sheet import read_field_sheet
from pencilwood.cases.field_writer import field_sheet
from pencilwood.commands.asking import StoppedError, Terminal
from pencilwood.commands.help_page import HelpParser, page
from pencilwood.commands.new_case import ask_vine
from pencilwood.commands.replan import replan
from pencilwood.findings import Finding, has_errors, in_order
from pencilwood.proof import CaseProof, prove_case
from pencilwood.proof.draft import draft_case
from pencilwood.proof.reached import usual_target
from pencilwood.rules import RULE_BY_NAME
from pencilwood.rules.wrong_tool import tool_for
from pencilwood.site.case_files import CASES
from pencilwood.site.handbook import all_safety_notes, own_profile
from pencilwood.site.single import open_case
from pencilwood.site.trouble import UnusableCaseError
from pencilwood.vine.model import Vine
from pencilwood.words import say

FINE, FOUND, WRONG_USE = 0, 1, 2


class _RefusedError(Exception):
    """Something that cannot be done, in the user's words."""


def add_arguments(parser: HelpParser) -> None:
    """What `case` takes."""
    told, metavar = parser.said, parser.metavar
    steps = parser.add_subparsers(
        dest="step", required=True, title=told("case.steps"), metavar=metavar("step")
    )

    def step(name: str) -> HelpParser:
        about, language = told(f"case.{name}.about"), parser.language
        one = steps.add_parser(
            name, help=about, language=language, **page(language, f"case.{name}")
        )
        # Also behind the step's name, where people write them.
        one.add_usual(root=argparse.SUPPRESS)
        return one

    from_csv, new = step("from-csv"), step("new")
    to_csv, replanned = step("to-csv"), step("replan")
    from_csv.add_argument(
        "file", type=Path, metavar=metavar("file"), help=told("case.from-csv.file")
    )
    for one in (from_csv, new):
        one.add_argument("--name", metavar=metavar("name"), help=told("case.name"))
    to_csv.add_case()
    replanned.add_case()
    to_csv.add_output_file()


def run(given: argparse.Namespace) -> int:
    """Take one of the steps."""
    steps = {"from-csv": _from_csv, "new": _new, "to-csv": _to_csv, "replan": replan}
    try:
        return steps[given.step](given)
    except _RefusedError as refused:
        return _refuse(str(refused))
    except StoppedError:
        return _refuse(say(given.language, "field.ask.stopped"))


def _from_csv(given: argparse.Namespace) -> int:
    profile = _profile(given)
    slug = _slug(given, given.name or _slug_of(given.file.stem))
    vine, findings = read_field_sheet(given.file, language=given.language, units=profile.units)
    if vine is None:
        raise UnusableCaseError(tuple(findings))
    names = _note_names(given, profile)
    case = draft_case(vine, profile, slug, case_title(slug, profile.languages), names)
    return _put(given, profile, case, names)


def _new(given: argparse.Namespace) -> int:
    profile = _profile(given)
    terminal = Terminal(given.language, profile.units)
    terminal.tell(terminal.say("start"))
    slug = _slug(given, given.name or terminal.ask_for(terminal.say("case"), SLUG, "case"))
    usual = case_title(slug, profile.languages)
    title = {
        one: terminal.ask(
            terminal.say("title", language=say(given.language, f"pages.language.{one}")),
            usual[one],
        )
        for one in profile.languages
    }
    level = terminal.ask_for(terminal.say("level"), LEVEL_KIND, "level", "middling")
    author = terminal.ask(terminal.say("author"))
    vine: Vine = ask_vine(terminal)
    names = _note_names(given, profile)
    case = draft_case(
        vine, profile, slug, title, names, level=LEVEL_KIND.options[level], author=author
    )
    return _put(given, profile, case, names)


def _to_csv(given: argparse.Namespace) -> int:
    opened = open_case(given.root, given.case, given.language)
    form = opened.proof.case.vine.form.name
    if form not in SHEET_FORMS:
        raise _RefusedError(say(given.language, "field.no-sheet", form=form))
    sheet = field_sheet(opened.proof.case.vine, given.language)
    if given.output is None:
        sys.stdout.write(sheet)
    else:
        # With the mark by which spreadsheets know that accents are UTF-8.
        given.output.write_text(f"\ufeff{sheet}", encoding="utf-8", newline="\n")
    return FINE


def _profile(given: argparse.Namespace) -> Profile:
    profile, findings = own_profile(given.root, given.language)
    if profile is None or has_errors(findings):
        raise UnusableCaseError(tuple(in_order(findings)))
    return profile


def _note_names(given: argparse.Namespace, profile: Profile) -> list[str]:
    notes, _ = all_safety_notes(given.root, profile.languages)
    return [note.name for note in notes]


def _slug_of(name: str) -> str:
    return re.sub("[^a-z0-9]+", "-", name.lower()).strip("-")


def _slug(given: argparse.Namespace, slug: str) -> str:
    """The short name, if a new file may have it."""
    if not re.fullmatch(SLUG.pattern, slug) or len(slug) > SLUG.longest:
        raise _RefusedError(say(given.language, "field.no-slug", found=slug))
    file = given.root / CASES / f"{slug}.yml"
    if file.exists():
        raise _RefusedError(say(given.language, "field.there-already", file=str(file)))
    return slug


def _put(given: argparse.Namespace, profile: Profile, case: Case, note_names: Sequence[str]) -> int:
    """Write the file, then read and prove it as `check` will."""
    file: Path = given.root / CASES / f"{case.slug}.yml"
    file.parent.mkdir(parents=True, exist_ok=True)
    usual = usual_target(CaseProof(case, profile, ()))
    file.write_text(write_case(case, given.language, usual), encoding="utf-8", newline="\n")
    print(say(given.language, "field.made", file=str(file)))
    taught = [RULE_BY_NAME[name].title[given.language] for name, _ in case.teaches]
    if taught:
        print(say(given.language, "field.teaches", rules="; ".join(taught)))
    else:
        print(say(given.language, "field.teaches-nothing"))
    if not usual.is_met:
        low, high = usual.met
        facts = {**asdict(usual), "low": low, "high": high, "places": _places(case.vine)}
        print(say(given.language, "field.target-beyond", **facts))
    print(say(given.language, "field.now"))
    findings = _proved(given, profile, file, note_names)
    for finding in findings:
        print(finding.render(given.language))
    return FOUND if has_errors(findings) else FINE


def _places(vine: Vine) -> int:
    return sum(len(arm.positions) for arm in vine.arms)


def _proved(
    given: argparse.Namespace, profile: Profile, file: Path, note_names: Sequence[str]
) -> list[Finding]:
    shown = file.relative_to(given.root).as_posix()
    case, findings = read_case(
        file,
        CaseSurroundings(
            profile.languages,
            list(RULE_BY_NAME),
            note_names,
            partial(tool_for, limits=profile.limits),
            profile.units,
        ),
        shown,
        language=given.language,
    )
    if case is not None:
        findings = [*findings, *prove_case(case, profile, given.language).findings]
    return in_order(findings)


def _refuse(told: str) -> int:
    print(f"pencilwood: {told}", file=sys.stderr)
    return WRONG_USE
