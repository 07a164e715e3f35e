"""`pencilwood print`: papers for the workshop as PDF files."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Iterator, Sequence
from pathlib import Path

from pencilwood.cases.case import Profile
from pencilwood.commands.help_page import HelpParser
from pencilwood.findings import Finding, has_errors, in_order
from pencilwood.proof import CaseProof
from pencilwood.site.handbook import open_handbook, own_profile
from pencilwood.site.single import open_case
from pencilwood.site.trouble import UnusableCaseError
from pencilwood.words import say
from pencilwood.worksheets.case_papers import answer_key, worksheet
from pencilwood.worksheets.house_papers import (
    NoAddressError,
    NoQrMakerError,
    course_booklet,
    measuring_sheet,
    plainest,
    pocket_card,
    qr_poster,
    wall_poster,
)
from pencilwood.worksheets.typeset import (
    PAPER_SIZES,
    WALL_SIZES,
    NoTypesetterError,
    Paper,
    file_name,
    typeset,
    usual_size,
)

FINE, FOUND, WRONG_USE = 0, 1, 2
KINDS = ("worksheet", "key", "card", "poster", "measuring-sheet", "booklet", "qr")
_OF_A_CASE = ("worksheet", "key", "poster")
_OF_ALL_CASES = ("booklet",)
_FOR_WALLS = ("poster", "qr")
_TROUBLES = {
    NoTypesetterError: "print.no-typst",
    NoQrMakerError: "print.no-segno",
    NoAddressError: "print.no-address",
}


def add_arguments(parser: HelpParser) -> None:
    """What `print` takes."""
    told, metavar = parser.said, parser.metavar
    parser.add_argument("--what", choices=KINDS, metavar=metavar("kind"), help=told("print.what"))
    parser.add_argument("--case", metavar=metavar("case"), help=told("print.case"))
    parser.add_argument(
        "--paper",
        choices=PAPER_SIZES,
        metavar=metavar("size"),
        help=told("print.paper"),
    )
    parser.add_output_folder("print.output")


def run(given: argparse.Namespace) -> int:
    """Make the papers that were asked for; the handbook's units say on what, if nobody does."""
    if given.paper in WALL_SIZES and given.what not in _FOR_WALLS:
        return _refuse(say(given.language, "print.wall-only", paper=given.paper))
    if given.case and given.what not in (*_OF_A_CASE, None):
        return _refuse(say(given.language, "print.one-case-only"))
    profile, findings = own_profile(given.root, given.language)
    if profile is None or has_errors(findings):
        raise UnusableCaseError(tuple(in_order(findings)))
    paper_size = given.paper or usual_size(profile.units)
    try:
        papers = list(_papers(given, profile))
        footer = say(given.language, "pages.site-name", vineyard=profile.vineyard)
        made = [(paper, typeset(paper, paper_size, footer)) for paper in papers]
    except (NoTypesetterError, NoQrMakerError, NoAddressError) as trouble:
        return _refuse(say(given.language, _TROUBLES[type(trouble)]))
    folder: Path = given.output or given.root / "print"
    folder.mkdir(parents=True, exist_ok=True)
    for paper, pdf in made:
        file = folder / file_name(paper.name, paper.language, paper_size)
        file.write_bytes(pdf)
        print(say(given.language, "print.made", file=str(file)))
    return FINE


def _papers(given: argparse.Namespace, profile: Profile) -> Iterator[Paper]:
    language: str = given.language
    kinds = _kinds(given, profile)
    if set(kinds) & {*_OF_A_CASE, *_OF_ALL_CASES}:
        proofs = _proofs(given)
        yield from _of_cases(kinds, proofs, profile, language)
    if "card" in kinds:
        yield pocket_card(profile, language)
    if "measuring-sheet" in kinds:
        yield measuring_sheet(profile, language)
    if "qr" in kinds:
        yield qr_poster(profile, language)


def _kinds(given: argparse.Namespace, profile: Profile) -> tuple[str, ...]:
    if given.what:
        return (given.what,)
    if given.case:
        return ("worksheet", "key")
    # Without an address there is no QR code to print; who asks for one by name is told.
    return tuple(kind for kind in KINDS if kind != "qr" or profile.site_address)


def _of_cases(
    kinds: Sequence[str], proofs: Sequence[CaseProof], profile: Profile, language: str
) -> Iterator[Paper]:
    for proof in proofs:
        if "worksheet" in kinds:
            yield worksheet(proof, profile, language)
        if "key" in kinds:
            yield answer_key(proof, profile, language)
    if "poster" in kinds:
        yield wall_poster(plainest(proofs), profile, language)
    if "booklet" in kinds:
        yield course_booklet(proofs, profile, language)


def _proofs(given: argparse.Namespace) -> tuple[CaseProof, ...]:
    """The named case, or all of a handbook in which nothing is wrong."""
    if given.case:
        opened = open_case(given.root, given.case, given.language)
        _stop_at_errors(opened.proof.findings)
        return (opened.proof,)
    whole = open_handbook(given.root, given.language)
    _stop_at_errors(whole.findings)
    return whole.proofs


def _stop_at_errors(findings: Sequence[Finding]) -> None:
    if has_errors(findings):
        raise UnusableCaseError(tuple(findings))


def _refuse(told: str) -> int:
    print(f"pencilwood: {told}", file=sys.stderr)
    return WRONG_USE
