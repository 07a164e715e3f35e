"""Vines for tests: three that look like real ones, and random ones of every shape."""

from __future__ import annotations

import random
from collections.abc import Sequence

from hypothesis import strategies as st

from pencilwood.vine.forms.cordon import CORDONS, ONE_ARM_RIGHT, TWO_ARM_CORDON
from pencilwood.vine.model import Arm, Condition, Form, Lean, Piece, Position, Side, Trellis, Vine

TRELLIS = Trellis(900, (1200, 1500), 1800, 2150)
_CONDITIONS = (Condition.SOUND,) * 6 + tuple(Condition)
_LEANS = (Lean.UP,) * 6 + tuple(lean for lean in Lean if lean is not Lean.ALONG)


def cane(
    letter: str,
    buds: int,
    thickness_mm: int = 8,
    *,
    on: str | None = None,
    at_mm: int = 0,
    internode_mm: int = 70,
    condition: Condition = Condition.SOUND,
    lean: Lean = Lean.UP,
) -> Piece:
    """A cane whose length follows from its buds."""
    length_mm = (buds + 1) * internode_mm
    return Piece(letter, 1, length_mm, thickness_mm, on, at_mm, condition, lean, buds, internode_mm)


def old(
    letter: str,
    length_mm: int,
    thickness_mm: int = 14,
    *,
    on: str | None = None,
    at_mm: int = 0,
    age_years: int = 2,
    condition: Condition = Condition.SOUND,
    lean: Lean = Lean.UP,
) -> Piece:
    """A piece of older wood."""
    return Piece(letter, age_years, length_mm, thickness_mm, on, at_mm, condition, lean)


def arm(
    side: Side, length_mm: int, *places: tuple[int, Sequence[Piece]], thickness_mm: int = 35
) -> Arm:
    """An arm with positions at the given distances from the head."""
    initial = "L" if side is Side.LEFT else "R"
    positions = tuple(
        Position(f"{initial}{number}", side, at_mm, tuple(pieces))
        for number, (at_mm, pieces) in enumerate(places, start=1)
    )
    return Arm(side, length_mm, thickness_mm, positions)


def vine(form: Form, *arms: Arm) -> Vine:
    """A vine on the usual trellis."""
    return Vine(form, 55, 900, TRELLIS, arms)


def _last_years_spur(first: int, second: int, thicker: int) -> tuple[Piece, ...]:
    return (
        old("m", 60, 15),
        cane("a", first, 8, on="m", at_mm=12),
        cane("b", second, thicker, on="m", at_mm=55, internode_mm=65),
    )


def tidy_vine() -> Vine:
    """Two arms, every position a spur of last year with two good canes."""
    left = arm(
        Side.LEFT,
        900,
        *(
            (140 + 120 * n, _last_years_spur(8 + n % 3, 9 + (n * 2) % 4, 8 + n % 3))
            for n in range(6)
        ),
    )
    right = arm(
        Side.RIGHT,
        900,
        *((120 + 120 * n, _last_years_spur(9 + n % 2, 8 + n % 4, 7 + n % 3)) for n in range(6)),
    )
    return vine(TWO_ARM_CORDON, left, right)


def climbing_vine() -> Vine:
    """Two arms whose spurs have climbed on old wood, with a low cane here and there."""
    climbed = (
        old("m", 260, 24, age_years=6),
        cane("a", 7, 8, on="m", at_mm=40, internode_mm=60, lean=Lean.OUT),
        old("n", 180, 18, on="m", at_mm=250, age_years=3),
        old("o", 60, 13, on="n", at_mm=175),
        cane("b", 9, 8, on="o", at_mm=15),
        cane("c", 11, 10, on="o", at_mm=55),
    )
    forked = (
        old("m", 120, 28, age_years=8),
        old("n", 90, 18, on="m", at_mm=60, age_years=3, lean=Lean.IN),
        old("o", 150, 19, on="m", at_mm=118, age_years=4),
        cane("a", 6, 7, on="n", at_mm=80),
        cane("b", 8, 8, on="n", at_mm=90),
        cane("c", 10, 9, on="o", at_mm=100),
        cane("d", 12, 12, on="o", at_mm=148, internode_mm=85),
        cane("e", 5, 5, on="o", at_mm=40, condition=Condition.SPINDLY),
    )
    low = (old("m", 70, 16), cane("a", 8, 8, on="m", at_mm=10), cane("b", 9, 9, on="m", at_mm=68))
    left = arm(Side.LEFT, 800, (130, low), (300, climbed), (460, forked), (700, climbed))
    right = arm(Side.RIGHT, 850, (110, climbed), (270, low), (560, climbed), (800, forked))
    return vine(TWO_ARM_CORDON, left, right)


