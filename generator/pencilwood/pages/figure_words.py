"""Figures as pages show them, in the profile's units."""

from __future__ import annotations

from fractions import Fraction

from pencilwood.cases.reference import Amount, Figure
from pencilwood.pages.desk import Desk
from pencilwood.pages.spoken_lengths import beside_published, span
from pencilwood.units import format_number, round_half_up
from pencilwood.vine.bands import Band
from pencilwood.words.languages import NUMBER_MARKS

_DEGREES = "°C"


def band_value(desk: Desk, band: Band, form: str = "") -> str:
    """What a figure of the profile is set to, for all vines or for those of one form."""
    limits = desk.profile.form_limits[form] if form else desk.profile.limits
    return band.words(limits[band.name], desk.profile.units, desk.language)


def range_words(desk: Desk, band: Band) -> str:
    """The range of a figure of the profile, in one unit: `6 to 9 mm`, `1.5 to 4 cm`, `8 to 12`."""
    low, high = band.ends(desk.profile.units)
    return _between(desk, (band, low), (band, high))


def set_range_words(desk: Desk, least: Band, most: Band, form: str = "") -> str:
    """What two figures of the profile are set to, as one range: `7 to 13 mm`."""
    limits = desk.profile.form_limits[form] if form else desk.profile.limits
    return _between(desk, (least, limits[least.name]), (most, limits[most.name]))


def _between(desk: Desk, *ends: tuple[Band, int]) -> str:
    low, high = (band.words(end, desk.profile.units, desk.language) for band, end in ends)
    (band, lowest), _ = ends
    if band.kind != "length":
        return desk.say("figure.range", low=low, high=high)
    if low.endswith(" mm") and high.endswith(" cm"):
        low = f"{format_number(Fraction(lowest, 10), 1, desk.language)} cm"
    low_number, _, low_unit = low.rpartition(" ")
    high_number, _, high_unit = high.rpartition(" ")
    if low_unit != high_unit:
        return desk.say("figure.range", low=low, high=high)
    return f"{desk.say('figure.range', low=low_number, high=high_number)} {high_unit}"


def figure_words(desk: Desk, figure: Figure) -> str:
    """`10 cm`, `8 to 13 cm`, `8 cm (3 in)`, `14 days`, `35%`."""
    return _figure(desk, figure).replace(" %", NUMBER_MARKS[desk.language].percent)


def _figure(desk: Desk, figure: Figure) -> str:
    ends = [figure.low, figure.high] if figure.is_range else [figure.low]
    if figure.low.is_us and desk.profile.units == "metric":
        return beside_published(desk, *(int(end.number) for end in ends))
    shown = [_shown(desk, figure, end) for end in ends]
    if figure.low.is_length or not figure.is_range:
        return span(desk, shown)
    # A count may hold a space in its unit: "shoots per foot".
    low_number, _, low_unit = shown[0].partition(" ")
    high_number, _, high_unit = shown[1].partition(" ")
    if low_unit == high_unit:
        return f"{desk.say('figure.range', low=low_number, high=high_number)} {high_unit}".rstrip()
    return desk.say("figure.range", low=shown[0], high=shown[1])


def _shown(desk: Desk, figure: Figure, amount: Amount) -> str:
    if amount.is_length:
        return desk.length(int(amount.number))
    unit = figure.unit.get(desk.language, "")
    number = amount.number
    if unit == _DEGREES and desk.profile.units == "us":
        number, unit = Fraction(round_half_up(number * 9 / 5 + 32)), "°F"
    return f"{format_number(number, 4, desk.language)} {unit}".rstrip()
