"""Exact numbers with a lowest, a most likely and a highest value, and honest rounding.

Every sum of a block works with ranges: what goes in as a range comes out as one. Values are
exact fractions, so that a page, the terminal and the browser cannot differ in the last digit.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from fractions import Fraction

from pencilwood.block.errors import BlockError
from pencilwood.units import round_half_up

Number = int | Fraction

FEWEST_DIGITS, MOST_DIGITS = 2, 4
"""How many digits a measured result shows: as many as its inputs, within these limits."""
FEWEST_DIGITS_OF_A_COUNT = 3


@dataclass(frozen=True)
class Range:
    """A value of nothing or more, as sure as it was given."""

    low: Fraction
    likely: Fraction
    high: Fraction
    digits: int | None = None
    """Significant digits that the value deserves; None for a count or a length of the layout."""

    def __post_init__(self) -> None:
        if not self.low <= self.likely <= self.high:
            raise BlockError("turned-round")

    def __add__(self, other: Range | Number) -> Range:
        return self._with(other, lambda a, b: a + b)

    def __mul__(self, other: Range | Number) -> Range:
        return self._with(other, lambda a, b: a * b)

    def __sub__(self, other: Range | Number) -> Range:
        return self._with(turned(as_range(other)), lambda a, b: a - b)

    def __truediv__(self, other: Range | Number) -> Range:
        divisor = as_range(other)
        if divisor.low <= 0:
            raise BlockError("divided-by-nothing")
        return self._with(turned(divisor), lambda a, b: a / b)

    def _with(self, other: Range | Number | _Turned, by: Callable[..., Fraction]) -> Range:
        that = other if isinstance(other, Range | _Turned) else as_range(other)
        return Range(
            by(self.low, that.low),
            by(self.likely, that.likely),
            by(self.high, that.high),
            fewer_digits(self.digits, that.digits),
        )

    def each(self, rule: Callable[[Fraction], Number]) -> Range:
        """What a rule that never falls makes of each of the three values."""
        low, likely, high = (Fraction(rule(one)) for one in (self.low, self.likely, self.high))
        return Range(low, likely, high, self.digits)

    def at_least(self, least: Number) -> Range:
        """The same, but nothing below `least`."""
        return self.each(lambda value: max(value, Fraction(least)))

    def at_most(self, most: Number) -> Range:
        """The same, but nothing above `most`."""
        return self.each(lambda value: min(value, Fraction(most)))

    def counted(self) -> Range:
        """The same value taken as exact."""
        return replace(self, digits=None)

    @property
    def is_one(self) -> bool:
        """Whether lowest and highest are the same."""
        return self.low == self.high


@dataclass(frozen=True)
class _Turned:
    """A range with its ends exchanged, for sums in which more of it gives less."""

    low: Fraction
    likely: Fraction
    high: Fraction
    digits: int | None


def turned(value: Range) -> _Turned:
    """The ends exchanged."""
    return _Turned(value.high, value.likely, value.low, value.digits)


def as_range(value: Range | Number) -> Range:
    """A plain number as a range that is only that number."""
    if isinstance(value, Range):
        return value
    exact = Fraction(value)
    return Range(exact, exact, exact)


def whole(value: Range) -> Range:
    """Whole buds or vines: nobody leaves a part of one."""
    return value.each(round_half_up)


def spread(values: tuple[Fraction, Fraction, Fraction], digits: int | None) -> Range:
    """A range from three outcomes, of which the second is the likely one."""
    return Range(min(values), values[1], max(values), digits)


def fewer_digits(one: int | None, other: int | None) -> int | None:
    """The digits that a result of both deserves."""
    if one is None or other is None:
        return other if one is None else one
    return min(one, other)


def significant(value: Fraction, digits: int) -> Fraction:
    """A value rounded to so many significant digits; exactly half goes up."""
    if value == 0:
        return value
    step = Fraction(10) ** (exponent(value) - digits + 1)
    rounded = round_half_up(abs(value) / step) * step
    return -rounded if value < 0 else rounded


def exponent(value: Fraction) -> int:
    """The power of ten of the first digit: 0 for 6.4, 1 for 12, -2 for 0.05; 0 for nought."""
    size, power = abs(value), 0
    while size >= 10:
        size /= 10
        power += 1
    while 0 < size < 1:
        size *= 10
        power -= 1
    return power


def rounded(value: Fraction, digits: int | None, *, whole: bool) -> Fraction:
    """A value as it may be shown: whole where it is counted, else to the digits it deserves."""
    if whole:
        nearest = Fraction(round_half_up(value))
        if digits is None:
            return nearest
        return significant(nearest, max(digits, FEWEST_DIGITS_OF_A_COUNT))
    known = MOST_DIGITS if digits is None else digits
    return significant(value, min(max(known, FEWEST_DIGITS), MOST_DIGITS))
