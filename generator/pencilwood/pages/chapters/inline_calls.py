"""The calls of a chapter that stand within a sentence: figures, trade words, links."""

from __future__ import annotations

from markupsafe import Markup

from pencilwood.cases.profile_file import EMPLOYER_FIELDS
from pencilwood.pages.chapters.template import Where
from pencilwood.pages.chapters.writing import Writing
from pencilwood.pages.figure_words import band_value, figure_words, set_range_words
from pencilwood.pages.rule_prices import price_words
from pencilwood.pages.sources_page import SOURCES, band_anchor, source_anchor
from pencilwood.pages.unbroken import keep_names_together
from pencilwood.pages.words_page import WORDS, word_anchor
from pencilwood.rules import BANDS, FORM_BANDS, RULE_BY_NAME
from pencilwood.vine.bands import Band, on_length

_LINK = Markup('<a class="{}" href="{}">{}</a>')
_FITS_A_PHONE = 16
"""Letters of a figure that stay on one line; a longer one would leave a narrow screen."""
_TERM = Markup('<a class="pw-term" href="{}" title="{}">{}</a>')
_FILLED = Markup('<strong class="pw-filled">{}</strong>')
_EMPTY = Markup('<span class="pw-to-fill{}">{}</span>')
_ROW = " pw-to-fill-row"
_NAME_BELOW = Markup('<span class="pw-to-fill-name">{}</span>')
_BANDS = {band.name: band for band in BANDS}
OUR_PAGES = (
    "trainers",
    "vines",
    "quizzes",
    "blocks",
    "rules",
    "scores",
    "safety",
    "words",
    "sources",
)
"""Pages that a chapter may lead to by name."""


class InlineCalls:
    """Calls that give a word or two."""

    def __init__(self, writing: Writing) -> None:
        self._writing = writing
        self._desk = writing.desk

    def limit(self, where: Where, name: str, form: str = "", to: str = "") -> Markup:
        """A figure of the profile, linked to where it comes from; or one that a form has.

        With `to`, the range from it to another one, such as `7 to 13 mm`.
        """
        if form and not self._writing.known(where, form, FORM_BANDS, "unknown-form"):
            return Markup()
        bands = {band.name: band for band in FORM_BANDS[form]} if form else _BANDS
        for one in (name, to) if to else (name,):
            if not self._writing.known(where, one, bands, "unknown-limit"):
                return Markup()
        href = self._desk.href("scores") if form else self._of_profile(bands[name])
        if to:
            words = set_range_words(self._desk, bands[name], bands[to], form)
        else:
            words = band_value(self._desk, bands[name], form)
        return _figure_link(href, words)

    def _of_profile(self, band: Band) -> str:
        return self._desk.href(SOURCES, band_anchor(band))

    def figure(self, where: Where, key: str) -> Markup:
        """A figure of figures.yml, linked to its source."""
        figures = self._desk.handbook.reference.figures
        if not self._writing.known(where, key, figures, "unknown-figure"):
            return Markup()
        figure = figures[key]
        self._writing.sources.add(figure.source)
        href = self._desk.href(SOURCES, source_anchor(figure.source))
        return _figure_link(href, figure_words(self._desk, figure))

    def measured(self, where: Where, case: str, fact: str) -> Markup:
        """A number that is computed from a case's vine."""
        proof = self._writing.case(where, case)
        if proof is None:
            return Markup()
        facts = proof.facts[self._desk.language]
        if not self._writing.known(where, fact, facts, "unknown-fact"):
            return Markup()
        return Markup.escape(facts[fact])

    def arm_unit(self, _: Where) -> Markup:
        """The word for the length of arm that buds are counted on: `metre` or `foot`."""
        return Markup.escape(on_length(self._desk.profile.units, self._desk.language))

    def points(self, where: Where, rule: str, message: str) -> Markup:
        """What breaking a rule costs, in words."""
        if not self._writing.known(where, rule, RULE_BY_NAME, "unknown-rule-called"):
            return Markup()
        one = RULE_BY_NAME[rule]
        if not self._writing.known(where, message, one.messages, "unknown-message-called"):
            return Markup()
        return Markup.escape(price_words(self._desk, one, message))

    def term(self, where: Where, key: str, text: str = "") -> Markup:
        """A trade word; the first time on the page with its meaning and the way to it."""
        terms = self._desk.handbook.reference.terms
        if not self._writing.known(where, key, terms, "unknown-term"):
            return Markup()
        shown = text or terms[key].words[self._desk.language].word
        if key in self._writing.terms:
            return Markup.escape(shown)
        self._writing.terms[key] = where
        return self.word_link(key, shown)

    def word_link(self, key: str, shown: str) -> Markup:
        """A trade word with its meaning and the way to it."""
        words = self._desk.handbook.reference.terms[key].words[self._desk.language]
        return _TERM.format(self._desk.href(WORDS, word_anchor(key)), words.meaning, shown)

    def rule(self, where: Where, name: str) -> Markup:
        """The way to a rule's page."""
        if not self._writing.known(where, name, RULE_BY_NAME, "unknown-rule-called"):
            return Markup()
        title = RULE_BY_NAME[name].title[self._desk.language]
        return _LINK.format("pw-rule-link", self._desk.href(f"rules/{name}"), title)

    def vine(self, where: Where, case: str) -> Markup:
        """The way to a vine's page."""
        proof = self._writing.case(where, case)
        if proof is None:
            return Markup()
        title = self._desk.own(proof.case.title)
        return _LINK.format("pw-vine-link", self._desk.href(f"cases/{case}"), title)

    def chapter(self, where: Where, name: str) -> Markup:
        """The way to another chapter."""
        language = self._desk.language
        names = [one.name for one in self._desk.handbook.chapters if one.language == language]
        other = self._desk.handbook.chapter(name, language)
        if other is None:
            self._writing.known(where, name, names, "unknown-chapter")
            return Markup()
        return _LINK.format("pw-chapter-link", self._desk.href(name), other.title)

    def page(self, where: Where, name: str) -> Markup:
        """The way to one of the handbook's own pages."""
        if not self._writing.known(where, name, OUR_PAGES, "unknown-page"):
            return Markup()
        return _LINK.format("pw-page-link", self._desk.href(name), self._desk.say(name))

    def to_fill(self, where: Where, field: str) -> Markup:
        """What the employer has settled, or an empty line to write it on."""
        if not self._writing.known(where, field, EMPLOYER_FIELDS, "unknown-field"):
            return Markup()
        settled = self._desk.profile.employer.get(field)
        if settled is None:
            name = _NAME_BELOW.format(self._desk.say(f"employer.{field}"))
            row = _ROW if self._writing.is_row_to_fill(where) else ""
            return _EMPTY.format(row, "" if self._writing.is_announced(where) else name)
        if isinstance(settled, int):
            return _FILLED.format(self._desk.length(settled))
        return _FILLED.format(self._desk.own(settled))

    def cite(self, where: Where, key: str) -> Markup:
        """The way to a source."""
        sources = self._desk.handbook.reference.sources
        if not self._writing.known(where, key, sources, "unknown-source-called"):
            return Markup()
        self._writing.sources.add(key)
        href = self._desk.href(SOURCES, source_anchor(key))
        title = keep_names_together(self._desk.own(sources[key].title.words))
        return _LINK.format("pw-cite", href, title)


def _figure_link(href: str, words: str) -> Markup:
    whole = " pw-whole" if len(words) <= _FITS_A_PHONE else ""
    return _LINK.format(f"pw-figure{whole}", href, words)
