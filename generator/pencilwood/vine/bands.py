"""A band: the figure a trainer sets and a rule reads, with its published range and source."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Literal

from pencilwood.units import UnitSystem, format_length

Kind = Literal["length", "count"]
Status = Literal["published", "common practice, no source", "from memory"]


@dataclass(frozen=True)
class Band:
    """One figure of `content/profile.yml`."""

    name: str
    """Key in the profile, in words: `spur spacing at least`."""
    kind: Kind
    """A length in millimetres or a plain count."""
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

    def words(self, value: int, units: UnitSystem, language: str) -> str:
        """A value of this figure as a page shows it."""
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
    """What each band is set to, in words, by band name."""
    return {band.name: band.words(limits[band.name], units, language) for band in bands}
