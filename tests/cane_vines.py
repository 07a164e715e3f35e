"""Cane-pruned vines for tests: one that looks like a real one, and random ones of every shape."""

from __future__ import annotations

import random
from dataclasses import replace

from pencilwood.vine.forms.cane import CANE_PRUNED, TWO_CANE_VINE
from pencilwood.vine.model import Condition, Form, Lean, Piece, Position, Side, Vine
from vines import arm, cane, old, random_vine, vine

HEAD_MM = 800


def headed(vine: Vine) -> Vine:
    """The same vine with its head below the fruiting wire."""
    return replace(vine, cordon_height_mm=HEAD_MM)


def random_cane_vine(
    rng: random.Random,
    *,
    positions: int | None = None,
    most_canes: int = 3,
    most_buds: int = 14,
    form: Form | None = None,
) -> Vine:
    """A vine that a trainer could have measured; some of its old wood lies along the wire."""
    form = form or rng.choice(CANE_PRUNED)
    grown = random_vine(
        rng, positions=positions, most_canes=most_canes, most_buds=most_buds, form=form
    )
    arms = tuple(
        replace(one, thickness_mm=55, positions=tuple(_laid(rng, p) for p in one.positions))
        for one in grown.arms
    )
    return headed(replace(grown, arms=arms))


def _laid(rng: random.Random, position: Position) -> Position:
    first = position.pieces[0]
    if first.is_cane or rng.random() < 0.5:
        return replace(position, at_mm=position.at_mm // 3)
    pieces = (replace(first, lean=Lean.ALONG), *position.pieces[1:])
    return replace(position, at_mm=position.at_mm // 3, pieces=pieces)


def cane_vine() -> Vine:
    """Both old canes with new ones on them, spurs of last year, one high, and a weak shoot."""

    def old_cane(*canes: tuple[int, int, int]) -> tuple[Piece, ...]:
        far_mm = canes[-1][0] + 30
        wood = old("m", far_mm, 13, lean=Lean.ALONG)
        grown = (
            cane("abcdef"[n], buds, thick, on="m", at_mm=at_mm)
            for n, (at_mm, buds, thick) in enumerate(canes)
        )
        return (wood, *grown)

    spur = (
        old("m", 50, 14),
        cane("a", 11, 8, on="m", at_mm=15),
        cane("b", 13, 9, on="m", at_mm=47, internode_mm=65),
    )
    high = (
        old("m", 170, 22, age_years=5),
        cane("a", 9, 8, on="m", at_mm=30),
        cane("b", 12, 9, on="m", at_mm=166),
    )
    weak = (cane("a", 6, 5, condition=Condition.SPINDLY, lean=Lean.OUT),)
    left = arm(
        Side.LEFT,
        750,
        (30, spur),
        (75, old_cane((50, 10, 8), (170, 12, 9), (330, 11, 9), (520, 13, 11))),
        thickness_mm=55,
    )
    right = arm(
        Side.RIGHT,
        700,
        (20, weak),
        (45, high),
        (85, old_cane((120, 11, 8), (260, 12, 10), (450, 12, 10))),
        thickness_mm=55,
    )
    return headed(vine(TWO_CANE_VINE, left, right))
