"""Puts every page and every other file of the site together, in memory."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from functools import partial
from typing import Literal, NamedTuple

from pencilwood.assets import asset_root
from pencilwood.drawing.plates import PLATES
from pencilwood.drawing.plates.small import draw_small_plate
from pencilwood.kept import forget_old
from pencilwood.pages.block_pages import block_page, blocks_page, sums_page
from pencilwood.pages.case_page import photo_file
from pencilwood.pages.chapters.chapter_page import chapter_page
from pencilwood.pages.chapters.list_pictures import small_plate
from pencilwood.pages.desk import ASSETS
from pencilwood.pages.doors import teachers_page, trainers_page, workers_page
from pencilwood.pages.front_pages import home_page, vines_page
from pencilwood.pages.handbook import HOME_TEXT, Handbook
from pencilwood.pages.offline_page import offline_page
from pencilwood.pages.page import Addresses, Page
from pencilwood.pages.practice_page import PracticeVine, practice_files, practice_page
from pencilwood.pages.quiz_pages import crew_page, quiz_page, quizzes_page
from pencilwood.pages.rule_pages import rule_page, rules_page
from pencilwood.pages.safety_page import safety_page
from pencilwood.pages.score_page import scores_page
from pencilwood.pages.sources_page import sources_page
from pencilwood.pages.style_sheet import ONLY_PARTS, STYLE_SHEET, style_sheet
from pencilwood.pages.words_page import words_page
from pencilwood.rules import RULES
from pencilwood.site.case_pages import CasePages, Waiting, case_pages, waiting_files, whole_page
from pencilwood.site.installable import manifests
from pencilwood.site.offline import APOLOGY, OFFLINE_WORKER
from pencilwood.site.papers import PapersMade, make_papers
from pencilwood.site.practice import fingerprint, grow_practice
from pencilwood.site.workers import spread
from pencilwood.worksheets.typeset import PaperSize

_PUBLISHED = {".css", ".js", ".svg", ".png", ".woff2", ".txt"}
# Sources of scripts are of no use to a browser, and only packages need what is for packages.
_KEPT_BACK = ("js/", "package/")
_NOT_ALONE = {*ONLY_PARTS, OFFLINE_WORKER}


@dataclass(frozen=True)
class Site:
    """All that a site generator needs."""

    handbook: Handbook
    addresses: Addresses
    pages: tuple[Page, ...]
    """In the order of the menu, language by language."""
    files: Mapping[str, bytes]
    """Everything else, by its path in the site."""
    waiting: Mapping[str, Waiting]
    """The same for what is made when it is written."""

    def whole(self, page: Page) -> Page:
        """A page with its fragments, if they wait in the folder of what is kept."""
        return whole_page(self.handbook, page)


def assemble(handbook: Handbook, papers: PaperSize | None = None) -> Site:
    """Every file of the handbook; with papers where a size for them is named."""
    made = make_papers(handbook, papers) if papers else PapersMade()
    handbook = replace(handbook, papers=made.listed)
    languages = handbook.profile.languages
    vines = grow_practice(handbook.profile)
    others = _other_pages(handbook, vines)
    of_cases = case_pages(handbook)
    files = {
        **_assets(),
        **_photos(handbook),
        **_small_plates(),
        **_offline_pages(handbook),
        **manifests(handbook.profile),
        **practice_files(vines),
        **handbook.pictures,
        **made.files,
    }
    forget_old()
    pages = tuple(page for one in languages for page in _in_menu_order(others, of_cases, one))
    waiting = {**waiting_files(handbook, of_cases), **made.waiting}
    return Site(handbook, Addresses(languages), pages, files, waiting)


Making = Callable[[], Page]

Part = Literal["before", "behind"]
"""Where a page stands in the menu, seen from those of cases."""

_FEW_CASES = 200
"""A larger handbook takes longer to hand to a worker than its other pages take to make."""


class _Turn(NamedTuple):
    """One page that is no case's: the part of the menu, its number there, its language."""

    part: Part
    number: int
    language: str


def _in_menu_order(
    others: Mapping[_Turn, Page], of_cases: CasePages, language: str
) -> Iterator[Page]:
    own = [(turn.part, page) for turn, page in others.items() if turn.language == language]
    yield from (page for part, page in own if part == "before")
    for listed in (of_cases.pages, of_cases.winters):
        yield from (page for page in listed if page.language == language)
    yield from (page for part, page in own if part == "behind")


def _other_pages(handbook: Handbook, vines: tuple[PracticeVine, ...]) -> dict[_Turn, Page]:
    """All pages but those of cases, each part of the menu in its order, made on all cores."""
    # None needs the scripts of the practice vines.
    listed = tuple(replace(vine, script="") for vine in vines)
    # What stands at the same place in each language shows the same vines, so it is made in a row.
    turns = sorted(
        _Turn(part, number, language)
        for language in handbook.profile.languages
        for part, makings in _makings(handbook, listed, language).items()
        for number in range(len(makings))
    )
    make = partial(_page, handbook, listed)
    is_large = len(handbook.cases) > _FEW_CASES
    pages = [make(turn) for turn in turns] if is_large else spread(make, turns)
    return dict(zip(turns, pages, strict=True))


def _page(handbook: Handbook, vines: tuple[PracticeVine, ...], turn: _Turn) -> Page:
    return _makings(handbook, vines, turn.language)[turn.part][turn.number]()


def _makings(
    handbook: Handbook, vines: tuple[PracticeVine, ...], language: str
) -> dict[Part, list[Making]]:
    """What makes each page of a language but those of cases."""
    return {
        "before": list(_front_pages(handbook, vines, language)),
        "behind": list(_rules_and_quizzes(handbook, language)),
    }


def _front_pages(
    handbook: Handbook, vines: tuple[PracticeVine, ...], language: str
) -> Iterator[Making]:
    yield partial(home_page, handbook, language)
    yield partial(workers_page, handbook, len(vines), language)
    yield partial(trainers_page, handbook, language)
    yield partial(teachers_page, handbook, language)
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


def _rules_and_quizzes(handbook: Handbook, language: str) -> Iterator[Making]:
    yield from (partial(rule_page, handbook, rule, language) for rule in RULES)
    yield from (partial(quiz_page, handbook, proof, language) for proof in handbook.quizzes)


def _assets() -> dict[str, bytes]:
    root = asset_root()
    found = {
        path.relative_to(root).as_posix(): path
        for path in sorted(root.rglob("*"))
        if path.is_file() and path.suffix in _PUBLISHED
    }
    published = {
        f"{ASSETS}/{name}": path.read_bytes()
        for name, path in found.items()
        if not name.startswith(_KEPT_BACK) and name not in _NOT_ALONE
    }
    return {**published, f"{ASSETS}/{STYLE_SHEET}": style_sheet()}


def _photos(handbook: Handbook) -> dict[str, bytes]:
    return {f"{ASSETS}/{photo_file(slug)}": photo.data for slug, photo in handbook.photos.items()}


def _small_plates() -> dict[str, bytes]:
    return {f"{ASSETS}/{small_plate(name)}": draw_small_plate(name).encode() for name in PLATES}


def _offline_pages(handbook: Handbook) -> dict[str, bytes]:
    addresses = Addresses(handbook.profile.languages)
    return {
        addresses.of(APOLOGY, language): offline_page(handbook, language).encode()
        for language in handbook.profile.languages
    }
