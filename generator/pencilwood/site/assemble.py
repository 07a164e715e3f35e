"""Puts every page and every other file of the site together, in memory."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from pencilwood.assets import asset_root
from pencilwood.drawing.small import draw_small
from pencilwood.pages.block_pages import block_page, blocks_page, sums_page
from pencilwood.pages.case_page import case_page
from pencilwood.pages.chapters.chapter_page import LIST_OF, chapter_page, chapters_page
from pencilwood.pages.desk import ASSETS
from pencilwood.pages.front_pages import HOME_TEXT, home_page, small_drawing, vines_page
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.page import Addresses, Page
from pencilwood.pages.practice_page import PracticeVine, practice_files, practice_page
from pencilwood.pages.projector_page import projector_page, projector_path
from pencilwood.pages.quiz_pages import crew_page, quiz_page, quizzes_page
from pencilwood.pages.rule_pages import rule_page, rules_page
from pencilwood.pages.safety_page import safety_page
from pencilwood.pages.score_page import scores_page
from pencilwood.pages.sources_page import sources_page
from pencilwood.pages.words_page import words_page
from pencilwood.rules import RULES
from pencilwood.site.practice import fingerprint, grow_practice

_PUBLISHED = {".css", ".js", ".svg", ".woff2", ".txt"}
# The sources of the browser script are of no use to a browser.
_KEPT_BACK = ("js/",)


@dataclass(frozen=True)
class Site:
    """All that a site generator needs."""

    handbook: Handbook
    addresses: Addresses
    pages: tuple[Page, ...]
    """In the order of the menu, language by language."""
    files: Mapping[str, bytes]
    """Everything else, by its path in the site."""


def assemble(handbook: Handbook, cache: Path | None = None) -> Site:
    """Every file of the handbook; `cache` keeps the practice vines for the next build."""
    languages = handbook.profile.languages
    vines = grow_practice(handbook.profile, cache)
    pages = tuple(page for language in languages for page in _pages(handbook, vines, language))
    files = {
        **_assets(),
        **_small_drawings(handbook),
        **_projector_pages(handbook),
        **practice_files(vines),
        **handbook.pictures,
    }
    return Site(handbook, Addresses(languages), pages, files)


def _pages(
    handbook: Handbook, vines: tuple[PracticeVine, ...], language: str
) -> Iterator[Page]:
    yield home_page(handbook, language)
    for audience in LIST_OF:
        if handbook.chapters_for(audience, language):
            yield chapters_page(handbook, audience, language)
    yield from (
        chapter_page(handbook, chapter)
        for chapter in handbook.chapters
        if chapter.language == language and chapter.name != HOME_TEXT
    )
    yield vines_page(handbook, language)
    if vines:
        yield practice_page(handbook, vines, fingerprint(handbook.profile), language)
    if handbook.quizzes:
        yield quizzes_page(handbook, len(vines), language)
        yield crew_page(handbook, language)
    yield rules_page(handbook, language)
    yield scores_page(handbook, language)
    if handbook.notes:
        yield safety_page(handbook, language)
    if handbook.reference.terms:
        yield words_page(handbook, language)
    yield sources_page(handbook, language)
    if handbook.blocks:
        yield blocks_page(handbook, language)
    yield sums_page(handbook, language)
    yield from (block_page(handbook, block, language) for block in handbook.blocks)
    yield from (case_page(handbook, proof, language) for proof in handbook.cases)
    yield from (rule_page(handbook, rule, language) for rule in RULES)
    yield from (quiz_page(handbook, proof, language) for proof in handbook.quizzes)


def _assets() -> dict[str, bytes]:
    root = asset_root()
    found = {
        path.relative_to(root).as_posix(): path
        for path in sorted(root.rglob("*"))
        if path.is_file() and path.suffix in _PUBLISHED
    }
    return {
        f"{ASSETS}/{name}": path.read_bytes()
        for name, path in found.items()
        if not name.startswith(_KEPT_BACK)
    }


def _small_drawings(handbook: Handbook) -> dict[str, bytes]:
    return {
        f"{ASSETS}/{small_drawing(proof.case.slug)}": draw_small(proof.parts).encode()
        for proof in handbook.cases
    }


def _projector_pages(handbook: Handbook) -> dict[str, bytes]:
    """Whole pages, which no theme surrounds."""
    addresses = Addresses(handbook.profile.languages)
    return {
        addresses.of(projector_path(proof.case.slug), language): projector_page(
            handbook, proof, language
        ).encode()
        for language in handbook.profile.languages
        for proof in handbook.cases
    }
