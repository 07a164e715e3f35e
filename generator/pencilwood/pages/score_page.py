"""How scores work: what each rule costs, and the figures that the rules go by."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from pencilwood.pages.desk import Desk
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.page import Page
from pencilwood.pages.rule_prices import form_word, rule_shown
from pencilwood.pages.spoken_lengths import beside_published
from pencilwood.rules import BANDS, FORM_BANDS, RULES
from pencilwood.vine.bands import Band, Limits, default_limits


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
        rules=tuple(rule_shown(desk, rule) for rule in RULES),
        bands=bands_shown(desk, BANDS),
        forms=tuple(
            (form_word(desk, form), bands_shown(desk, bands, desk.profile.form_limits.get(form)))
            for form, bands in FORM_BANDS.items()
            if bands
        ),
    )


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
        range=beside_published(desk, band.lowest, band.highest)
        if band.in_inches and desk.profile.units == "metric"
        else desk.say("scores.range.value", low=shown(band.lowest), high=shown(band.highest)),
        status=desk.say(f"status.{band.status}"),
        source=band.source[desk.language],
        outside=not band.lowest <= value <= band.highest,
    )
