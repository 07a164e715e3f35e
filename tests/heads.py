"""Head-trained vines for tests: one that looks like a real one, and random ones of every shape."""

from __future__ import annotations

import random
from collections.abc import Sequence

from pencilwood.vine.forms.head import HEAD_TRAINED
from pencilwood.vine.model import Arm, Condition, Lean, Piece, Position, Side, Trellis, Vine
from vines import cane, old, random_pieces

NO_WIRES = Trellis(0, (), 0, 0)


def head(around_mm: int, *places: tuple[int, Sequence[Piece]]) -> Vine:
    """A vine without wires, its places at the given distances along the tape."""
    positions = tuple(
        Position(f"H{number}", Side.ROUND, at_mm, tuple(pieces))
        for number, (at_mm, pieces) in enumerate(places, start=1)
    )
    return Vine(HEAD_TRAINED, 70, 600, NO_WIRES, (Arm(Side.ROUND, around_mm, 40, positions),))


def random_head(
    rng: random.Random, *, positions: int | None = None, most_canes: int = 3, most_buds: int = 9
) -> Vine:
    """A vine that a trainer could have measured."""
    wanted = rng.randint(1, 9) if positions is None else positions
    at_mm, places = 0, []
    for _ in range(wanted):
        at_mm += rng.randint(30, 320)
        places.append((at_mm, random_pieces(rng, most_canes, most_buds)))
    return head(max(200, at_mm + rng.randint(0, 250)), *places)


def head_vine() -> Vine:
    """Seven places around the head: last year's spurs, a far one, an inward cane, a weak one."""
    spur = (old("m", 60, 16), cane("a", 8, 9, on="m", at_mm=15), cane("b", 10, 9, on="m", at_mm=55))
    strong = (
        old("m", 50, 18, lean=Lean.OUT),
        cane("a", 10, 12, on="m", at_mm=12, lean=Lean.OUT),
        cane("b", 12, 12, on="m", at_mm=46),
    )
    inward = (
        old("m", 50, 15),
        cane("a", 9, 9, on="m", at_mm=10, lean=Lean.IN),
        cane("b", 8, 8, on="m", at_mm=45, lean=Lean.OUT),
    )
    far = (
        old("m", 180, 22, age_years=5, lean=Lean.OUT),
        cane("a", 7, 8, on="m", at_mm=40, lean=Lean.OUT),
        cane("b", 9, 9, on="m", at_mm=175),
    )
    weak = (cane("a", 6, 6), cane("b", 5, 5, condition=Condition.SPINDLY))
    sick = (
        old("m", 70, 17, condition=Condition.DISEASED, age_years=3),
        cane("a", 7, 8, on="m", at_mm=60),
    )
    return head(
        1250,
        (60, spur),
        (250, strong),
        (420, inward),
        (600, far),
        (790, weak),
        (940, sick),
        (1110, spur),
    )
