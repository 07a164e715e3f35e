"""The chance of passing a quiz by guessing, against scipy and against every outcome."""

from fractions import Fraction
from itertools import product

import pytest
from scipy.stats import poisson_binom

from pencilwood.quiz.chance import at_least, passing, with_tries

MIXED = [Fraction(1, 3), Fraction(1, 4), Fraction(1, 24), Fraction(2, 40), Fraction(1, 3)]


def by_every_outcome(needed: int, chances: list[Fraction]) -> Fraction:
    total = Fraction(0)
    for happened in product((True, False), repeat=len(chances)):
        if sum(happened) >= needed:
            share = Fraction(1)
            for one, chance in zip(happened, chances, strict=True):
                share *= chance if one else 1 - chance
            total += share
    return total


@pytest.mark.parametrize("needed", range(len(MIXED) + 1))
def test_mixed_chances(needed: int) -> None:
    chance = at_least(needed, MIXED)
    assert chance == by_every_outcome(needed, MIXED)
    # scipy counts the other way round: more than needed - 1.
    assert float(chance) == pytest.approx(
        float(poisson_binom.sf(needed - 1, [float(one) for one in MIXED])), abs=1e-12
    )


def test_must_know_questions_multiply() -> None:
    three = [Fraction(1, 3)] * 3
    assert passing(2, MIXED, three) == at_least(2, MIXED) * Fraction(1, 27)
    assert passing(0, [], three) == Fraction(1, 27)


# Published with the binomial table: three tries at a chance of one third each, in percent.
THREE_TRIES = [
    (5, 4, 12.97), (8, 7, 0.775), (10, 7, 5.78), (10, 8, 1.02), (12, 10, 0.163), (20, 14, 0.263),
]  # fmt: skip


@pytest.mark.parametrize(("n", "cut", "percent"), THREE_TRIES)
def test_tries_add_up(n: int, cut: int, percent: float) -> None:
    chance = with_tries(at_least(cut, [Fraction(1, 3)] * n), 3)
    assert float(chance) * 100 == pytest.approx(percent, rel=0.005)
    assert with_tries(chance, 1) == chance
