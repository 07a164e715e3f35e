"""Chances against scipy, and against the printed binomial table."""

from __future__ import annotations

from fractions import Fraction

import pytest
from scipy.stats import binom, binomtest

from pencilwood.proof.luck import wilson
from pencilwood.quiz.chance import at_least

# Computed exact binomial table of the figures this project keeps on learning: chance of at
# least `cut` right of `n` by guessing with probability p each, in percent.
TABLE = [
    (5, 4, 1 / 2, 18.75),
    (5, 4, 1 / 3, 4.53),
    (5, 4, 1 / 4, 1.56),
    (8, 7, 1 / 3, 0.259),
    (10, 7, 1 / 3, 1.97),
    (10, 8, 1 / 2, 5.47),
    (10, 8, 1 / 3, 0.340),
    (12, 10, 1 / 3, 0.054),
    (20, 14, 1 / 3, 0.088),
    (20, 16, 1 / 2, 0.591),
]


@pytest.mark.parametrize(("n", "cut", "p", "percent"), TABLE)
def test_equal_chances_follow_the_binomial_table(
    n: int, cut: int, p: float, percent: float
) -> None:
    chance = at_least(cut, [Fraction(p).limit_denominator(9)] * n)
    assert float(chance) * 100 == pytest.approx(percent, rel=0.01)
    assert float(chance) == pytest.approx(float(binom.sf(cut - 1, n, p)))


def test_mixed_chances_are_summed_over_every_outcome() -> None:
    # A half and a fifth: both happen in a tenth of the cases, at least one in six tenths.
    chances = [Fraction(1, 2), Fraction(1, 5)]
    assert at_least(2, chances) == Fraction(1, 10)
    assert at_least(1, chances) == Fraction(6, 10)
    assert at_least(0, []) == 1


@pytest.mark.parametrize(("passes", "tries"), [(0, 2000), (1, 2000), (17, 2000), (50, 100)])
def test_the_interval_is_the_score_interval_of_scipy(passes: int, tries: int) -> None:
    expected = binomtest(passes, tries).proportion_ci(method="wilson")
    assert wilson(passes, tries) == pytest.approx((expected.low, expected.high), abs=1e-12)
