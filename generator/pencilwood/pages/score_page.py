"""How scores work: what each rule costs, and the figures that the rules go by."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from pencilwood.pages.desk import Desk
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.page import Page
from pencilwood.rules import BANDS, FORM_BANDS, RULES
from pencilwood.rules.rulebook import RULEBOOK, Price
from pencilwood.rules.shapes import Rule
from pencilwood.vine.bands import Band, Limits, default_limits
from pencilwood.words import say

_BLANK = re.compile(r"\{[^{}]*\}")
_BLANK_AT_END = re.compile(r"…\.")
# The unit of a step follows from what the rule's shape measures.
_LENGTH_SHAPES = ("crowding", "blank")
_LENGTH_RULES = ("climbed-too-far",)


@dataclass(frozen=True)
class ShownPrice:
    """One row of the rulebook."""

    rule: str
    title: str
    when: str
    points: str
    must: bool


@dataclass(frozen=True)
class ShownBand:
    """One figure of the profile beside its range and its source."""

    name: str
    value: str
    range: str
    status: str
    source: str
    outside: bool


def scores_page(handbook: Handbook, language: str) -> Page:
    """The rulebook and the profile, printed."""
    desk = Desk(handbook, "scores", language)
    return desk.write(
        "scores.html",
        desk.say("scores"),
        menu_title=desk.say("scores"),
        prices=tuple(row for rule in RULES for row in prices_shown(desk, rule)),
        bands=bands_shown(desk, BANDS),
        forms=tuple(
            (form_word(desk, form), bands_shown(desk, bands, desk.profile.form_limits.get(form)))
            for form, bands in FORM_BANDS.items()
            if bands
        ),
    )


def form_word(desk: Desk, form: str) -> str:
    """A form in the reader's language, by its name in a file."""
    return say(desk.language, f"drawing.form.{form.replace(' ', '-')}")


def prices_shown(desk: Desk, rule: Rule) -> tuple[ShownPrice, ...]:
    """What breaking a rule costs, message by message."""
    return tuple(
        ShownPrice(
            rule=rule.name,
            title=rule.title[desk.language],
            when=_BLANK_AT_END.sub("…", _BLANK.sub("…", sentence[desk.language])),
            points=price_words(desk, rule, RULEBOOK[rule.name, message]),
            must=RULEBOOK[rule.name, message].must,
        )
        for message, sentence in rule.messages.items()
    )


def price_words(desk: Desk, rule: Rule, price: Price) -> str:
    """What a price asks, in words."""
    first = desk.say("scores.first", points=price.first)
    if not price.each:
        return first
    is_length = rule.shape in _LENGTH_SHAPES or rule.name in _LENGTH_RULES
    step = desk.length(price.step) if is_length else desk.say("scores.step-one")
    if not price.first:
        return desk.say("scores.each-only", each=price.each, step=step, most=price.most)
    more = desk.say("scores.each", each=price.each, step=step, most=price.most)
    return f"{first}; {more}"


def bands_shown(
    desk: Desk, bands: Sequence[Band], limits: Limits | None = None
) -> tuple[ShownBand, ...]:
    """Figures with their value in this vineyard, or for the vines of one form."""
    limits = {**default_limits(bands), **(limits or desk.profile.limits)}
    return tuple(_band(desk, band, limits[band.name]) for band in bands)


def _band(desk: Desk, band: Band, value: int) -> ShownBand:
    def shown(value: int) -> str:
        return desk.length(value) if band.kind == "length" else str(value)

    return ShownBand(
        name=desk.say(f"band.{band.name}"),
        value=shown(value),
        range=desk.say("scores.range.value", low=shown(band.lowest), high=shown(band.highest)),
        status=desk.say(f"status.{band.status}"),
        source=band.source[desk.language],
        outside=not band.lowest <= value <= band.highest,
    )
