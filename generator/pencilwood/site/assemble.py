"""Puts every page and every other file of the site together, in memory."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from functools import partial

from pencilwood.assets import asset_root
from pencilwood.drawing.small import draw_small
from pencilwood.kept import forget_old, kept_text
from pencilwood.pages.block_pages import block_page, blocks_page, sums_page
from pencilwood.pages.case_page import case_page, photo_file
from pencilwood.pages.chapters.chapter_page import LIST_OF, chapter_page, chapters_page
from pencilwood.pages.desk import ASSETS
from pencilwood.pages.front_pages import HOME_TEXT, home_page, small_drawing, vines_page
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.offline_page import offline_page
from pencilwood.pages.page import Addresses, Page
from pencilwood.pages.practice_page import PracticeVine, practice_files, practice_page
from pencilwood.pages.projector_page import projector_page, projector_path
from pencilwood.pages.quiz_pages import crew_page, quiz_page, quizzes_page
from pencilwood.pages.rule_pages import rule_page, rules_page
from pencilwood.pages.safety_page import safety_page
from pencilwood.pages.score_page import scores_page
from pencilwood.pages.sources_page import sources_page
from pencilwood.pages.winters_page import winters_page
from pencilwood.pages.words_page import words_page
from pencilwood.proof import CaseProof
from pencilwood.rules import RULES
from pencilwood.site.installable import manifests
from pencilwood.site.offline import APOLOGY, OFFLINE_WORKER
from pencilwood.site.practice import fingerprint, grow_practice
from pencilwood.site.workers import spread

_PUBLISHED = {".css", ".js", ".svg", ".png", ".woff2", ".txt"}
# Sources of scripts are of no use to a browser, and only packages need what is for packages.
_KEPT_BACK = ("js/", "package/")


@dataclass(frozen=True)
class Site:
    """All that a site generator needs."""

    handbook: Handbook
    addresses: Addresses
    pages: tuple[Page, ...]
    """In the order of the menu, language by language."""
    files: Mapping[str, bytes]
    """Everything else, by its path in the site."""


def assemble(handbook: Handbook) -> Site:
    """Every file of the handbook."""
    languages = handbook.profile.languages
    vines = grow_practice(handbook.profile)
    pages = _made(handbook, vines)
    files = {
        **_assets(),
        **_small_drawings(handbook),
        **_photos(handbook),
        **_projector_pages(handbook),
        **_offline_pages(handbook),
        **manifests(handbook.profile),
        **practice_files(vines),
        **handbook.pictures,
    }
    forget_old()
    return Site(handbook, Addresses(languages), pages, files)


Making = Callable[[], Page]


def _made(handbook: Handbook, vines: tuple[PracticeVine, ...]) -> tuple[Page, ...]:
    """All pages, made on all cores; no page needs the scripts of the practice vines."""
    listed = tuple(replace(vine, script="") for vine in vines)
    turns = [
        (number, language)
        for language in handbook.profile.languages
        for number in range(len(_pages(handbook, listed, language)))
    ]
    # What stands at the same place in each language shows the same vines, so it is made in a row.
    in_rows = sorted(turns, key=lambda turn: turn[0])
    made = dict(zip(in_rows, spread(partial(_page, handbook, listed), in_rows), strict=True))
    return tuple(made[turn] for turn in turns)


def _page(handbook: Handbook, vines: tuple[PracticeVine, ...], turn: tuple[int, str]) -> Page:
    number, language = turn
    return _pages(handbook, vines, language)[number]()


def _pages(handbook: Handbook, vines: tuple[PracticeVine, ...], language: str) -> list[Making]:
    """What makes each page of a language, in the order of the menu."""
    return list(_each_page(handbook, vines, language))


def _each_page(
    handbook: Handbook, vines: tuple[PracticeVine, ...], language: str
) -> Iterator[Making]:
    yield partial(home_page, handbook, language)
    for audience in LIST_OF:
        if handbook.chapters_for(audience, language):
            yield partial(chapters_page, handbook, audience, language)
    yield from (
        partial(chapter_page, handbook, chapter)
        for chapter in handbook.chapters
        if chapter.language == language and chapter.name != HOME_TEXT
    )
    yield partial(vines_page, handbook, language)
    if vines:
        yield partial(practice_page, handbook, vines, fingerprint(handbook.profile), language)
    if handbook.quizzes:
        yield partial(quizzes_page, handbook, len(vines), language)
        yield partial(crew_page, handbook, language)
    yield partial(rules_page, handbook, language)
    yield partial(scores_page, handbook, language)
    if handbook.notes:
        yield partial(safety_page, handbook, language)
    if handbook.reference.terms:
        yield partial(words_page, handbook, language)
    yield partial(sources_page, handbook, language)
    if handbook.blocks:
        yield partial(blocks_page, handbook, language)
    yield partial(sums_page, handbook, language)
    yield from (partial(block_page, handbook, block, language) for block in handbook.blocks)
    yield from (partial(case_page, handbook, proof, language) for proof in handbook.cases)
    yield from (
        partial(winters_page, handbook, proof, language)
        for proof in handbook.cases
        if proof.case.three_winters
    )
    yield from (partial(rule_page, handbook, rule, language) for rule in RULES)
    yield from (partial(quiz_page, handbook, proof, language) for proof in handbook.quizzes)


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
        if not name.startswith(_KEPT_BACK) and name != OFFLINE_WORKER
    }


def _small_drawings(handbook: Handbook) -> dict[str, bytes]:
    return {
        f"{ASSETS}/{small_drawing(proof.case.slug)}": kept_text(
            "small-drawing", proof.case.vine, partial(_small_drawing, proof)
        ).encode()
        for proof in handbook.cases
    }


def _small_drawing(proof: CaseProof) -> str:
    return draw_small(proof.parts)


def _photos(handbook: Handbook) -> dict[str, bytes]:
    return {f"{ASSETS}/{photo_file(slug)}": photo.data for slug, photo in handbook.photos.items()}


def _projector_pages(handbook: Handbook) -> dict[str, bytes]:
    """Whole pages, which no theme surrounds."""
    addresses = Addresses(handbook.profile.languages)
    turns = [
        (number, language)
        for number in range(len(handbook.cases))
        for language in handbook.profile.languages
    ]
    made = spread(partial(_projector_page, handbook), turns)
    return {
        addresses.of(projector_path(handbook.cases[number].case.slug), language): page
        for (number, language), page in zip(turns, made, strict=True)
    }


def _offline_pages(handbook: Handbook) -> dict[str, bytes]:
    addresses = Addresses(handbook.profile.languages)
    return {
        addresses.of(APOLOGY, language): offline_page(handbook, language).encode()
        for language in handbook.profile.languages
    }


def _projector_page(handbook: Handbook, turn: tuple[int, str]) -> bytes:
    number, language = turn
    return projector_page(handbook, handbook.cases[number], language).encode()
