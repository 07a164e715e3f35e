"""Numbers of a block as text: read from a field or a file, and written on a page."""

from __future__ import annotations

import re
from collections.abc import Iterable
from fractions import Fraction

from pencilwood.block.errors import BlockError
from pencilwood.block.measures import MEASURES, SPELT_UNITS, UNITS, Measure
from pencilwood.block.numbers import FEWEST_DIGITS, Range, exponent, fewer_digits, rounded
from pencilwood.units import UnitSystem, round_half_up
from pencilwood.words import say
from pencilwood.words.languages import NUMBER_MARKS

NUMBER = re.compile(r"[0-9]{1,9}(?:[.,][0-9]{1,6})?")
_NUMBERS = re.compile(r"\s*([0-9][0-9.,]*(?:(?:\s+(?:to|a)\s+|\s*[–-]\s*)[0-9][0-9.,]*){0,3})\s*")
_TO = re.compile(r"\s+(?:to|a)\s+|\s*[–-]\s*")
_SQUARE = str.maketrans({"²": "2"})


def read_number(text: str) -> Fraction:
    """A plain number, with a point or a comma."""
    if not NUMBER.fullmatch(text.strip()):
        raise BlockError("not-a-number", {"found": text.strip()})
    return Fraction(text.strip().replace(",", "."))


def digits_of(text: str) -> int | None:
    """Significant digits of a number as somebody wrote it; nothing at all is exact."""
    return len(re.sub(r"[.,]", "", text.strip()).lstrip("0")) or None


def read_range(text: str, measure: Measure) -> Range:
    """`2.5 lb`, `2.3 to 2.8 lb` or `2.3 to 2.5 to 2.8 lb` in our own units.

    Raises BlockError "not-a-number", "no-unit", "unknown-unit" or "turned-round".
    """
    numbers, unit = _split(text)
    factor = _factor(unit, measure)
    values = [read_number(number) * factor for number in numbers]
    return range_of(values, digits_given(numbers, measure))


def range_of(values: list[Fraction], digits: int | None) -> Range:
    """One, two or three numbers as a range; between two, the middle is likely."""
    low, high = values[0], values[-1]
    likely = values[1] if len(values) == 3 else (low + high) / 2
    return Range(low, likely, high, digits)


def digits_given(numbers: list[str], measure: Measure) -> int | None:
    """The fewest digits of all numbers; None where they are counted or of the layout."""
    if measure.whole or measure.exact:
        return None
    digits: int | None = None
    for number in numbers:
        digits = fewer_digits(digits, digits_of(number))
    return digits


def _split(text: str) -> tuple[list[str], str]:
    """The numbers and what stands behind them."""
    match = _NUMBERS.match(text)
    if match is None:
        raise BlockError("not-a-number", {"found": text.strip()})
    numbers = _TO.split(match[1])
    if len(numbers) > 3:
        raise BlockError("not-a-number", {"found": text.strip()})
    return numbers, text[match.end() :].strip()


def _factor(unit: str, measure: Measure) -> Fraction:
    known = UNITS[measure.kind]
    # `24 buds` and `120 EUR` read well; what is counted is plain from the question.
    if measure.kind == "number" and re.fullmatch(r"[^\W\d_]*|[$€£]", unit):
        return Fraction(1)
    if not unit:
        raise BlockError("no-unit", {"units": _listed(measure)})
    plain = unit.translate(_SQUARE).replace(" ", "")
    # `12 EUR/h`, `15 buds/kg`: the word before the stroke says nothing new.
    if plain not in known:
        plain = re.sub(r"^([^\W\d_]+|[$€£])(?=/)", "", plain)
    plain = SPELT_UNITS.get(plain, plain)
    if plain not in known:
        raise BlockError("unknown-unit", {"found": unit, "units": _listed(measure)})
    return known[plain]


def _listed(measure: Measure) -> str:
    return ", ".join(unit for unit in UNITS[measure.kind] if unit)


def decimal(value: Fraction, language: str, least_places: int = 0) -> str:
    """An already rounded number: the language's decimal sign, thousands from 10,000 up apart.

    At least `least_places` digits stand behind the sign.
    """
    text = f"{abs(value.numerator) // value.denominator}"
    rest = abs(value) % 1
    marks = NUMBER_MARKS[language]
    if len(text) > 4:
        text = re.sub(r"\B(?=(?:\d{3})+$)", marks.thousands, text)
    if rest or least_places:
        places = ""
        while rest or len(places) < least_places:
            rest *= 10
            places += str(int(rest))
            rest %= 1
        text += marks.decimal + places
    return f"-{text}" if value < 0 else text


def _places(values: Iterable[Fraction]) -> int:
    """Digits behind the sign that all of a range get: `4.0 to 6.4`, yet `9.5 to 12`.

    Numbers of unlike size were rounded at unlike places, and a nought would claim too much.
    """
    values = tuple(values)
    if len({exponent(value) for value in values}) > 1:
        return 0
    return max(len(decimal(abs(value) % 1, "en")) - 2 if value % 1 else 0 for value in values)


def shown_number(
    value: Fraction, name: str, units: UnitSystem, language: str, digits: int | None = None
) -> str:
    """A single value with its unit, rounded as its measure asks."""
    measure = MEASURES[name]
    number = rounded(value / measure.factor(units), digits, whole=measure.whole)
    return with_unit(decimal(number, language), name, units, language, is_one=number == 1)


def shown(value: Range, name: str, units: UnitSystem, language: str) -> str:
    """A range with its unit: one number where its ends show alike.

    A count that is rounded to fewer digits than it has is told as about so many.
    """
    measure = MEASURES[name]
    low, likely, high = (
        rounded(one / measure.factor(units), value.digits, whole=measure.whole)
        for one in (value.low, value.likely, value.high)
    )
    if low == high:
        one = with_unit(decimal(likely, language), name, units, language, is_one=likely == 1)
        is_off = measure.whole and likely != round_half_up(value.likely / measure.factor(units))
        return say(language, "block.about", number=one) if is_off else one
    places = _places((low, likely, high))
    first, middle, last = (decimal(one, language, places) for one in (low, likely, high))
    ends = say(language, "block.range", low=first, high=last)
    text = with_unit(ends, name, units, language, is_one=False)
    return say(language, "block.likely", range=text, likely=middle)


def shown_ends(low: Fraction, high: Fraction, name: str, units: UnitSystem, language: str) -> str:
    """A band that somebody gave, in as few digits as say it, with its unit once."""
    measure = MEASURES[name]
    ends = [
        rounded(one / measure.factor(units), FEWEST_DIGITS, whole=measure.whole)
        for one in (low, high)
    ]
    places = _places(ends)
    first, last = (decimal(one, language, places) for one in ends)
    text = say(language, "block.range", low=first, high=last)
    return with_unit(text, name, units, language, is_one=False)


def with_unit(number: str, name: str, units: UnitSystem, language: str, *, is_one: bool) -> str:
    """A number with its unit or its word behind it."""
    measure = MEASURES[name]
    if measure.unit(units) == "%":
        return number + NUMBER_MARKS[language].percent
    if measure.word:
        unit = say(language, f"block.word.{measure.word}.{'one' if is_one else 'many'}")
    else:
        unit = say(language, f"block.unit.{measure.unit(units)}") if measure.unit(units) else ""
    return f"{number} {unit}".strip()
