"""The figures by which a simulated vine grows, each with where it comes from.

No vine grows by a table. These figures make a next winter that looks like one that could have
been measured, so that years of pruning can be shown; they foretell nothing.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from pencilwood.vine.bands import Kind, Status

OUR_ASSUMPTION = {"en": "an assumption of this handbook", "es": "un supuesto de este manual"}


@dataclass(frozen=True)
class GrowthFigure:
    """One stated figure of the simulated growth."""

    name: str
    """In words with dashes: `weak-shoot`."""
    kind: Kind
    value: int
    status: Status
    source: Mapping[str, str]
    """Where it comes from, in each language."""


WEAK_SHOOT = GrowthFigure("weak-shoot", "length", 300, "common practice, no source", OUR_ASSUMPTION)
STRONG_SHOOT = GrowthFigure(
    "strong-shoot", "length", 1200, "common practice, no source", OUR_ASSUMPTION
)
SHORTEST_INTERNODE = GrowthFigure(
    "shortest-internode",
    "length",
    50,
    "published",
    {
        "en": (
            "mean of 5.3 cm measured on upright shoots (American Journal of Enology and "
            "Viticulture, Oakville)"
        ),
        "es": (
            "media de 5,3 cm medida en brotes que suben (American Journal of Enology and "
            "Viticulture, Oakville)"
        ),
    },
)
LONGEST_INTERNODE = GrowthFigure(
    "longest-internode",
    "length",
    80,
    "published",
    {
        "en": "the upper end read is 7.6 to 8.9 cm (a garden page); 8 cm is taken",
        "es": "el extremo superior leído es de 7,6 a 8,9 cm (página de jardinería); se toman 8 cm",
    },
)
THINNEST_CANE = GrowthFigure(
    "thinnest-cane",
    "length",
    6,
    "published",
    {
        "en": "1/4 in (Yuma Sun, garden column, 2022)",
        "es": "1/4 in (Yuma Sun, columna de jardinería, 2022)",
    },
)
THICKEST_CANE = GrowthFigure(
    "thickest-cane",
    "length",
    12,
    "published",
    {
        "en": "1/2 in (F. Westover, Wines & Vines, May 2016)",
        "es": "1/2 in (F. Westover, Wines & Vines, mayo de 2016)",
    },
)
NEW_SPUR_GAINS = GrowthFigure(
    "new-spur-gains", "length", 4, "common practice, no source", OUR_ASSUMPTION
)
OLD_WOOD_GAINS = GrowthFigure(
    "old-wood-gains", "length", 2, "common practice, no source", OUR_ASSUMPTION
)
VARIES = GrowthFigure("varies", "count", 20, "common practice, no source", OUR_ASSUMPTION)
"""Percent by which a shoot's part of the growth is above or below that of its neighbours."""

BASE_BUDS = GrowthFigure(
    "base-buds",
    "count",
    90,
    "common practice, no source",
    {
        "en": "how many is an assumption of this handbook; only that such shoots come at all "
        "was read (University of Georgia, Circular C1152)",
        "es": "cuántos es un supuesto de este manual; solo se leyó que esos brotes salen "
        "(University of Georgia, Circular C1152)",
    },
)
"""Of a hundred canes that are left, how many push from the bud at their foot as well."""
BASE_BUD_MM = 5
"""Where on the cane that bud stands."""

GROWTH_FIGURES = (
    WEAK_SHOOT,
    STRONG_SHOOT,
    SHORTEST_INTERNODE,
    LONGEST_INTERNODE,
    THINNEST_CANE,
    THICKEST_CANE,
    NEW_SPUR_GAINS,
    OLD_WOOD_GAINS,
    VARIES,
    BASE_BUDS,
)


def internode_of(shoot_mm: int) -> int:
    """Usual distance between the buds of a shoot that grew so long."""
    return _between(shoot_mm, SHORTEST_INTERNODE.value, LONGEST_INTERNODE.value)


def thickness_of(shoot_mm: int) -> int:
    """Thickness of a shoot that grew so long, before what carries it sets a bound."""
    return _between(shoot_mm, THINNEST_CANE.value, THICKEST_CANE.value)


def _between(shoot_mm: int, weak: int, strong: int) -> int:
    """Rises evenly from the weak shoot to the strong one, and no further."""
    span_mm = STRONG_SHOOT.value - WEAK_SHOOT.value
    above_mm = min(max(shoot_mm - WEAK_SHOOT.value, 0), span_mm)
    return weak + (strong - weak) * above_mm // span_mm
