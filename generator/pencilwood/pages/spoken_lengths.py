"""Lengths that were published in inches or feet, as a person with a metric tape says them."""

from __future__ import annotations

from fractions import Fraction

from pencilwood.pages.desk import Desk
from pencilwood.units import format_length, round_half_up

_STEPS_MM = ((20, 1), (50, 5), (1000, 10))
"""Up to which length, in steps of how many millimetres one says it; beyond that, of 10 cm."""
_FAR_STEP_MM = 100
_ONE_MM = {"in": 26, "ft": 305}
"""An inch and a foot, rounded up."""


def beside_published(desk: Desk, *ends_mm: int) -> str:
    """`8 to 20 cm (3 to 8 in)`: rounded as one says it, and behind it as it was published.

    `ends_mm` are one length, or the two ends of a range, converted exactly.
    """
    said = [format_length(_spoken_mm(end), "metric", desk.language) for end in ends_mm]
    published = [format_length(end, "us", desk.language) for end in ends_mm]
    number, _, unit = span(desk, published).rpartition(" ")
    # What is no more than one is one, also where it is less: 1/2 pulgada.
    own = "one" if ends_mm[-1] <= _ONE_MM[unit] else ""
    word = desk.say_of(own, f"figure.{unit}")
    return desk.say("figure.beside", said=span(desk, said), published=f"{number} {word}")


def span(desk: Desk, ends: list[str]) -> str:
    """`8 cm`, `8 to 20 cm`, `12 mm to 5 cm`: the unit once where both ends have the same."""
    low, high = ends[0], ends[-1]
    if len(ends) == 1 or low == high:
        return low
    # A length may hold a space in its number: "3 1/2 in".
    number, _, unit = low.rpartition(" ")
    if number and unit == high.rpartition(" ")[2]:
        return desk.say("figure.range", low=number, high=high)
    return desk.say("figure.range", low=low, high=high)


def _spoken_mm(mm: int) -> int:
    step = next((step for below, step in _STEPS_MM if mm < below), _FAR_STEP_MM)
    return round_half_up(Fraction(mm, step)) * step
