"""How many buds to leave on a vine: from its prunings, and from the crop that is wanted."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from pencilwood.block.answer import Answer, Fact, Figure, Sentence
from pencilwood.block.errors import BlockError
from pencilwood.block.measures import POUND_G
from pencilwood.block.numbers import Range, as_range
from pencilwood.block.vines_per_area import living_vines


@dataclass(frozen=True)
class Formula:
    """A formula of balanced pruning as the trade writes it: `30+10`."""

    first_buds: int
    """Buds for the first pound of prunings."""
    further_buds: int
    """Buds for each further pound."""


def balanced_buds(
    *,
    prunings_g: Range,
    formula: Formula,
    below_one_lb: str,
    least_buds: Range | None = None,
    most_buds: Range | None = None,
) -> Answer:
    """Buds by balanced pruning: so many for the first pound of prunings, more for each further.

    buds = first + further x (pounds - 1), pro rata between whole pounds, then kept between
    `least_buds` and `most_buds`. Below one pound no rule was found in print: `hold` leaves the
    first figure, `scale` takes its share (first x pounds).

    Limits: a starting point for mature vines of a known variety. It says nothing of the room
    on the arms, of dead buds or of the crop that is wanted.
    Errors: BlockError "floor-above-cap".
    Source: form of the rule read (30+10 and 60+10 Concord, Cornell Lake Erie programme;
    pro rata within a pound, Auburn Citizen 2021); "below one pound" is our own setting.
    """
    if least_buds and most_buds and least_buds.likely > most_buds.likely:
        raise BlockError("floor-above-cap").about("least_buds")
    pounds = prunings_g / POUND_G
    first, further = formula.first_buds, formula.further_buds

    def rule(pound: Fraction) -> Fraction:
        if pound >= 1:
            return first + further * (pound - 1)
        return first * pound if below_one_lb == "scale" else Fraction(first)

    # Each reader sees the pound in his own unit, with the other in brackets.
    weights: dict[str, Fact] = {"lb": ("pounds", prunings_g), "kg": ("kilograms", prunings_g)}
    pound: dict[str, Fact] = {
        "pound": ("kilograms", as_range(POUND_G)),
        "pounds": ("number", pounds),
    }
    name = "first-and-further" if pounds.likely >= 1 else f"below-one-lb-{below_one_lb}"
    buds = pounds.each(rule)
    facts: dict[str, Fact] = {
        "first": ("number", first),
        "further": ("number", further),
        "buds": ("buds", buds),
    }
    steps = [Sentence("pounds", {**weights, **pound}), Sentence(name, {**facts, **pound})]
    return _clamped(buds, least_buds, most_buds, steps)


def _clamped(buds: Range, least: Range | None, most: Range | None, steps: list[Sentence]) -> Answer:
    """Keep a bud load between its floor and its cap, and say where either bites."""
    if least is not None:
        if buds.likely < least.likely:
            steps.append(Sentence("floored", {"least": ("buds", least)}))
        buds = buds.at_least(least.likely)
    if most is not None:
        if buds.likely > most.likely:
            steps.append(Sentence("capped", {"most": ("buds", most)}))
        buds = buds.at_most(most.likely)
    return Answer("buds", (Figure("buds", "buds", buds),), tuple(steps))


def buds_by_weight(*, prunings_g: Range, buds_per_g: Range) -> Answer:
    """Buds as a plain number for each kilogram of prunings.

    buds = prunings x buds for each kilogram.

    Limits: nothing is left on a vine without prunings, so it suits even, grown-up blocks only.
    Source: 9, 15 and 22 buds for each kilogram were tried on Thompson Seedless (Lider, Kasimatis
    and Kliewer, AJEV 26, 1975, read); 30 to 40 is from memory.
    """
    buds = prunings_g * buds_per_g
    facts = {
        "prunings": ("vine-weight", prunings_g),
        "rate": ("buds-on-weight", buds_per_g),
        "buds": ("buds", buds),
    }
    return Answer(
        "buds-by-weight", (Figure("buds", "buds", buds),), (Sentence("by-weight", facts),)
    )


def buds_for_crop(
    *,
    target_crop_g_per_m2: Range,
    row_mm: Range,
    vine_mm: Range,
    missing_share: Range,
    shoots_per_bud: Range,
    clusters_per_shoot: Range,
    cluster_g: Range,
) -> Answer:
    """Buds that carry a wanted crop.

    buds = crop of a vine / (shoots for each bud x clusters on a shoot x weight of a cluster),
    where the crop of a vine is the crop on the area divided by the living vines on it.

    Limits: as good as last years' clusters and weights; these vary a quarter from year to year.
    Errors: BlockError "no-vines" when none is left.
    Source: the components of yield (Ohio State University, I. Dami; AWRI 2022; both read),
    turned round.
    """
    vines = living_vines(row_mm, vine_mm, missing_share)
    vine_crop_g = target_crop_g_per_m2 / vines
    bud_crop_g = shoots_per_bud * clusters_per_shoot * cluster_g
    buds = vine_crop_g / bud_crop_g
    steps = (
        Sentence(
            "crop-of-a-vine",
            {
                "crop": ("crop-on-area", target_crop_g_per_m2),
                "per_ha": ("vines-per-hectare", vines),
                "per_acre": ("vines-per-acre", vines),
                "vine": ("vine-weight", vine_crop_g),
            },
        ),
        Sentence(
            "crop-of-a-bud",
            {
                "shoots": ("number", shoots_per_bud),
                "clusters": ("number", clusters_per_shoot),
                "cluster": ("cluster-weight", cluster_g),
                "bud": ("cluster-weight", bud_crop_g),
            },
        ),
        Sentence(
            "buds-for-crop",
            {
                "vine": ("vine-weight", vine_crop_g),
                "bud": ("cluster-weight", bud_crop_g),
                "buds": ("buds", buds),
            },
        ),
    )
    figures = (Figure("buds", "buds", buds), Figure("vine-crop", "vine-weight", vine_crop_g))
    return Answer("buds-for-crop", figures, steps)
