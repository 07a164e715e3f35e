"""What the sums of a block measure, and the units that it is given and shown in.

Inside, a weight is in grams, a length in millimetres, an area in square metres, leaves in
square millimetres, working time in seconds; everything else follows from these. The factors
are exact by definition (1 lb = 453.59237 g, 1 ft = 304.8 mm, 1 acre = 4,046.8564224 m2, 1 US
ton = 2,000 lb). The browser takes this very table from its page.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from pencilwood.units import SPELT, UnitSystem

POUND_G = Fraction("453.59237")
OUNCE_G = POUND_G / 16
TON_G = POUND_G * 2000
INCH_MM = Fraction("25.4")
FOOT_MM = INCH_MM * 12
HECTARE_M2 = Fraction(10_000)
ACRE_M2 = Fraction("4046.8564224")

_G, _KG, _T = Fraction(1), Fraction(1000), Fraction(1_000_000)
_CM, _M = Fraction(10), Fraction(1000)
_ONE = Fraction(1)

UNITS: Mapping[str, Mapping[str, Fraction]] = {
    "weight": {"g": _G, "kg": _KG, "t": _T, "oz": OUNCE_G, "lb": POUND_G, "ton": TON_G},
    "length": {"mm": _ONE, "cm": _CM, "m": _M, "in": INCH_MM, "ft": FOOT_MM},
    "area": {"m2": _ONE, "ha": HECTARE_M2, "ac": ACRE_M2},
    "leaf area": {"cm2": _CM**2, "m2": _M**2, "in2": INCH_MM**2, "ft2": FOOT_MM**2},
    "share": {"%": Fraction(1, 100)},
    "number": {"": _ONE},
    "work": {"s": _ONE, "min": Fraction(60), "h": Fraction(3600)},
    "weight on area": {"t/ha": _T / HECTARE_M2, "ton/ac": TON_G / ACRE_M2},
    "number on area": {"/ha": 1 / HECTARE_M2, "/ac": 1 / ACRE_M2},
    "number on length": {"/m": 1 / _M, "/ft": 1 / FOOT_MM},
    "weight on length": {"kg/m": _KG / _M, "lb/ft": POUND_G / FOOT_MM},
    "number on weight": {"/kg": 1 / _KG, "/lb": 1 / POUND_G},
    "leaf on weight": {"m2/kg": _M**2 / _KG, "ft2/lb": FOOT_MM**2 / POUND_G},
    "leaf on length": {"m2/m": _M**2 / _M, "ft2/ft": FOOT_MM**2 / FOOT_MM},
    "money on weight": {"/kg": 1 / _KG, "/t": 1 / _T, "/lb": 1 / POUND_G, "/ton": 1 / TON_G},
    "money on work": {"/h": Fraction(1, 3600)},
}
"""Kind of thing measured -> unit -> how many of our own units it is."""


SPELT_UNITS: Mapping[str, str] = {**SPELT, "acre": "ac", "acres": "ac"}
"""What people write in the place of a unit's short name."""


@dataclass(frozen=True)
class Measure:
    """One thing that a field asks for or a result tells, with its unit in each system."""

    kind: str
    metric: str
    us: str
    whole: bool = False
    """Counted: shown as a whole number, and exact when it goes in."""
    word: str = ""
    """Name of the word that stands behind the number in place of a unit: `buds`."""
    exact: bool = False
    """A length of the planted layout, which the tape set and no season changes."""

    def unit(self, units: UnitSystem) -> str:
        """The unit in one system."""
        return self.us if units == "us" else self.metric

    def factor(self, units: UnitSystem) -> Fraction:
        """How many of our own units one unit is."""
        return UNITS[self.kind][self.unit(units)]


def _counted(word: str) -> Measure:
    return Measure("number", "", "", whole=True, word=word)


MEASURES: Mapping[str, Measure] = {
    **{
        word: _counted(word)
        for word in (
            *("buds", "spurs", "shoots", "clusters", "vines", "leaves", "people", "years"),
            *("arms", "rows", "wounds", "nodes"),
        )
    },
    "number": Measure("number", "", ""),
    "clusters-per-vine": Measure("number", "", "", word="clusters"),
    "shoots-per-vine": Measure("number", "", "", word="shoots"),
    "days": Measure("number", "", "", word="days"),
    "pounds": Measure("weight", "lb", "lb"),
    "kilograms": Measure("weight", "kg", "kg"),
    "vine-weight": Measure("weight", "kg", "lb"),
    "cluster-weight": Measure("weight", "g", "lb"),
    "small-weight": Measure("weight", "g", "oz"),
    "block-weight": Measure("weight", "t", "ton"),
    "spacing": Measure("length", "m", "ft", exact=True),
    "arm": Measure("length", "cm", "ft", exact=True),
    "short": Measure("length", "cm", "in"),
    "spur-spacing": Measure("length", "cm", "in", exact=True),
    "canopy": Measure("length", "m", "ft", exact=True),
    "area": Measure("area", "ha", "ac", exact=True),
    "leaf-size": Measure("leaf area", "cm2", "in2"),
    "leaf-area": Measure("leaf area", "m2", "ft2"),
    "share": Measure("share", "%", "%"),
    "seconds": Measure("work", "s", "s"),
    "minutes": Measure("work", "min", "min"),
    "hours": Measure("work", "h", "h"),
    "crop-on-area": Measure("weight on area", "t/ha", "ton/ac"),
    "vines-per-hectare": Measure("number on area", "/ha", "/ha", whole=True),
    "vines-per-acre": Measure("number on area", "/ac", "/ac", whole=True),
    "on-length": Measure("number on length", "/m", "/ft"),
    "prunings-on-length": Measure("weight on length", "kg/m", "lb/ft"),
    "buds-on-weight": Measure("number on weight", "/kg", "/lb"),
    "leaf-on-weight": Measure("leaf on weight", "m2/kg", "ft2/lb"),
    "leaf-on-length": Measure("leaf on length", "m2/m", "ft2/ft"),
    "money": Measure("number", "", "", word="money"),
    "price": Measure("money on weight", "/kg", "/lb"),
    "pay": Measure("money on work", "/h", "/h"),
}
