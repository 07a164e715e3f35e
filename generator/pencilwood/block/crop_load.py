"""Whether crop and growth are in balance, and whether a canopy grows too strongly."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from pencilwood.block.answer import Answer, Facts, Figure, Sentence
from pencilwood.block.measures import MEASURES
from pencilwood.block.numbers import Range, as_range
from pencilwood.block.status import Status


@dataclass(frozen=True)
class NamedBand:
    """A band that somebody published, under the name of what it is for."""

    low: Fraction
    high: Fraction
    status: Status
    source: str
    """Whose it is; the words for it stand in the catalogues, as `pages.sums.source.<this>`."""


_KLIEWER = "kliewer-dokoozlian"

CROP_LOAD_BANDS: Mapping[str, NamedBand] = {
    "single-canopy": NamedBand(Fraction(4), Fraction(10), "published", _KLIEWER),
    "divided-canopy": NamedBand(Fraction(5), Fraction(10), "published", _KLIEWER),
    "concord": NamedBand(Fraction(10), Fraction(20), "published", "cornell-lake-erie"),
    "warm-long-season": NamedBand(Fraction(13), Fraction(18), "published", "hortscience-41"),
    "cool-pinot-noir": NamedBand(Fraction(3), Fraction(6), "from memory", "oregon"),
}
"""Weight of crop for each weight of prunings, by kind of vine."""

_PER_METRE = MEASURES["prunings-on-length"].factor("metric")

VIGOUR_BANDS: Mapping[str, NamedBand] = {
    "single-canopy-kd": NamedBand(
        Fraction(1, 2) * _PER_METRE, Fraction(1) * _PER_METRE, "published", _KLIEWER
    ),
    "divided-canopy-kd": NamedBand(
        Fraction(2, 5) * _PER_METRE, Fraction(4, 5) * _PER_METRE, "published", _KLIEWER
    ),
    "smart-robinson": NamedBand(
        Fraction(3, 10) * _PER_METRE, Fraction(3, 5) * _PER_METRE, "from memory", "smart-robinson"
    ),
}
"""Weight of prunings on a length of canopy; the published bands do not agree."""

BANDS: Mapping[str, Mapping[str, NamedBand]] = {
    "crop_load_band": CROP_LOAD_BANDS,
    "vigour_band": VIGOUR_BANDS,
}
"""The bands of each field that asks for one."""


def _verdict(value: Range, band: NamedBand) -> str:
    """Where a value lies: `under`, `inside`, `over`, or `unsure` when it reaches both sides."""
    sides = [
        "under" if one < band.low else "over" if one > band.high else "inside"
        for one in (value.low, value.high)
    ]
    return sides[0] if sides[0] == sides[1] else "unsure"


def crop_load(*, crop_g: Range, prunings_g: Range, crop_load_band: str) -> Answer:
    """Weight of crop for each weight of prunings, beside a named band.

    crop load = crop of a vine / prunings of the same vine the next winter.

    Limits: crop and prunings must be of the same vine and year. Each band holds for the vines
    that it is named for and for no other.
    Source: bands as named in `CROP_LOAD_BANDS`.
    """
    ratio = crop_g / prunings_g
    band = CROP_LOAD_BANDS[crop_load_band]
    facts: Facts = {
        "crop": ("vine-weight", crop_g),
        "prunings": ("vine-weight", prunings_g),
        "ratio": ("number", ratio),
        "low": ("number", band.low),
        "high": ("number", band.high),
    }
    return Answer(
        "crop-load",
        (Figure("crop-load", "number", ratio),),
        (Sentence("crop-load", facts),),
        (Sentence(f"crop-load-{_verdict(ratio, band)}", facts),),
    )


def vigour(*, shoots_per_mm: Range, cane_g: Range, vigour_band: str) -> Answer:
    """Weight of prunings on a length of canopy, from the canes on it, beside a named band.

    prunings = canes on a length x mean weight of a cane.

    Limits: canes of one winter, without old wood. The published bands differ: choose one.
    Source: bands as named in `VIGOUR_BANDS`; the sum is checked on four trellises (AJEV table
    6034, read).
    """
    prunings = shoots_per_mm * cane_g
    band = VIGOUR_BANDS[vigour_band]
    facts: Facts = {
        "shoots": ("on-length", shoots_per_mm),
        "cane": ("small-weight", cane_g),
        "prunings": ("prunings-on-length", prunings),
        "low": ("prunings-on-length", as_range(band.low)),
        "high": ("prunings-on-length", as_range(band.high)),
    }
    return Answer(
        "vigour",
        (Figure("prunings-on-length", "prunings-on-length", prunings),),
        (Sentence("vigour", facts),),
        (Sentence(f"vigour-{_verdict(prunings, band)}", facts),),
    )
