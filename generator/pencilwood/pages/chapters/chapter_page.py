"""A chapter as a page."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass
from functools import cache

from pencilwood.cases.chapter_head import Audience
from pencilwood.findings import Finding
from pencilwood.pages.chapters.anchors import anchors_of
from pencilwood.pages.chapters.block_calls import BlockCalls
from pencilwood.pages.chapters.checks import (
    Reading,
    check_brackets,
    check_readable,
    check_typed,
    reading_of,
)
from pencilwood.pages.chapters.explain import explain_words
from pencilwood.pages.chapters.inline_calls import InlineCalls
from pencilwood.pages.chapters.links import OwnPages, Surroundings, check_links
from pencilwood.pages.chapters.markup import check_markup
from pencilwood.pages.chapters.problems import Problems
from pencilwood.pages.chapters.template import Call, fill_in
from pencilwood.pages.chapters.writing import Writing
from pencilwood.pages.desk import Desk
from pencilwood.pages.handbook import HOME_TEXT, Chapter, Handbook
from pencilwood.pages.page import Addresses, Page

LIST_OF: dict[Audience, str] = {"worker": "workers", "trainer": "trainers"}
"""The page that lists the chapters for each reader."""


@dataclass(frozen=True)
class Checked:
    """What was found out about one chapter."""

    findings: tuple[Finding, ...]
    sources: frozenset[str]
    """Sources that it names."""
    reading: Reading | None


def check_chapter(
    handbook: Handbook,
    chapter: Chapter,
    language: str,
    unread_cases: Collection[str] = (),
    own_pages: OwnPages | None = None,
) -> Checked:
    """Fill a chapter in and look at all that it must meet; findings are in `language`."""
    desk = Desk(handbook, chapter.name, chapter.language)
    problems = Problems(chapter.place.file, language)
    writing = Writing(desk, chapter, problems, unread_cases)
    filled = fill_in(chapter.markdown, _calls(writing), problems)
    check_typed(chapter, problems)
    check_markup(chapter, problems)
    check_brackets(chapter, problems)
    if own_pages is not None:
        check_links(chapter, _around(handbook, chapter, filled, own_pages), problems)
    reading = None if filled is None else reading_of(chapter, filled)
    if filled is not None and reading is not None and chapter.audience == "worker":
        check_readable(reading, filled, problems)
    return Checked(tuple(problems.findings), frozenset(writing.sources), reading)


def _around(
    handbook: Handbook, chapter: Chapter, filled: str | None, own_pages: OwnPages
) -> Surroundings:
    """What the links of a chapter can lead to."""
    languages = handbook.profile.languages
    # The text of the front page is part of that page, and no page itself.
    chapters = (*handbook.chapters, chapter)
    written = {(one.name, one.language): one for one in chapters if one.name != HOME_TEXT}

    # Several links may lead to places of one chapter, which has to be filled in to know them.
    @cache
    def places(name: str, language: str) -> Collection[str] | None:
        if (name, language) == (chapter.name, chapter.language):
            return None if filled is None else anchors_of(chapter.title, filled)
        other = written.get((name, language))
        if other is None:
            return own_pages.places(name, language)
        # Its own slips are told where it is looked at itself.
        problems = Problems(other.place.file, "en")
        desk = Desk(handbook, other.name, other.language)
        text = fill_in(other.markdown, _calls(Writing(desk, other, problems)), problems)
        return None if text is None else anchors_of(other.title, text)

    return Surroundings(
        folders={one: Addresses(languages).folder(one) for one in languages},
        pages={
            language: {*own_pages.names, *(name for name, one in written if one == language)}
            for language in languages
        },
        are_all_known=own_pages.are_all_known,
        files=handbook.pictures.keys(),
        places=places,
    )


def filled_in(desk: Desk, chapter: Chapter) -> str:
    """The Markdown of a chapter that has been checked."""
    problems = Problems(chapter.place.file, "en")
    writing = Writing(desk, chapter, problems)
    filled = fill_in(chapter.markdown, _calls(writing), problems)
    if filled is None:
        raise ValueError(f"{chapter.place}: an unchecked chapter: {problems.findings}")
    filled = writing.completed(filled)
    if chapter.audience == "worker":
        filled = explain_words(writing, filled, InlineCalls(writing).word_link)
    return filled.lstrip("\n")


def chapter_page(handbook: Handbook, chapter: Chapter) -> Page:
    """The page of one chapter."""
    desk = Desk(handbook, chapter.name, chapter.language)
    audience = chapter.audience
    series = handbook.chapters_for(audience, chapter.language) if audience else ()
    place = series.index(chapter) if audience else 0
    return desk.write(
        "chapter.html",
        chapter.title,
        markdown=filled_in(desk, chapter),
        opening=desk.render("chapter_opening.html", audience=audience, lists=LIST_OF),
        menu_title="" if audience else chapter.title,
        audience=audience,
        lists=LIST_OF,
        before=series[place - 1] if place else None,
        after=series[place + 1] if audience and place + 1 < len(series) else None,
    )


def _calls(writing: Writing) -> dict[str, Call]:
    inline, block = InlineCalls(writing), BlockCalls(writing)
    return {
        "limit": Call(inline.limit, 'limit("spur spacing at least")'),
        "figure": Call(inline.figure, 'figure("hand-width")'),
        "measured": Call(inline.measured, 'measured("tidy-vine", "buds_kept")'),
        "arm_unit": Call(inline.arm_unit, "arm_unit()"),
        "points": Call(inline.points, 'points("crowded-spurs", "too-close")'),
        "term": Call(inline.term, 'term("spur", "spurs")'),
        "rule": Call(inline.rule, 'rule("crowded-spurs")'),
        "vine": Call(inline.vine, 'vine("tidy-vine")'),
        "chapter": Call(inline.chapter, 'chapter("counting-buds")'),
        "page": Call(inline.page, 'page("scores")'),
        "to_fill": Call(inline.to_fill, 'to_fill("first aider")'),
        "cite": Call(inline.cite, 'cite("westover-2016")'),
        "draw": Call(block.draw, 'draw("tidy-vine", state="fine", at="L3", caption="...")'),
        "right_and_wrong": Call(block.right_and_wrong, 'right_and_wrong("crowded-spurs")'),
        "picture": Call(block.picture, 'picture("three-passes", caption="...")'),
        "safety": Call(block.safety, 'safety("saw")'),
    }
