"""Makes all that a handbook shows of its vines, a few vines at a time, on all cores.

What is kept of a page waits in its folder until the site is written, so that a large handbook does
not fill the memory. Where nothing is kept, all of it is held.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from functools import partial

from pencilwood import kept
from pencilwood.cases.reference import Reference
from pencilwood.drawing.views.small import draw_small
from pencilwood.pages.case_page import case_page
from pencilwood.pages.desk import ASSETS
from pencilwood.pages.front_pages import small_drawing
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.page import Addresses, Page
from pencilwood.pages.projector_page import has_kept_room, projector_page, projector_path
from pencilwood.pages.renewal_page import renewal_page
from pencilwood.pages.winters_page import winters_page
from pencilwood.proof import CaseProof
from pencilwood.site.workers import spread

_AT_A_TIME = 8

Waiting = Callable[[], bytes]
"""Makes a file when it is written."""


@dataclass
class CasePages:
    """What is shown of cases."""

    pages: list[Page] = field(default_factory=list)
    winters: list[Page] = field(default_factory=list)
    rooms: dict[tuple[str, str], str | None] = field(default_factory=dict)
    """By case and language; None where the page is kept."""
    small: dict[str, str | None] = field(default_factory=dict)
    """The small drawing of each case; None where it is kept."""

    def add(self, other: CasePages) -> None:
        """Put what follows behind."""
        self.pages += other.pages
        self.winters += other.winters
        self.rooms |= other.rooms
        self.small |= other.small


def case_pages(handbook: Handbook) -> CasePages:
    """All of them, in the order of the cases, and of each case in the order of the languages."""
    made = CasePages()
    for few in spread(_made, list(_few_at_a_time(handbook))):
        made.add(few)
    return made


def whole_page(handbook: Handbook, page: Page) -> Page:
    """The same page with its fragments."""
    if not page.waits:
        return page
    return case_page(handbook, _proof(handbook, page.path), page.language)


def waiting_files(handbook: Handbook, made: CasePages) -> Mapping[str, Waiting]:
    """The small drawings and the pages for a room by their address."""
    addresses = Addresses(handbook.profile.languages)
    drawings = {
        f"{ASSETS}/{small_drawing(slug)}": partial(_small_file, handbook, slug, text)
        for slug, text in made.small.items()
    }
    rooms = {
        addresses.of(projector_path(slug), language): partial(_room, handbook, slug, language, text)
        for (slug, language), text in made.rooms.items()
    }
    return drawings | rooms


def _proof(handbook: Handbook, path: str) -> CaseProof:
    return handbook.case_by_slug[path.rpartition("/")[2]]


def _room(handbook: Handbook, slug: str, language: str, text: str | None) -> bytes:
    if text is None:
        text = projector_page(handbook, handbook.case_by_slug[slug], language)
    return text.encode()


@dataclass(frozen=True)
class _Few:
    """Some cases, and what of a handbook their pages show; little to hand to a worker."""

    part: Handbook
    """Its last case may be only the one that follows."""
    count: int


def _few_at_a_time(handbook: Handbook) -> Iterator[_Few]:
    bare = replace(
        handbook, examples={}, quizzes=(), chapters=(), pictures={}, blocks=(),
        reference=Reference(), photos={}, papers=(),
    )  # fmt: skip
    for start in range(0, len(handbook.cases), _AT_A_TIME):
        few = handbook.cases[start : start + _AT_A_TIME + 1]
        slugs = [proof.case.slug for proof in few]
        photos = {slug: handbook.photos[slug] for slug in slugs if slug in handbook.photos}
        yield _Few(
            replace(bare, cases=few, photos=photos),
            min(_AT_A_TIME, len(handbook.cases) - start),
        )


def _made(few: _Few) -> CasePages:
    """What one vine shows is made in a row: its geometry is there still."""
    made, part = CasePages(), few.part
    for proof in part.cases[: few.count]:
        for language in part.profile.languages:
            made.pages.append(case_page(part, proof, language, whole=False))
            is_kept = has_kept_room(part, proof, language)
            text = None if is_kept else projector_page(part, proof, language)
            made.rooms[proof.case.slug, language] = None if kept.folder() else text
            if proof.case.three_winters:
                made.winters.append(winters_page(part, proof, language))
            if proof.case.renewed_arm:
                made.winters.append(renewal_page(part, proof, language))
        drawn = _small(proof)
        made.small[proof.case.slug] = None if kept.folder() else drawn
    return made


def _small_file(handbook: Handbook, slug: str, text: str | None) -> bytes:
    return (_small(handbook.case_by_slug[slug]) if text is None else text).encode()


def _small(proof: CaseProof) -> str:
    return kept.kept_text(
        "small-drawing", kept.name_of(proof.case), lambda: draw_small(proof.parts)
    )
