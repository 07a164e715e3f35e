"""Figures as pages show them, in the profile's units."""

from __future__ import annotations

from fractions import Fraction

from pencilwood.cases.reference import Amount, Figure
from pencilwood.pages.desk import Desk
from pencilwood.units import format_number, round_half_up
from pencilwood.vine.bands import Band

_DEGREES = "°C"


def band_value(desk: Desk, band: Band, form: str = "") -> str:
    """What a figure of the profile is set to, for all vines or for those of one form."""
    limits = desk.profile.form_limits[form] if form else desk.profile.limits
    value = limits[band.name]
    return desk.length(value) if band.kind == "length" else str(value)


def figure_words(desk: Desk, figure: Figure) -> str:
    """`10 cm`, `8 to 13 cm`, `14 days`, `35 %`."""
    low = _shown(desk, figure, figure.low)
    if not figure.is_range:
        return low
    if _in_centimetres(desk, figure):
        ends = (
            format_number(end.number / 10, 1, desk.language) for end in (figure.low, figure.high)
        )
        return f"{desk.say('figure.range', low=next(ends), high=next(ends))} cm"
    high = _shown(desk, figure, figure.high)
    # A length may hold a space in its number ("3 1/2 in"), a count in its unit ("shoots per foot").
    parted = str.rpartition if figure.low.is_length else str.partition
    low_number, _, low_unit = parted(low, " ")
    high_number, _, high_unit = parted(high, " ")
    if low_unit == high_unit and low_number:
        return f"{desk.say('figure.range', low=low_number, high=high_number)} {high_unit}"
    return desk.say("figure.range", low=low, high=high)


def _in_centimetres(desk: Desk, figure: Figure) -> bool:
    """Whether a range of lengths would begin in millimetres and end in centimetres."""
    metric = figure.low.is_length and desk.profile.units == "metric"
    return metric and figure.low.number < 100 <= figure.high.number


def _shown(desk: Desk, figure: Figure, amount: Amount) -> str:
    if amount.is_length:
        return desk.length(int(amount.number))
    unit = figure.unit.get(desk.language, "")
    number = amount.number
    if unit == _DEGREES and desk.profile.units == "us":
        number, unit = Fraction(round_half_up(number * 9 / 5 + 32)), "°F"
    return f"{format_number(number, 3, desk.language)} {unit}".rstrip()
