"""Looks at all chapters together: each by itself, the languages of one, the places of all."""

from __future__ import annotations

from collections.abc import Collection

from pencilwood.findings import has_errors
from pencilwood.pages.chapters.chapter_page import check_chapter
from pencilwood.pages.chapters.checks import Reading, differences, same_order
from pencilwood.pages.chapters.problems import Problems
from pencilwood.pages.handbook import Chapter, Handbook
from pencilwood.site.hints import Notes
from pencilwood.site.own_pages import own_pages
from pencilwood.site.reference import check_sources_used


def check_chapters(
    handbook: Handbook, notes: Notes, unread_cases: Collection[str]
) -> tuple[Reading, ...]:
    """Note all that is wrong with the chapters, and tell how hard each is to read."""
    readings: list[Reading] = []
    named: set[str] = set()
    pages = own_pages(handbook, is_faultless=not has_errors(notes.findings))
    for chapter in handbook.chapters:
        checked = check_chapter(handbook, chapter, notes.language, unread_cases, pages)
        notes.findings.extend(checked.findings)
        named |= checked.sources
        if checked.reading is not None:
            readings.append(checked.reading)
    first, *others = handbook.profile.languages
    for language in others:
        _compare(handbook, first, language, notes)
    _check_places(handbook, first, notes)
    check_sources_used(handbook.reference, named, notes)
    return tuple(readings)


def _compare(handbook: Handbook, first: str, language: str, notes: Notes) -> None:
    for other in handbook.chapters:
        twin = handbook.chapter(other.name, first)
        if other.language != language or twin is None:
            continue
        problems = Problems(other.place.file, notes.language)
        for name in differences(twin, other):
            facts = {"language": language, "file": twin.place.file}
            problems.add(_where(other, name), name, **facts)
        notes.findings.extend(problems.findings)


def _where(chapter: Chapter, difference: str) -> tuple[int, int]:
    place = {"differs-for": chapter.audience_place, "differs-order": chapter.order_place}
    there = place.get(difference) or chapter.place
    return there.line, there.column


def _check_places(handbook: Handbook, language: str, notes: Notes) -> None:
    ours = [chapter for chapter in handbook.chapters if chapter.language == language]
    for one, after in same_order(ours):
        problems = Problems(after.place.file, notes.language)
        problems.add(_where(after, "differs-order"), "same-order", file=one.place.file)
        notes.findings.extend(problems.findings)
