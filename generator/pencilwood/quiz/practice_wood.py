"""The wood of one position as it comes, sound or with one trouble."""

from __future__ import annotations

import random

from pencilwood.vine.model import Condition, Lean, Piece


def _cane(
    chance: random.Random,
    letter: str,
    on: str | None = None,
    at_mm: int = 0,
    *,
    thick: tuple[int, int] = (7, 10),
    condition: Condition = Condition.SOUND,
    lean: Lean | None = None,
) -> Piece:
    buds = chance.randint(7, 11)
    internode_mm = chance.randint(52, 78)
    upright = lean or (Lean.OUT if chance.random() < 0.15 else Lean.UP)
    thickness_mm = chance.randint(*thick)
    length_mm = (buds + 1) * internode_mm
    return Piece(
        letter, 1, length_mm, thickness_mm, on, at_mm, condition, upright, buds, internode_mm
    )


def _old(
    letter: str,
    age_years: int,
    length_mm: int,
    thickness_mm: int,
    on: str | None = None,
    at_mm: int = 0,
    condition: Condition = Condition.SOUND,
) -> Piece:
    return Piece(letter, age_years, length_mm, thickness_mm, on, at_mm, condition)


def _spur(chance: random.Random) -> Piece:
    """A spur of last year."""
    return _old("m", 2, chance.randint(32, 60), chance.randint(13, 17))


def _low(chance: random.Random) -> int:
    return chance.randint(8, 18)


def from_arm(chance: random.Random) -> tuple[Piece, ...]:
    """One cane straight from the arm."""
    return (_cane(chance, "a"),)


def two_canes(chance: random.Random) -> tuple[Piece, ...]:
    """Last year's spur with a low and a high cane, both sound."""
    spur = _spur(chance)
    return spur, _cane(chance, "a", "m", _low(chance)), _cane(chance, "b", "m", spur.length_mm)


def weak_low(chance: random.Random) -> tuple[Piece, ...]:
    """The low cane is too thin."""
    spur = _spur(chance)
    weak = _cane(chance, "a", "m", _low(chance), thick=(4, 6), condition=Condition.SPINDLY)
    return spur, weak, _cane(chance, "b", "m", spur.length_mm)


def bull(chance: random.Random) -> tuple[Piece, ...]:
    """One of the canes is too thick."""
    length_mm = chance.randint(32, 60)
    spur = _old("m", 2, length_mm, chance.randint(18, 21))
    thick = chance.random() < 0.6
    low = _cane(chance, "a", "m", _low(chance), thick=(14, 17) if thick else (7, 10))
    high = _cane(chance, "b", "m", length_mm, thick=(7, 10) if thick else (14, 17))
    return spur, low, high


def climbing(chance: random.Random) -> tuple[Piece, ...]:
    """A spur that has climbed on old wood, with one cane left near the arm."""
    length_mm = chance.randint(110, 210)
    foot = _old("m", chance.randint(4, 6), length_mm, chance.randint(20, 24))
    top = _old("n", 2, chance.randint(32, 50), chance.randint(12, 16), "m", length_mm)
    low = _cane(chance, "a", "m", chance.randint(18, 45))
    return foot, low, top, _cane(chance, "b", "n", top.length_mm)


def diseased(chance: random.Random) -> tuple[Piece, ...]:
    """A diseased cane low down, or a whole diseased spur with a sound cane beside it."""
    if chance.random() < 0.5:
        spur = _spur(chance)
        sick = _cane(chance, "a", "m", _low(chance), condition=Condition.DISEASED)
        return spur, sick, _cane(chance, "b", "m", spur.length_mm)
    spur = _old("m", 2, chance.randint(32, 60), 15, condition=Condition.DISEASED)
    sick = _cane(chance, "a", "m", spur.length_mm, condition=Condition.DISEASED)
    return spur, sick, _cane(chance, "b")


def dead_low(chance: random.Random) -> tuple[Piece, ...]:
    """The low cane is dead."""
    spur = _spur(chance)
    dead = _cane(chance, "a", "m", _low(chance), thick=(5, 8), condition=Condition.DEAD)
    return spur, dead, _cane(chance, "b", "m", spur.length_mm)


def injured_low(chance: random.Random) -> tuple[Piece, ...]:
    """The low cane is split."""
    spur = _spur(chance)
    split = _cane(chance, "a", "m", _low(chance), condition=Condition.INJURED)
    return spur, split, _cane(chance, "b", "m", spur.length_mm)


def bare_end(chance: random.Random) -> tuple[Piece, ...]:
    """Old wood goes on bare above its only cane."""
    length_mm = chance.randint(70, 110)
    foot = _old("m", 3, length_mm, chance.randint(18, 21))
    return foot, _cane(chance, "a", "m", chance.randint(20, 35))


def dead_stub(chance: random.Random) -> tuple[Piece, ...]:
    """A dead stub of older wood beside a cane from the arm."""
    stub = _old("m", 3, chance.randint(35, 70), chance.randint(14, 18), condition=Condition.DEAD)
    return stub, _cane(chance, "a")


def hanging(chance: random.Random) -> tuple[Piece, ...]:
    """A cane hangs below the arm, another stands upright."""
    return _cane(chance, "a", lean=Lean.DOWN), _cane(chance, "b", lean=Lean.UP)


def thick_foot(chance: random.Random) -> tuple[Piece, ...]:
    """A spur high on thick old wood, with no cane near the arm: the cut would wound the vine."""
    length_mm = chance.randint(90, 150)
    foot = _old("m", chance.randint(6, 8), length_mm, chance.randint(27, 32))
    top = _old("n", 2, chance.randint(32, 50), chance.randint(13, 17), "m", length_mm)
    return (
        foot,
        top,
        _cane(chance, "a", "n", _low(chance)),
        _cane(chance, "b", "n", top.length_mm),
    )


def poor(chance: random.Random) -> tuple[Piece, ...]:
    """A poor cane: thin, or split."""
    if chance.random() < 0.5:
        return (_cane(chance, "a", thick=(5, 6), condition=Condition.SPINDLY),)
    return (_cane(chance, "a", condition=Condition.INJURED),)
