"""How many vines stand on an area."""

from __future__ import annotations

from pencilwood.block.answer import Answer, Figure, Sentence
from pencilwood.block.errors import BlockError
from pencilwood.block.numbers import Range, as_range

_MM2_PER_M2 = 1_000_000


def living_vines(row_mm: Range, vine_mm: Range, missing_share: Range) -> Range:
    """Vines on a square metre, without those that are missing."""
    planted = as_range(_MM2_PER_M2) / (row_mm * vine_mm)
    if missing_share.high >= 1:
        raise BlockError("no-vines").about("missing_share")
    return planted * (as_range(1) - missing_share)


def vines_per_area(
    *, row_mm: Range, vine_mm: Range, missing_share: Range, area_m2: Range | None = None
) -> Answer:
    """Living vines on a hectare, on an acre and in a block.

    vines = area / (row spacing x vine spacing) x (1 - share missing). In feet: 43,560 / (row x
    vine) for each acre.

    Limits: headlands and roads are not taken off the area.
    Errors: BlockError "no-vines" when none is left.
    Source: BC Wine Grape Council, "Crop Estimation" (read); missing vines are taken off before
    any crop is estimated (Ohio State University, I. Dami, read).
    """
    vines = living_vines(row_mm, vine_mm, missing_share)
    planted = living_vines(row_mm, vine_mm, as_range(0))
    figures = [
        Figure("vines-per-hectare", "vines-per-hectare", vines),
        Figure("vines-per-acre", "vines-per-acre", vines),
    ]
    per = {"per_ha": ("vines-per-hectare", planted), "per_acre": ("vines-per-acre", planted)}
    steps = [Sentence("planted", {"row": ("spacing", row_mm), "vine": ("spacing", vine_mm), **per})]
    if missing_share.high > 0:
        left = {"per_ha": ("vines-per-hectare", vines), "per_acre": ("vines-per-acre", vines)}
        steps.append(Sentence("missing", {"share": ("share", missing_share), **left}))
    if area_m2 is not None:
        count = vines * area_m2
        figures.append(Figure("vines", "vines", count))
        steps.append(
            Sentence("block-vines", {"area": ("area", area_m2), "vines": ("vines", count)})
        )
    return Answer("vines", tuple(figures), tuple(steps))
