"""How scores work: what each rule costs, and the figures that the rules go by."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from pencilwood.pages.desk import Desk
from pencilwood.pages.figure_words import range_words
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.page import Page
from pencilwood.pages.rule_prices import form_word, in_order, rule_shown
from pencilwood.pages.spoken_lengths import beside_published
from pencilwood.rules import BANDS, FORM_BANDS
from pencilwood.vine.bands import Band, Limits, arm_unit, default_limits


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
        rules=tuple(rule_shown(desk, rule, among_others=True) for rule in in_order()),
        bands=sorted(bands_shown(desk, BANDS), key=lambda band: band.name),
        forms=_forms(desk),
    )


def _forms(desk: Desk) -> tuple[tuple[str, tuple[ShownBand, ...]], ...]:
    """The figures of each form that has its own; forms with the same ones are named together."""
    alike: dict[tuple[ShownBand, ...], str] = {}
    for form, bands in FORM_BANDS.items():
        if bands:
            shown = bands_shown(desk, bands, desk.profile.form_limits.get(form))
            name = form_word(desk, form)
            before = alike.get(shown)
            both = desk.say("scores.forms", form=before, other=name) if before else name
            alike[shown] = both
    return tuple((name, shown) for shown, name in alike.items())


def bands_shown(
    desk: Desk, bands: Sequence[Band], limits: Limits | None = None
) -> tuple[ShownBand, ...]:
    """Figures with their value in this vineyard, or for the vines of one form."""
    limits = {**default_limits(bands), **(limits or desk.profile.limits)}
    return tuple(_band(desk, band, limits[band.name]) for band in bands)


def _band(desk: Desk, band: Band, value: int) -> ShownBand:
    return ShownBand(
        name=desk.say(f"band.{band.name}", **arm_unit(desk.profile.units, desk.language)),
        value=band.words(value, desk.profile.units, desk.language),
        range=beside_published(desk, band.lowest, band.highest)
        if band.in_inches and not band.in_mm and desk.profile.units == "metric"
        else range_words(desk, band),
        status=desk.say(f"status.{band.status}"),
        source=band.source[desk.language],
        outside=not band.holds(value, desk.profile.units),
    )
