"""How much crop to expect, from its components."""

from __future__ import annotations

from pencilwood.block.answer import Answer, Figure, Sentence
from pencilwood.block.numbers import Range
from pencilwood.block.vines_per_area import living_vines


def clusters_on_vine(buds: Range, shoots_per_bud: Range, clusters_per_shoot: Range) -> Range:
    """Clusters on a vine: buds x shoots for each bud x clusters on each shoot."""
    return buds * shoots_per_bud * clusters_per_shoot


def crop_on_area(
    clusters: Range, cluster_g: Range, row_mm: Range, vine_mm: Range, missing_share: Range
) -> Range:
    """Grams on a square metre: living vines x clusters on each x weight of a cluster."""
    return clusters * cluster_g * living_vines(row_mm, vine_mm, missing_share)


def crop_estimate(
    *,
    buds: Range,
    shoots_per_bud: Range,
    clusters_per_shoot: Range,
    cluster_g: Range,
    row_mm: Range,
    vine_mm: Range,
    missing_share: Range,
    area_m2: Range | None = None,
) -> Answer:
    """The crop of a vine, of an area and of a block, from the components of yield.

    crop = living vines x buds x shoots for each bud x clusters on a shoot x weight of a cluster.

    Limits: often off by 30 % or more; a good estimate is within 10 % (BC Wine Grape Council,
    read). Of the change from season to season about 60 % is bunches on the vine, 30 % berries
    in the bunch and 10 % the weight of a berry (AWRI 2022, read).
    Errors: BlockError "no-vines" when no vine is left.
    Source: Ohio State University, I. Dami, "How to Estimate Grape Yields"; AWRI Technical Review
    259, 2022 (both read).
    """
    clusters = clusters_on_vine(buds, shoots_per_bud, clusters_per_shoot)
    vine_crop_g = clusters * cluster_g
    on_area = crop_on_area(clusters, cluster_g, row_mm, vine_mm, missing_share)
    vines = living_vines(row_mm, vine_mm, missing_share)
    facts = {
        "buds": ("buds", buds),
        "shoots": ("number", shoots_per_bud),
        "each": ("number", clusters_per_shoot),
        "clusters": ("clusters-per-vine", clusters),
        "cluster": ("cluster-weight", cluster_g),
        "vine": ("vine-weight", vine_crop_g),
        "per_ha": ("vines-per-hectare", vines),
        "per_acre": ("vines-per-acre", vines),
        "crop": ("crop-on-area", on_area),
    }
    figures = [
        Figure("crop-on-area", "crop-on-area", on_area),
        Figure("vine-crop", "vine-weight", vine_crop_g),
        Figure("clusters", "clusters-per-vine", clusters),
    ]
    steps = [Sentence(name, facts) for name in ("clusters", "vine-crop", "crop-on-area")]
    if area_m2 is not None:
        whole = on_area * area_m2
        figures.append(Figure("block-crop", "block-weight", whole))
        parts = {"area": ("area", area_m2), "whole": ("block-weight", whole)}
        steps.append(Sentence("block-crop", parts))
    return Answer("crop", tuple(figures), tuple(steps), (Sentence("crop-accuracy"),))
