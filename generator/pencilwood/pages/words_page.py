"""The page of trade words, in the page's language and in every other."""

from __future__ import annotations

import unicodedata
from dataclasses import dataclass

from pencilwood.cases.reference import Term, TermWords, Title
from pencilwood.pages.desk import Desk
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.page import Page
from pencilwood.pages.sources_page import source_anchor

WORDS = "words"


@dataclass(frozen=True)
class ShownTerm:
    """One trade word as the page lists it."""

    anchor: str
    here: TermWords
    others: tuple[tuple[str, TermWords], ...]
    """The same in the other languages."""
    source: str
    source_title: Title
    published: bool
    """Whether the source can be looked up; where it cannot, its title says so."""


def word_anchor(key: str) -> str:
    """Where a word stands on the page."""
    return f"word-{key}"


def words_page(handbook: Handbook, language: str) -> Page:
    """Every trade word, in the order of the page's language."""
    desk = Desk(handbook, WORDS, language)
    terms = sorted(
        handbook.reference.terms.values(), key=lambda term: _in_order(term.words[language].word)
    )
    return desk.write(
        "words.html",
        desk.say(WORDS),
        description=desk.say("words.lead"),
        menu_title=desk.say(WORDS),
        terms=tuple(_shown(handbook, term, language) for term in terms),
    )


def _in_order(word: str) -> str:
    """A key that puts á beside a."""
    return unicodedata.normalize("NFD", word.lower())


def _shown(handbook: Handbook, term: Term, language: str) -> ShownTerm:
    others = tuple(
        (other, term.words[other])
        for other in handbook.profile.languages
        if other != language and other in term.words
    )
    source = handbook.reference.sources[term.source]
    return ShownTerm(
        anchor=word_anchor(term.key),
        here=term.words[language],
        others=others,
        source=source_anchor(term.source),
        source_title=source.title,
        published=source.url != "",
    )
