"""Vines for practice: made up by chance, from the wood that trainers meet in the row.

Every figure stays within what the demo's measured vines show (common practice, no source). The
same seed grows the same vine on every machine.
"""

from __future__ import annotations

import random
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from pencilwood.cases.case import Level
from pencilwood.quiz import practice_wood as wood
from pencilwood.vine.forms.cordon import ONE_ARM_LEFT, ONE_ARM_RIGHT, TWO_ARM_CORDON
from pencilwood.vine.model import Arm, Form, Piece, Position, Side, Trellis, Vine

Make = Callable[[random.Random], tuple[Piece, ...]]

TROUBLES: Mapping[str, Make] = {
    "high cane": wood.two_canes,
    "weak cane": wood.weak_low,
    "bull cane": wood.bull,
    "climbing": wood.climbing,
    "diseased": wood.diseased,
    "dead": wood.dead_low,
    "injured": wood.injured_low,
    "bare end": wood.bare_end,
    "dead stub": wood.dead_stub,
    "hanging": wood.hanging,
    "large wound": wood.thick_foot,
}
"""What one position may have, by name."""

LAYOUTS = ("crowded", "blank", "head")
"""What may be wrong with where the positions stand."""

_TROUBLES_OF: Mapping[Level, int] = {"easy": 1, "middling": 2, "hard": 3}
_SPURS_OF: Mapping[Level, tuple[int, int]] = {
    "easy": (8, 9),
    "middling": (8, 10),
    "hard": (8, 10),
}


@dataclass(frozen=True)
class _Plan:
    """What a vine is to have."""

    troubles: tuple[str, ...]
    layouts: tuple[str, ...]
    spurs: int


def grow(seed: str, level: Level) -> Vine:
    """A vine of a level."""
    chance = random.Random(seed)  # noqa: S311 - no secret; the same every time
    plan = _plan(chance, level)
    form = chance.choices((TWO_ARM_CORDON, ONE_ARM_LEFT, ONE_ARM_RIGHT), (8, 1, 1))[0]
    counts = _shared(plan.spurs, form)
    arms = tuple(
        _arm(chance, side, count, plan) for side, count in zip(form.sides, counts, strict=True)
    )
    cordon_mm = chance.randint(85, 95) * 10
    trimming_mm = chance.randint(200, 220) * 10
    trellis = Trellis(cordon_mm, (cordon_mm + 300, cordon_mm + 600), trimming_mm - 250, trimming_mm)
    thickest = max(arm.thickness_mm for arm in arms)
    return Vine(form, thickest + chance.randint(12, 22), cordon_mm, trellis, arms)


def _plan(chance: random.Random, level: Level) -> _Plan:
    kinds = [*TROUBLES, *LAYOUTS]
    picked = chance.sample(kinds, _TROUBLES_OF[level])
    troubles = tuple(one for one in picked if one in TROUBLES)
    layouts = tuple(one for one in picked if one in LAYOUTS)
    return _Plan(troubles, layouts, chance.randint(*_SPURS_OF[level]))


def _shared(spurs: int, form: Form) -> list[int]:
    arms = len(form.sides)
    return [spurs // arms + (number < spurs % arms) for number in range(arms)]


def _arm(chance: random.Random, side: Side, count: int, plan: _Plan) -> Arm:
    places = _places(chance, count, plan)
    initial = "L" if side is Side.LEFT else "R"
    positions = tuple(
        Position(f"{initial}{number}", side, at_mm, pieces)
        for number, (at_mm, pieces) in enumerate(places, start=1)
    )
    length_mm = places[-1][0] + chance.randint(60, 130)
    thickest = max(piece.thickness_mm for _, pieces in places for piece in pieces)
    return Arm(side, length_mm, max(thickest + 2, chance.randint(32, 40)), positions)


def _places(chance: random.Random, count: int, plan: _Plan) -> list[tuple[int, tuple[Piece, ...]]]:
    """Distances from the head, and the wood that grows there."""
    places: list[tuple[int, tuple[Piece, ...]]] = []
    at_mm = chance.randint(105, 135)
    if "head" in plan.layouts:
        places.append((chance.randint(30, 70), wood.from_arm(chance)))
    crowded = chance.randrange(1, count) if "crowded" in plan.layouts and count > 1 else -1
    blank = chance.randrange(1, count) if "blank" in plan.layouts and count > 1 else -1
    for number in range(count):
        places.append((at_mm, _wood(chance, plan)))
        if number == crowded:
            at_mm += chance.randint(38, 58)
            places.append((at_mm, wood.two_canes(chance)))
        if number == blank:
            at_mm += chance.randint(118, 140)
            places.append((at_mm, wood.poor(chance)))
            at_mm += chance.randint(118, 140)
        else:
            at_mm += chance.randint(85, 125)
    return places


def _wood(chance: random.Random, plan: _Plan) -> tuple[Piece, ...]:
    if plan.troubles and chance.random() < 0.4:
        return TROUBLES[chance.choice(plan.troubles)](chance)
    return wood.two_canes(chance) if chance.random() < 0.8 else wood.from_arm(chance)
