"""The papers that a site carries as PDF files, as the page for teachers lists them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from pencilwood.pages.desk import Desk
from pencilwood.pages.handbook import SitePaper
from pencilwood.pages.rule_prices import form_word
from pencilwood.units import format_number

PAPERS = "papers"
"""The folder of the site that holds them."""
_OF_A_VINE = ("worksheet", "key")
_OF_ALL = ("card", "measuring-sheet", "qr", "poster")
_KB, _MB = 1000, 1_000_000


@dataclass(frozen=True)
class PaperLead:
    """A link to a paper, with what there is to load."""

    title: str
    href: str
    size: str
    address: str
    """Where it lies, for paper; whole where the handbook knows its own address."""


@dataclass(frozen=True)
class VinePapers:
    """The papers of one vine."""

    title: str
    leads: tuple[PaperLead, ...]


@dataclass(frozen=True)
class PapersList:
    """All papers in one language."""

    of_vines: tuple[VinePapers, ...]
    of_all: tuple[PaperLead, ...]


def papers_list(desk: Desk) -> PapersList | None:
    """The papers in the language of the page; None where the site carries none."""
    here = [one for one in desk.handbook.papers if one.language == desk.language]
    if not here:
        return None
    of_vines = tuple(
        VinePapers(desk.own(proof.case.title), leads)
        for proof in desk.handbook.cases
        if (leads := _leads(desk, here, _OF_A_VINE, proof.case.slug))
    )
    return PapersList(of_vines, _leads(desk, here, _OF_ALL))


def _leads(
    desk: Desk, papers: Sequence[SitePaper], kinds: Sequence[str], slug: str = ""
) -> tuple[PaperLead, ...]:
    home = desk.profile.site_address
    return tuple(
        PaperLead(
            _title(desk, one),
            desk.file(f"{PAPERS}/{one.file}"),
            desk.say("teachers.papers.size", size=told_size(one.size_bytes, desk.language)),
            f"{home.rstrip('/')}/{PAPERS}/{one.file}" if home else f"{PAPERS}/{one.file}",
        )
        for one in papers
        if one.kind in kinds and slug in ("", one.slug)
    )


def _title(desk: Desk, paper: SitePaper) -> str:
    if paper.kind != "poster":
        return desk.say(f"teachers.papers.{paper.kind}")
    # A vine stands on a poster for all of its form.
    form = desk.handbook.case_by_slug[paper.slug].case.vine.form.name
    return desk.say("teachers.papers.poster", form=form_word(desk, form))


def told_size(size_bytes: int, language: str) -> str:
    """How much there is to load: 120 kB, 1.4 MB."""
    if size_bytes < _MB - _KB // 2:
        return f"{max(1, round(size_bytes / _KB))}\u00a0kB"
    return f"{format_number(Fraction(size_bytes, _MB), 1, language)}\u00a0MB"