def sick_vine() -> Vine:
    """One arm with diseased, dead, injured and spindly wood, and a hanging cane."""
    dead = (
        old("m", 90, 20, condition=Condition.DEAD, age_years=4),
        cane("a", 6, 7, on="m", at_mm=85, condition=Condition.DEAD),
    )
    diseased = (
        old("m", 80, 18, condition=Condition.DISEASED, age_years=3),
        cane("a", 8, 8, on="m", at_mm=20, condition=Condition.DISEASED),
        cane("b", 9, 9, on="m", at_mm=75),
    )
    injured = (
        cane("a", 8, 9, condition=Condition.INJURED),
        cane("b", 7, 4, condition=Condition.SPINDLY),
    )
    hanging = (
        old("m", 55, 14),
        cane("a", 7, 7, on="m", at_mm=20, lean=Lean.DOWN),
        cane("b", 10, 9, on="m", at_mm=50),
    )
    bull = (cane("a", 12, 14, internode_mm=95), cane("b", 5, 6, lean=Lean.DOWN, internode_mm=50))
    places = ((150, hanging), (280, dead), (420, diseased), (560, injured), (700, bull))
    return vine(ONE_ARM_RIGHT, arm(Side.RIGHT, 820, *places, thickness_mm=40))


SAMPLES = {"tidy": tidy_vine, "climbing": climbing_vine, "sick": sick_vine}


def random_vine(
    rng: random.Random,
    *,
    positions: int | None = None,
    most_canes: int = 3,
    most_buds: int = 9,
    form: Form | None = None,
) -> Vine:
    """A vine that a trainer could have measured; `positions` is for all arms together."""
    form = form or rng.choice(CORDONS)
    wanted = rng.randint(1, 12) if positions is None else positions
    arms = []
    for number, side in enumerate(form.sides):
        count = wanted // len(form.sides) + (number < wanted % len(form.sides))
        at_mm, places = 0, []
        for _ in range(count):
            at_mm += rng.randint(40, 220)
            places.append((at_mm, random_pieces(rng, most_canes, most_buds)))
        length_mm = at_mm + rng.randint(30, 200)
        arms.append(arm(side, length_mm, *places, thickness_mm=rng.randint(30, 45)))
    return vine(form, *arms)


def random_pieces(rng: random.Random, most_canes: int, most_buds: int) -> tuple[Piece, ...]:
    """The wood of one position: canes straight from the arm, on a spur, or far up old wood."""
    canes = rng.randint(1, most_canes)
    if rng.random() < 0.25:
        return tuple(_random_cane(rng, "abcdef"[n], None, 0, most_buds) for n in range(canes))
    pieces = [_random_old(rng, "m", None, 0, rng.randint(3, 8), rng.randint(18, 30))]
    if rng.random() < 0.4:
        foot = pieces[0]
        at_mm = rng.randint(1, foot.length_mm)
        pieces.append(_random_old(rng, "n", "m", at_mm, 2, rng.randint(12, 18)))
    for number in range(canes):
        below = rng.choice(pieces[: 2 if len(pieces) > 1 and not pieces[1].is_cane else 1])
        at_mm = rng.randint(1, below.length_mm)
        pieces.append(_random_cane(rng, "abcdef"[number], below.letter, at_mm, most_buds))
    return tuple(pieces)


def _random_old(
    rng: random.Random, letter: str, on: str | None, at_mm: int, age_years: int, thickness_mm: int
) -> Piece:
    length_mm = rng.choice((15, 30, 60, 120, 300))
    return old(
        letter,
        length_mm,
        thickness_mm,
        on=on,
        at_mm=at_mm,
        age_years=age_years,
        condition=rng.choice(_CONDITIONS),
        lean=rng.choice(_LEANS),
    )


def _random_cane(
    rng: random.Random, letter: str, on: str | None, at_mm: int, most_buds: int
) -> Piece:
    return cane(
        letter,
        rng.randint(1, most_buds),
        rng.randint(3, 12),
        on=on,
        at_mm=at_mm,
        internode_mm=rng.choice((30, 50, 65, 80, 110)),
        condition=rng.choice(_CONDITIONS),
        lean=rng.choice(_LEANS),
    )


def vines(
    most_positions: int = 8, most_canes: int = 3, most_buds: int = 9
) -> st.SearchStrategy[Vine]:
    """Random vines for Hypothesis."""
    return st.builds(
        lambda seed, positions: random_vine(
            random.Random(seed),
            positions=positions,
            most_canes=most_canes,
            most_buds=most_buds,
        ),
        st.integers(0, 2**32 - 1),
        st.integers(1, most_positions),
    )
