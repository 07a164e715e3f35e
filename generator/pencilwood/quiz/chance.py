"""Chance of passing a quiz by guessing, exactly."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from fractions import Fraction
from math import prod


def at_least(needed: int, chances: Sequence[Fraction]) -> Fraction:
    """Chance that at least `needed` of independent events happen (Poisson-binomial)."""
    exactly = [Fraction(1)]
    for chance in chances:
        grown = [share * (1 - chance) for share in exactly] + [Fraction(0)]
        for number, share in enumerate(exactly):
            grown[number + 1] += share * chance
        exactly = grown
    return sum(exactly[needed:], Fraction(0))


def passing(needed: int, scored: Sequence[Fraction], must_know: Iterable[Fraction]) -> Fraction:
    """Chance of one try: enough of the scored questions right, and every must-know question."""
    return at_least(needed, scored) * prod(must_know, start=Fraction(1))


def with_tries(chance: Fraction, tries: int) -> Fraction:
    """Chance that at least one of so many tries passes, each guessed anew.

    Whoever remembers the right answers shown after a try does better; that is learning, and no
    formula for luck covers it.
    """
    return 1 - (1 - chance) ** tries
