"""High cordons for tests: one that looks like a real one, and random ones of every shape."""

from __future__ import annotations

import random
from dataclasses import replace

from pencilwood.vine.forms.high_cordon import HIGH_CORDONS, HIGH_TWO_ARMS
from pencilwood.vine.model import Condition, Form, Lean, Piece, Side, Trellis, Vine
from vines import arm, cane, old, random_vine

TRELLIS = Trellis(1700, (), 1700, 500)


def high(vine: Vine) -> Vine:
    """The same vine with its arms on a high wire."""
    return replace(vine, cordon_height_mm=1700, trellis=TRELLIS)


def random_high_vine(
    rng: random.Random,
    *,
    positions: int | None = None,
    most_canes: int = 3,
    most_buds: int = 9,
    form: Form | None = None,
) -> Vine:
    """A vine that a trainer could have measured, most of its wood hanging."""
    form = form or rng.choice(HIGH_CORDONS)
    grown = random_vine(
        rng, positions=positions, most_canes=most_canes, most_buds=most_buds, form=form
    )
    arms = tuple(
        replace(one, positions=tuple(replace(p, pieces=_turned(p.pieces)) for p in one.positions))
        for one in grown.arms
    )
    return high(replace(grown, arms=arms))


def _turned(pieces: tuple[Piece, ...]) -> tuple[Piece, ...]:
    """Most wood of `vines.random_vine` stands upright; here it hangs, and what hung stands."""
    other = {Lean.UP: Lean.DOWN, Lean.DOWN: Lean.UP}
    return tuple(replace(piece, lean=other.get(piece.lean, piece.lean)) for piece in pieces)


def high_vine() -> Vine:
    """Two arms with hanging spurs of last year, a far one, an upright one and leaning canes."""
    down = Lean.DOWN
    spur = (
        old("m", 50, 15, lean=down),
        cane("a", 11, 8, on="m", at_mm=15, lean=down),
        cane("b", 13, 9, on="m", at_mm=46, lean=down, internode_mm=65),
    )
    far = (
        old("m", 190, 20, lean=down, age_years=5),
        cane("a", 9, 8, on="m", at_mm=40, lean=down),
        cane("b", 10, 8, on="m", at_mm=150, lean=down),
        cane("c", 12, 10, on="m", at_mm=186, lean=down),
    )
    upright = (cane("a", 10, 10), cane("b", 9, 8, lean=down))
    two_upright = (
        old("m", 40, 14),
        cane("a", 9, 8, on="m", at_mm=12),
        cane("b", 8, 8, on="m", at_mm=38),
    )
    leaning = (
        old("m", 45, 14, lean=Lean.OUT),
        cane("a", 9, 8, on="m", at_mm=12, lean=down),
        cane("b", 12, 9, on="m", at_mm=42, lean=Lean.OUT),
    )
    sick = (
        cane("a", 8, 9, lean=down, condition=Condition.INJURED),
        cane("b", 7, 5, lean=down, condition=Condition.SPINDLY),
        cane("c", 8, 8, lean=Lean.IN),
    )
    left = arm(
        Side.LEFT,
        900,
        (130, spur),
        (250, far),
        (400, upright),
        (560, spur),
        (700, leaning),
        (850, spur),
    )
    right = arm(
        Side.RIGHT,
        850,
        (60, spur),
        (180, two_upright),
        (300, leaning),
        (430, sick),
        (600, spur),
        (780, far),
    )
    return high(replace(random_vine(random.Random(1), form=HIGH_TWO_ARMS), arms=(left, right)))
