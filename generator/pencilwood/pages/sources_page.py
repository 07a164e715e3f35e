"""The page of sources: what each is, how it was read, and what rests on it."""

from __future__ import annotations

import re
from dataclasses import dataclass

from markupsafe import Markup

from pencilwood.cases.reference import Source
from pencilwood.pages.desk import Desk
from pencilwood.pages.figure_words import figure_words
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.page import Page
from pencilwood.pages.parts_by_others import parts_by_others
from pencilwood.pages.score_page import ShownBand, bands_shown
from pencilwood.pages.unbroken import keep_names_together
from pencilwood.rules import RULES
from pencilwood.vine.bands import Band

SOURCES = "sources"


@dataclass(frozen=True)
class ShownSource:
    """One source, and what rests on it."""

    anchor: str
    title: Markup
    source: Source
    figures: tuple[tuple[str, str], ...]
    """What each figure is of, where its file says so, and its value."""
    words: tuple[tuple[str, str], ...]
    """Anchor and word of each trade word."""
    chapters: tuple[tuple[str, str], ...]
    """Address and title of each chapter that names it."""

    @property
    def bears(self) -> bool:
        """Whether anything of the handbook rests on it."""
        return bool(self.figures or self.words or self.chapters)


@dataclass(frozen=True)
class BandOfRule:
    """A figure of the profile and the rule that goes by it."""

    anchor: str
    band: ShownBand
    rule: str
    rule_title: str


def source_anchor(key: str) -> str:
    """Where a source stands on the page."""
    return f"source-{key}"


def band_anchor(band: Band) -> str:
    """Where a figure of the profile stands on the page."""
    return "band-" + re.sub(r"[^a-z0-9]+", "-", band.name.lower()).strip("-")


def sources_page(handbook: Handbook, language: str) -> Page:
    """Every source that something rests on, then every figure of the profile with its own."""
    desk = Desk(handbook, SOURCES, language)
    by_title = sorted(
        handbook.reference.sources.values(), key=lambda one: desk.own(one.title.words).lower()
    )
    sources = [shown for one in by_title if (shown := _shown(desk, one)).bears]
    return desk.write(
        "sources.html",
        desk.say(SOURCES),
        description=desk.say("sources.lead"),
        menu_title=desk.say(SOURCES),
        kinds=tuple(
            (kind, tuple(one for one in sources if one.source.kind == kind))
            for kind in ("published", "common practice", "from memory")
        ),
        parts=tuple((desk.asset(f"licences/{part.text}"), part) for part in parts_by_others()),
        bands=tuple(
            BandOfRule(band_anchor(band), shown, rule.name, rule.title[language])
            for rule in RULES
            for band, shown in zip(rule.bands, bands_shown(desk, rule.bands), strict=True)
        ),
    )


def _shown(desk: Desk, source: Source) -> ShownSource:
    reference = desk.handbook.reference
    figures = tuple(
        (figure.name.get(desk.language, ""), figure_words(desk, figure))
        for figure in reference.figures.values()
        if figure.source == source.key
    )
    words = tuple(
        (f"word-{term.key}", term.words[desk.language].word)
        for term in reference.terms.values()
        if term.source == source.key
    )
    chapters = tuple(
        (desk.href(chapter.name), chapter.title)
        for chapter in desk.handbook.chapters
        if chapter.language == desk.language and _names(chapter.markdown, source.key)
    )
    title = keep_names_together(desk.own(source.title.words))
    return ShownSource(source_anchor(source.key), title, source, figures, words, chapters)


def _names(text: str, key: str) -> bool:
    return re.search(rf"\bcite\(\s*[\"']{re.escape(key)}[\"']", text) is not None
