"""The default bands and their ranges against published figures.

Every row names its source as it was read; the figures of a row are its own words in the
band's unit.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

import pytest

from pencilwood.rules import BANDS
from pencilwood.units import PER_METRE
from pencilwood.vine.bands import Band

INCH = Fraction(254, 10)
FOOT = 12 * INCH
BAND = {band.name: band for band in BANDS}
LODI = "Lodi Winegrape Commission, Optimized pruning using spurs"
MARYLAND = "J. Fiola, Univ. Maryland Extension, 2021"
KLODD = "A. Klodd, Univ. Minnesota Extension, 2022"
SPERRY = "N. Sperry, Texas, How do I prune my grapes"
WESTOVER = "F. Westover, Wines & Vines, May 2016"
AJEV = "Am. J. Enol. Vitic., table page 6034 (upright shoots)"
SABBATINI = "P. Sabbatini, talk reported by S. Kure-Jensen"
HOUSEHOLD = "This Old House (advice for households)"


@dataclass(frozen=True)
class Published:
    """Figures that a band must hold, in the band's own unit."""

    band: str
    figures: tuple[Fraction | int, ...]
    source: str


def inches(*figures: Fraction | int) -> tuple[Fraction, ...]:
    return tuple(figure * INCH for figure in figures)


def per_foot(*figures: int) -> tuple[Fraction, ...]:
    return tuple(figure * 1000 / FOOT * PER_METRE for figure in figures)


PUBLISHED = (
    Published("spur spacing at least", inches(3, 5), KLODD),
    Published("spur spacing at least", inches(4, 6), SPERRY),
    Published("buds per metre at least", per_foot(3, 5), MARYLAND),
    Published("buds per metre at most", per_foot(5, 6), LODI),
    Published("buds per metre at most", per_foot(5), "Wines & Vines, Nov 2011"),
    Published("buds per metre at most", (15 * PER_METRE,), SABBATINI),
    Published("buds per metre at least", (14 * PER_METRE,), AJEV),
    Published("buds on a spur at most", (1, 2, 3), "OSU Extension, How to spur prune"),
    Published("buds on a spur at most", (2, 3), KLODD),
    Published("cane thickness at least", inches(Fraction(5, 16)), WESTOVER),
    Published("cane thickness at least", inches(Fraction(1, 4)), "garden column and hobby pages"),
    Published("cane thickness at most", inches(Fraction(1, 2)), WESTOVER),
    Published("stub above the bud", inches(Fraction(3, 4)), "table-grape pruning text"),
    Published("stub above the bud", (20,), KLODD),
    Published("stub above the bud", inches(Fraction(1, 4), Fraction(1, 3)), "hobby page"),
    Published("leaves to ripen a crop", (14, 20), LODI),
    Published("leaves to ripen a crop", (12, 15), "Wines & Vines, Nov 2011"),
    Published("hand shears up to", inches(Fraction(1, 2)), HOUSEHOLD),
    Published("loppers up to", inches(Fraction(3, 2)), HOUSEHOLD),
)


def whole(band: Band) -> Fraction:
    """The least that a figure of the profile can differ; half of it is rounding."""
    return Fraction(PER_METRE if band.kind == "density" else 1)


@pytest.mark.parametrize("row", PUBLISHED, ids=lambda row: f"{row.band}, {row.source}")
def test_a_bands_range_holds_the_published_figures(row: Published) -> None:
    band = BAND[row.band]
    assert band.status == "published"
    for figure in row.figures:
        half = whole(band) / 2
        assert band.lowest - half <= figure <= band.highest + half


@pytest.mark.parametrize("name", sorted({row.band for row in PUBLISHED}))
def test_a_default_is_no_further_out_than_the_sources(name: str) -> None:
    figures = [figure for row in PUBLISHED if row.band == name for figure in row.figures]
    slack = max(whole(BAND[name]) / 2, Fraction(max(figures)) / 50)  # a figure rounded to 2 in 100
    assert min(figures) - slack <= BAND[name].default <= max(figures) + slack


def test_every_band_called_published_has_its_rows_here() -> None:
    published = {band.name for band in BANDS if band.status == "published"}
    assert published == {row.band for row in PUBLISHED}


def test_an_opinion_outside_the_band_is_seen_as_outside() -> None:
    # House of Vines, 2016 (a grower's opinion for a cold-hardy hybrid): 6-7 buds per foot.
    (seven,) = per_foot(7)
    assert seven > BAND["buds per metre at most"].highest
