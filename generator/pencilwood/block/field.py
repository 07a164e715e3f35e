"""One question that a sum asks: what is meant, how it is written, what is usual."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from pencilwood.block.bud_load import Formula
from pencilwood.block.errors import BlockError
from pencilwood.block.measures import MEASURES
from pencilwood.block.numbers import Range
from pencilwood.block.shown import read_range, shown, shown_number
from pencilwood.block.status import Status
from pencilwood.units import UnitSystem
from pencilwood.words import fitting, knows, say

Value = Range | Formula | str

_FORMULA = re.compile(r"([0-9]{1,3})\s*\+\s*([0-9]{1,3})")


@dataclass(frozen=True)
class Field:
    """One thing that a supervisor gives."""

    name: str
    """Name in the sums, with the unit: `prunings_g`."""
    key: str
    """Name in `content/blocks.yml` and on the command line: `prunings`."""
    measure: str = ""
    """What it measures; empty for a formula or a choice."""
    low: str = "0"
    high: str = "0"
    """Bounds with their unit; beyond them it is a slip of the finger."""
    choices: tuple[str, ...] = ()
    default: str = ""
    """What is usual, with its unit; empty where only the supervisor can know."""
    status: Status = "common practice, no source"
    ranged: bool = True
    """Whether it may be a range."""

    @property
    def source(self) -> str:
        """Where what is usual comes from, in English, for editors; empty where nobody says."""
        return self.source_in("en")

    def source_in(self, language: str) -> str:
        """The same in a language of the handbook."""
        key = f"block.source.{self.name}"
        return say(language, key) if knows(key) else ""

    def label(self, units: UnitSystem, language: str) -> str:
        """What is asked, in the reader's units."""
        return say(language, fitting(f"block.field.{self.name}", units))

    def read(self, text: str) -> Value:
        """The value of a text such as `2.3 to 2.8 lb`; BlockError says what is wrong."""
        try:
            return self._read(text.strip())
        except BlockError as error:
            raise error.about(self.name) from None

    def trouble(self, text: str, language: str) -> str:
        """Why a text cannot be read, in one sentence; empty where it can."""
        try:
            self.read(text)
        except BlockError as error:
            if error.problem == "out-of-bounds":
                return self.out_of_bounds("metric", language).told(language)
            return error.told(language)
        return ""

    def _read(self, text: str) -> Value:
        if not text:
            raise BlockError("missing")
        if self.choices:
            if text not in self.choices:
                raise BlockError("not-a-choice", {"found": text, "names": ", ".join(self.choices)})
            return text
        if not self.measure:
            return read_formula(text)
        return self.checked(read_range(text, MEASURES[self.measure]))

    def checked(self, value: Range) -> Range:
        """The value, when it is possible at all."""
        if not self.ranged and not value.is_one:
            raise BlockError("one-number")
        whole = MEASURES[self.measure].whole
        if whole and any(one.denominator != 1 for one in (value.low, value.high)):
            raise BlockError("not-whole")
        low, high = self.bounds()
        if value.low < low or value.high > high:
            raise self.out_of_bounds("metric")
        return value

    def bounds(self) -> tuple[Fraction, Fraction]:
        """Lowest and highest possible value in our own units."""
        measure = MEASURES[self.measure]
        return read_range(self.low, measure).low, read_range(self.high, measure).high

    def out_of_bounds(self, units: UnitSystem, language: str = "en") -> BlockError:
        """The refusal of a value beyond the bounds."""
        low, high = self.bounds()
        facts = {
            "low": shown_number(low, self.measure, units, language),
            "high": shown_number(high, self.measure, units, language),
        }
        return BlockError("out-of-bounds", facts)

    def usual(self) -> Value | None:
        """The default, or None where there is none."""
        return self.read(self.default) if self.default else None

    def text(self, value: Value, units: UnitSystem, language: str) -> str:
        """A value as a page shows it; a choice by its words."""
        if isinstance(value, Range):
            return shown(value, self.measure, units, language)
        if isinstance(value, Formula):
            return f"{value.first_buds}+{value.further_buds}"
        return say(language, f"block.choice.{self.name}.{value}")


def read_formula(text: str) -> Formula:
    """`30+10` as a formula; the first figure must be at least one bud."""
    match = _FORMULA.fullmatch(text)
    if match is None or int(match[1]) == 0:
        raise BlockError("not-a-formula", {"found": text})
    return Formula(int(match[1]), int(match[2]))
