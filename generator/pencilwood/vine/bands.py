"""A band: the figure a trainer sets and a rule reads, with its published range and source."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from pencilwood.units import PER_FOOT, UnitSystem, format_density, format_length, round_half_up
from pencilwood.words import say

Kind = Literal["length", "count", "density"]
Status = Literal["published", "common practice, no source", "from memory"]


@dataclass(frozen=True)
class Band:
    """One figure of `content/profile.yml`."""

    name: str
    """Key in the profile, in words: `spur spacing at least`."""
    kind: Kind
    """A length in millimetres, a plain count, or buds on 381 m, of which `units` tells why."""
    default: int
    lowest: int
    highest: int
    """Range that was published or is common practice; outside it a warning is given."""
    status: Status
    source: Mapping[str, str]
    """Where the range comes from, as printed in the handbook, in each language."""
    in_inches: bool = False
    """Whether the range was published in inches: then pages say both."""
    in_mm: bool = False
    """Whether a metric page tells the length in mm, as tools are sold."""

    @property
    def name_in_feet(self) -> str:
        """Key in the profile under which a density goes by the foot: `buds per foot at least`."""
        return self.name.replace("per metre", "per foot")

    def ends(self, units: UnitSystem) -> tuple[int, int]:
        """The range; by the foot in whole buds, as it was published."""
        if self.kind != "density" or units == "metric":
            return self.lowest, self.highest
        low, high = (round_half_up(Fraction(end, PER_FOOT)) for end in (self.lowest, self.highest))
        return low * PER_FOOT, high * PER_FOOT

    def holds(self, value: int, units: UnitSystem) -> bool:
        """Whether a value lies within the range."""
        low, high = self.ends(units)
        return low <= value <= high

    def words(self, value: int, units: UnitSystem, language: str) -> str:
        """A value of this figure as a page shows it."""
        if self.kind == "density":
            return format_density(value, units, language)
        if self.kind != "length":
            return str(value)
        if self.in_mm and units == "metric":
            return f"{value} mm"
        return format_length(value, units, language)


Limits = Mapping[str, int]
"""What each band is set to in this handbook, by band name."""


def default_limits(bands: Iterable[Band]) -> dict[str, int]:
    """The limits of a profile that sets nothing."""
    return {band.name: band.default for band in bands}


def told_limits(
    bands: Iterable[Band], limits: Limits, units: UnitSystem, language: str
) -> dict[str, str]:
    """What each band is set to, in words, by band name, with the length that buds stand on."""
    told = {band.name: band.words(limits[band.name], units, language) for band in bands}
    return {**told, **arm_unit(units, language)}


def arm_unit(units: UnitSystem, language: str) -> dict[str, str]:
    """The word for the length on which buds are counted, under its name in sentences."""
    return {"metre or foot": on_length(units, language)}


def on_length(units: UnitSystem, language: str) -> str:
    """The length on which buds are counted, as a word."""
    return say(language, f"drawing.on-length.{units}")
