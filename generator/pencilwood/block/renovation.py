"""A plan of renewing old arms, year by year: crop, hours and money."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from pencilwood.block.answer import Answer, Facts, Figure, Sentence
from pencilwood.block.errors import BlockError
from pencilwood.block.numbers import Range, as_range

WAYS = ("every-vine", "every-other-vine", "every-other-row", "share-a-year")
MOST_YEARS = 30
SETTLED_YEARS = 3
"""Years whose recovery is given; from the fourth on the vine crops in full."""


@dataclass(frozen=True)
class Recovery:
    """Share of a full crop in the first, second and third summer after the cut."""

    shares: tuple[Range, Range, Range]

    def after(self, years: int) -> Range:
        """The share in the given summer after the cut: 0 is the first; before the cut, 1."""
        if 0 <= years < SETTLED_YEARS:
            return self.shares[years]
        return as_range(1)


def groups(
    way: str, vines: int, rows: int | None, wait_years: int, share_a_year: Fraction | None
) -> Mapping[int, int]:
    """How many vines are cut in which year, counted from 1.

    Every other vine or row: the larger half at once, the rest after `wait_years`. A share a year
    takes that share of all vines each winter, rounded up, until none is left.
    """
    if way == "every-vine":
        return {1: vines}
    if way == "every-other-vine":
        return _halves(vines, -(-vines // 2), wait_years)
    if way == "every-other-row":
        if not rows or rows > vines:
            raise BlockError("rows-needed").about("rows")
        return _halves(vines, int(Fraction(vines * -(-rows // 2), rows)), wait_years)
    if not share_a_year:
        raise BlockError("share-needed").about("share_a_year")
    each = int(-(-vines * share_a_year // 1))
    years = -(-vines // each)
    return {year + 1: min(each, vines - year * each) for year in range(years)}


def _halves(vines: int, first: int, wait_years: int) -> Mapping[int, int]:
    return {1: first, 1 + wait_years: vines - first} if first < vines else {1: vines}


def renovation(
    *,
    way: str,
    vines: Range,
    crop_g: Range,
    recovery_first: Range,
    recovery_second: Range,
    recovery_third: Range,
    wait_years: Range,
    renewal_seconds: Range,
    rows: Range | None = None,
    share_a_year: Range | None = None,
    pay_per_s: Range | None = None,
    price_per_g: Range | None = None,
) -> Answer:
    """Crop, hours and money in each year of a renovation, until the block crops in full again.

    crop of a year = crop of a vine x (vines not cut yet + vines cut k years ago x their share of
    a full crop); hours = vines cut that year x extra time for each.

    Limits: the recovery shares are assumptions to be edited. Only this was found in print: on
    declining Merlot in Washington, cutting the arms off gave no crop in the first year and a
    part of it in the second and third (Catalyst 3, read). Renewing one arm of two loses about
    half a vine's crop in the first year (derived from it).
    Errors: BlockError "rows-needed", "share-needed", "too-many-years".
    """
    recovery = Recovery((recovery_first, recovery_second, recovery_third))
    cut = groups(
        way,
        int(vines.likely),
        int(rows.likely) if rows else None,
        int(wait_years.likely),
        share_a_year.likely if share_a_year else None,
    )
    # In the year after the last given recovery the crop is full again.
    last = max(cut) + SETTLED_YEARS
    if last > MOST_YEARS:
        raise BlockError("too-many-years", {"most": MOST_YEARS}).about("share_a_year")
    years = [
        _Year(number, cut, recovery, vines, crop_g, renewal_seconds, pay_per_s, price_per_g)
        for number in range(1, last + 1)
    ]
    return _answer(years, vines, crop_g, way, cut)


@dataclass(frozen=True)
class _Year:
    number: int
    cut: Mapping[int, int]
    recovery: Recovery
    vines: Range
    crop_of_vine_g: Range
    renewal_seconds: Range
    pay_per_s: Range | None
    price_per_g: Range | None

    @property
    def share(self) -> Range:
        """Share of a full crop on the whole block."""
        bearing = as_range(0)
        for year, count in self.cut.items():
            bearing = bearing + self.recovery.after(self.number - year) * count
        return bearing / self.vines.likely

    @property
    def crop_g(self) -> Range:
        return self.crop_of_vine_g * self.vines * self.share

    @property
    def lost_g(self) -> Range:
        return self.crop_of_vine_g * self.vines * (as_range(1) - self.share).at_least(0)

    @property
    def work_s(self) -> Range:
        return self.renewal_seconds * self.cut.get(self.number, 0)

    @property
    def cost(self) -> Range | None:
        """Pay for the work and the price of the crop that is lost, as far as they are given."""
        parts = []
        if self.pay_per_s is not None:
            parts.append(self.work_s * self.pay_per_s)
        if self.price_per_g is not None:
            parts.append(self.lost_g * self.price_per_g)
        return total(parts) if parts else None

    def row(self) -> tuple[Figure, ...]:
        """The year in a table."""
        cells = (
            Figure("year", "number", as_range(self.number)),
            Figure("cut", "vines", as_range(self.cut.get(self.number, 0))),
            Figure("crop-share", "share", self.share),
            Figure("year-crop", "block-weight", self.crop_g),
            Figure("work", "hours", self.work_s),
        )
        return cells if self.cost is None else (*cells, Figure("cost", "money", self.cost))


def total(parts: list[Range]) -> Range:
    """The sum of several ranges."""
    whole = as_range(0)
    for part in parts:
        whole = whole + part
    return whole


def _answer(
    years: list[_Year], vines: Range, crop_g: Range, way: str, cut: Mapping[int, int]
) -> Answer:
    lost = total([year.lost_g for year in years])
    # The last years of a renovation bear a full crop.
    losing = sum(year.share.low < 1 for year in years)
    work = total([year.work_s for year in years])
    figures = [
        Figure("lost-crop", "block-weight", lost, years=losing or None),
        Figure("work", "hours", work),
        Figure("full-from", "number", as_range(years[-1].number)),
    ]
    costs = [year.cost for year in years if year.cost is not None]
    if costs:
        figures.append(Figure("cost", "money", total(costs)))
    first = years[0]
    facts: Facts = {
        "vines": ("vines", vines),
        "each": ("vine-weight", crop_g),
        "full": ("block-weight", crop_g * vines),
        "cut": ("vines", cut[1]),
        "share": ("share", first.share),
        "crop": ("block-weight", first.crop_g),
        "time": ("minutes", first.renewal_seconds),
        "work": ("hours", first.work_s),
        "lost": ("block-weight", lost),
        "groups": ("number", len(cut)),
    }
    names = ("full-crop", "first-year", "first-work", "lost-crop")
    steps = tuple(Sentence(name, facts) for name in names)
    rows = tuple(year.row() for year in years)
    return Answer("renovation", tuple(figures), steps, (Sentence(f"way-{way}"),), rows)
