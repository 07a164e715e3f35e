"""Makes the papers that a site carries as PDF files, for readers without a command line.

Each is kept under the facts that it follows from, so a build sets anew only what changed. What is
kept waits in its folder until the site is written, as the pages of cases do.
"""

from __future__ import annotations

import base64
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import partial

from pencilwood import kept
from pencilwood.cases.case import Profile
from pencilwood.pages.handbook import Handbook, SitePaper
from pencilwood.pages.papers_list import PAPERS
from pencilwood.proof import CaseProof
from pencilwood.site.workers import spread
from pencilwood.vine.forms import FORM_NAMES
from pencilwood.words import say
from pencilwood.worksheets.case_papers import answer_key, worksheet
from pencilwood.worksheets.house_papers import (
    measuring_sheet,
    plainest,
    pocket_card,
    qr_poster,
    wall_poster,
)
from pencilwood.worksheets.typeset import Paper, PaperSize, file_name, makers, typeset

_OF_A_CASE: Mapping[str, Callable[[CaseProof, Profile, str], Paper]] = {
    "worksheet": worksheet,
    "key": answer_key,
    "poster": wall_poster,
}
_OF_ALL: Mapping[str, Callable[[Profile, str], Paper]] = {
    "card": pocket_card,
    "measuring-sheet": measuring_sheet,
    "qr": qr_poster,
}


@dataclass(frozen=True)
class _Asked:
    """A paper that the site is to have; little to hand to a worker."""

    kind: str
    proof: CaseProof | None
    profile: Profile
    language: str
    size: PaperSize

    @property
    def slug(self) -> str:
        return self.proof.case.slug if self.proof else ""

    @property
    def file(self) -> str:
        name = f"{self.kind}-{self.slug}" if self.slug else self.kind
        return file_name(name, self.language, self.size)

    def pdf(self) -> bytes:
        of = self.proof.name if self.proof else kept.name_of(self.profile)
        facts = [of, self.kind, self.language, self.size, *makers()]
        return base64.b64decode(kept.kept_text("paper", facts, self._as_text))

    def _as_text(self) -> str:
        footer = say(self.language, "pages.site-name", vineyard=self.profile.vineyard)
        return base64.b64encode(typeset(self._paper(), self.size, footer)).decode("ascii")

    def _paper(self) -> Paper:
        if self.proof is None:
            return _OF_ALL[self.kind](self.profile, self.language)
        return _OF_A_CASE[self.kind](self.proof, self.profile, self.language)


@dataclass(frozen=True)
class PapersMade:
    """The papers of a site."""

    listed: tuple[SitePaper, ...] = ()
    files: Mapping[str, bytes] = field(default_factory=dict)
    """By their path in the site; those that are not kept."""
    waiting: Mapping[str, Callable[[], bytes]] = field(default_factory=dict)
    """Those that are, made when they are written."""


def make_papers(handbook: Handbook, size: PaperSize) -> PapersMade:
    """All of them, in every language; raises NoTypesetterError or NoQrMakerError.

    Every vine has its worksheet and its key, every form of vine a poster.
    """
    asked = list(_asked(handbook, size))
    made = spread(_made, asked)
    listed = tuple(
        SitePaper(
            one.kind, one.slug, one.language, one.file, pdf if isinstance(pdf, int) else len(pdf)
        )
        for one, pdf in zip(asked, made, strict=True)
    )
    paths = [f"{PAPERS}/{one.file}" for one in asked]
    both = list(zip(paths, asked, made, strict=True))
    return PapersMade(
        listed,
        {path: pdf for path, _, pdf in both if isinstance(pdf, bytes)},
        {path: partial(one.pdf) for path, one, pdf in both if isinstance(pdf, int)},
    )


def _made(asked: _Asked) -> bytes | int:
    """The paper; its size alone where it is kept."""
    pdf = asked.pdf()
    return pdf if kept.folder() is None else len(pdf)


def _asked(handbook: Handbook, size: PaperSize) -> Iterator[_Asked]:
    profile = handbook.profile

    def of(kind: str, proof: CaseProof | None) -> Iterator[_Asked]:
        for language in profile.languages:
            yield _Asked(kind, proof, profile, language, size)

    for proof in handbook.cases:
        yield from of("worksheet", proof)
        yield from of("key", proof)
    for kind in _OF_ALL:
        # Without an address there is nothing to put in a QR code.
        if kind != "qr" or profile.site_address:
            yield from of(kind, None)
    for proof in _for_posters(handbook.cases):
        yield from of("poster", proof)


def _for_posters(proofs: tuple[CaseProof, ...]) -> Iterator[CaseProof]:
    """The plainest vine of each form."""
    for name in FORM_NAMES:
        trained_so = [proof for proof in proofs if proof.case.vine.form.name == name]
        if trained_so:
            yield plainest(trained_so)
