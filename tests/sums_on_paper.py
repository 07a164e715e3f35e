"""Reads what a page prints of a sum as somebody with a pencil does: numbers, units and signs.

Words between the signs are left out; a unit turns its number into our own units. Whoever works
along has only the digits that are printed, so what he finds lies between two ends.
"""

from __future__ import annotations

import itertools
import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cache

from pencilwood.block.measures import MEASURES, UNITS
from pencilwood.block.numbers import exponent
from pencilwood.words import catalogue
from pencilwood.words.languages import NUMBER_MARKS

MOST_DIGITS = 4
"""More are not printed of a number that is no count; noughts at its end are left out."""
HALF = Fraction(1, 2)
_COUNTED_ON_AREA = ("/ha", "/ac")
_PARTS = re.compile(r";|\.\s+(?=[A-ZÁÉÍÓÚ])")
_ROUNDED = re.compile(r",\s*(rounded up|rounded down|hacia arriba|hacia abajo|sin decimales),?:?")
_UP = ("rounded up", "hacia arriba")
_NOT_BELOW = ("never below nothing", "nunca menos de cero")
_MORE = re.compile(r"\+%(n\[\d+\])")
SIGNS = {"×": "*", "÷": "/", "−": "-", "+": "+", "(": "(", ")": ")"}


@dataclass(frozen=True)
class Printed:
    """A number as it stands on paper."""

    value: Fraction
    """In our own units."""
    half: Fraction = Fraction(0)
    """How far the number meant may lie from it, for having been rounded."""
    is_counted: bool = False
    is_share: bool = False

    @property
    def ends(self) -> tuple[Fraction, Fraction]:
        """The least and the most that it may have been."""
        return self.value - self.half, self.value + self.half


@dataclass(frozen=True)
class Found:
    """What somebody finds who works a printed sum, and what is printed for it."""

    low: Fraction
    high: Fraction
    told: Printed

    @property
    def agrees(self) -> bool:
        """Whether the printed result is one that can be found."""
        low, high = self.told.ends
        return self.low <= high and low <= self.high


def printed_numbers(text: str, language: str) -> list[Printed]:
    """All numbers of a text with their units."""
    return [_printed(match, language) for match in _numbers(language).finditer(text)]


def worked_on_paper(text: str, language: str) -> list[Found]:
    """Each sum of a sentence that has a sign and a result."""
    sums = []
    for part in _PARTS.split(text):
        way = _ROUNDED.search(part)
        left, _, right = part.partition(way[0] if way else "=")
        told = printed_numbers(right, language)
        if told and re.search(r"[×÷−+]", left):
            one, *others = (_worked(each, language) for each in _alternatives(left))
            assert all(low <= one[1] and one[0] <= high for low, high in others), text
            ends = [_whole(end, way[1]) if way else end for end in one]
            if any(words in text for words in _NOT_BELOW):
                ends = [max(end, Fraction(0)) for end in ends]
            # Whole buds or vines: whoever finds a part of one rounds it.
            half = HALF if told[0].is_counted and not way else told[0].half
            sums.append(Found(ends[0], ends[1], replace(told[0], half=half)))
    return sums


def found_by(told: Printed, *numbers: Printed, by: Callable[..., Fraction]) -> Found:
    """What somebody finds who does this with the printed numbers, beside what is printed."""
    half = max(told.half, HALF) if told.is_counted else told.half
    return Found(*_between(numbers, by), replace(told, half=half))


def _between(numbers: Sequence[Printed], by: Callable[..., Fraction]) -> tuple[Fraction, Fraction]:
    """The least and the most: every step of a sum only rises or only falls with each number."""
    results = [by(*ends) for ends in itertools.product(*(set(one.ends) for one in numbers))]
    return min(results), max(results)


def _whole(value: Fraction, way: str) -> Fraction:
    return Fraction(-(-value // 1) if way in _UP else value // 1)


def _alternatives(left: str) -> list[str]:
    """The sum with vines on a hectare, and with those on an acre, where both are printed."""
    both = re.search(r"\((\d[^()]*), (\d[^()]*)\)", left)
    if both is None:
        return [left]
    return [left.replace(both[0], one) for one in both.groups()]


def _worked(left: str, language: str) -> tuple[Fraction, Fraction]:
    """The least and the most that the sum left of a result may give."""
    left = left.rpartition(": ")[2]
    numbers: list[Printed] = []

    def named(match: re.Match[str]) -> str:
        numbers.append(_printed(match, language))
        return f" #{'%' * numbers[-1].is_share}{len(numbers) - 1} "

    rest = _numbers(language).sub(named, left)
    kept = re.findall(r"#(%?)(\d+)|([×÷−+()])", rest)
    formula = "".join(SIGNS.get(sign) or f"{share}n[{at}]" for share, at, sign in kept)
    # `40 buds + 35 %` is a share of the buds; `100 % − 25 %` stands in brackets.
    formula = _MORE.sub(r"*(1+\1)", formula).replace("%", "")
    # Nothing but numbers by their places and signs is left in it.
    return _between(numbers, lambda *ends: eval(formula, {"n": ends}))  # noqa: S307


def _printed(match: re.Match[str], language: str) -> Printed:
    marks = NUMBER_MARKS[language]
    text = match["number"].replace(marks.thousands, "").replace(marks.decimal, ".")
    factor, unit = _factors(language).get(match["unit"] or "", (Fraction(1), ""))
    value = Fraction(text)
    if unit in _COUNTED_ON_AREA:
        return Printed(value * factor, HALF * factor)
    if match["unit"] in _counted(language) and value.denominator == 1:
        return Printed(value, is_counted=True)
    last = Fraction(10) ** (exponent(value) - MOST_DIGITS + 1)
    return Printed(value * factor, HALF * last * factor, is_share=unit == "%")


@cache
def _factors(language: str) -> Mapping[str, tuple[Fraction, str]]:
    """Unit as the language writes it: how many of our own units it is."""
    words = catalogue(language)
    factors = {
        words[f"block.unit.{unit}"]: (factor, unit)
        for units in UNITS.values()
        for unit, factor in units.items()
        if f"block.unit.{unit}" in words
    }
    for measure in MEASURES.values():
        for many in ("one", "many") if measure.word else ():
            factors[words[f"block.word.{measure.word}.{many}"]] = (Fraction(1), "")
    return {unit: factor for unit, factor in factors.items() if unit}


@cache
def _counted(language: str) -> frozenset[str]:
    """Words behind numbers that are always whole."""
    words = catalogue(language)
    never = {one.word for one in MEASURES.values() if not one.whole}
    names = {one.word for one in MEASURES.values() if one.whole and one.word} - never
    return frozenset(words[f"block.word.{one}.{many}"] for one in names for many in ("one", "many"))


@cache
def _numbers(language: str) -> re.Pattern[str]:
    marks = NUMBER_MARKS[language]
    thousands, decimal = re.escape(marks.thousands), re.escape(marks.decimal)
    units = sorted(_factors(language), key=len, reverse=True)
    unit = "|".join(map(re.escape, units))
    number = rf"\d{{1,3}}(?:{thousands}\d{{3}})+(?:{decimal}\d+)?|\d+(?:{decimal}\d+)?"
    return re.compile(rf"(?P<number>{number})(?:(?:[ \u00a0]|(?=%))(?P<unit>{unit})(?![\w/]))?")
