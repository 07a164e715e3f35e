"""Lengths as people write them in a vineyard notebook, and as pages show them.

Inside the program every length is a whole number of millimetres. A length in a file always
carries its unit; a bare number is refused, because "8" may be millimetres or centimetres.
"""

from __future__ import annotations

import re
from fractions import Fraction
from functools import lru_cache
from typing import Literal

from pencilwood.words.languages import NUMBER_MARKS

UnitSystem = Literal["metric", "us"]

_MM_PER_UNIT: dict[str, Fraction] = {
    "mm": Fraction(1),
    "cm": Fraction(10),
    "m": Fraction(1000),
    "in": Fraction(254, 10),
    "ft": Fraction(3048, 10),
}
UNIT_NAMES = tuple(_MM_PER_UNIT)
SPELT: dict[str, str] = {
    **dict.fromkeys(("inch", "inches", '"', "″", "”"), "in"),
    **dict.fromkeys(("foot", "feet"), "ft"),
}
"""What people write in the place of a unit's short name."""

PER_METRE = 381
PER_FOOT = 1250
"""One bud on each metre, and one on each foot, as buds on 381 m: that is 1250 ft exactly, so that
whole numbers of either are whole."""
DENSITY_MM = PER_METRE * 1000
_PER_LENGTH: dict[UnitSystem, int] = {"metric": PER_METRE, "us": PER_FOOT}
US_UNIT_NAMES = ("in", "ft")

# At most nine digits: no vine needs more, and a number that long is a slip of the finger.
_LENGTH = re.compile(
    r"^(?:(?P<whole>\d{1,9})\s+)?(?P<top>\d{1,9})/(?P<bottom>\d{1,9})\s*(?P<unit1>[a-zA-Z]+|[\"″”])$"
    r"|^(?P<number>\d{1,9}(?:[.,]\d{1,6})?)\s*(?P<unit2>[a-zA-Z]*|[\"″”])$"
)


class UnitError(ValueError):
    """A length that cannot be read; `problem` is a short stable name for the reason."""

    def __init__(self, problem: str, found: str) -> None:
        super().__init__(f"{problem}: {found}")
        self.problem = problem
        self.found = found


def parse_length(text: str) -> int:
    """Read `8 mm`, `12 cm`, `1.5 m`, `5/16 in` or `1 1/2 in` as whole millimetres.

    Raises UnitError with problem "no-unit", "unknown-unit" or "not-a-length".
    An inch is 25.4 mm and a foot 304.8 mm exactly; halves round up.
    """
    return _parsed(text)


@lru_cache(maxsize=5_000)
def _parsed(text: str) -> int:
    match = _LENGTH.match(text.strip())
    if match is None:
        raise UnitError("not-a-length", text)
    unit = match["unit1"] or match["unit2"]
    if not unit:
        raise UnitError("no-unit", text)
    unit = SPELT.get(unit, unit)
    if unit not in _MM_PER_UNIT:
        raise UnitError("unknown-unit", text)
    if match["number"] is not None:
        amount = Fraction(match["number"].replace(",", "."))
    elif int(match["bottom"]) == 0:
        raise UnitError("not-a-length", text)
    else:
        amount = int(match["whole"] or 0) + Fraction(int(match["top"]), int(match["bottom"]))
    return round_half_up(amount * _MM_PER_UNIT[unit])


def round_half_up(value: Fraction) -> int:
    """The nearest whole number; exactly half goes up, on every machine."""
    return (2 * value.numerator + value.denominator) // (2 * value.denominator)


def format_length(mm: int, units: UnitSystem = "metric", language: str = "en") -> str:
    """A length as a page shows it, rounded to what a tape can tell.

    Metric: as thin as a cane in mm, under 10 m in cm, else in m, so that two distances that are
    compared have one unit. US: under 2 in to the sixteenth, under 3 ft to the half inch, else in
    feet to the half foot or quarter foot.
    """
    return _length(mm, units, language)


@lru_cache(maxsize=5_000)
def _length(mm: int, units: UnitSystem, language: str) -> str:
    if units == "us":
        return _us_length(mm)
    if abs(mm) < 20:
        return f"{mm} mm"
    if abs(mm) < 10_000:
        return f"{_decimal(Fraction(mm, 10), 1, language)} cm"
    return f"{_decimal(Fraction(mm, 1000), 1, language)} m"


def format_density(buds: Fraction | int, units: UnitSystem, language: str) -> str:
    """Buds on 381 m as buds on each metre or each foot, to a tenth."""
    return _decimal(Fraction(buds) / _PER_LENGTH[units], 1, language)


def format_number(value: Fraction, places: int, language: str) -> str:
    """A number with at most `places` decimals, none that say nothing."""
    return _decimal(value, places, language)


def format_percent(value: Fraction, places: int, language: str) -> str:
    """A share of a hundred with its sign as the language writes it: `81%`, in Spanish `81 %`."""
    return _decimal(value, places, language) + NUMBER_MARKS[language].percent


def _decimal(value: Fraction, places: int, language: str) -> str:
    scaled = round_half_up(abs(value) * 10**places)
    whole, rest = divmod(scaled, 10**places)
    text = str(whole)
    if rest:
        text += NUMBER_MARKS[language].decimal + str(rest).rjust(places, "0").rstrip("0")
    return f"-{text}" if value < 0 and scaled else text


def _us_length(mm: int) -> str:
    inches = Fraction(abs(mm)) / _MM_PER_UNIT["in"]
    sign = "-" if mm < 0 else ""
    if inches < 2:
        return f"{sign}{_mixed(inches, 16)} in"
    if inches < 36:
        return f"{sign}{_mixed(inches, 2)} in"
    return f"{sign}{_mixed(inches / 12, 4)} ft"


def _mixed(value: Fraction, parts: int) -> str:
    nearest = Fraction(round_half_up(value * parts), parts)
    whole, rest = divmod(nearest, 1)
    if not rest:
        return str(whole)
    return f"{whole} {rest}" if whole else str(rest)
