"""The best pruning of somebody who has never heard of a rule: how its charges are weighed."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from pencilwood.plan.ignorance import ignorant_of
from pencilwood.plan.solver import POINT
from pencilwood.score.judge import Charge

points = st.integers(0, 60)
UNHEARD = "crowded-spurs"


def charge(rule: str, lost: int, *, must: bool = False) -> Charge:
    return Charge(rule=rule, message="any", points=lost, must=must, where=(), facts={})


@given(st.lists(points, max_size=6))
def test_rules_that_are_known_cost_their_points_and_no_more(lost: list[int]) -> None:
    weigh = ignorant_of(UNHEARD)
    assert weigh(tuple(charge("too-few-buds", each) for each in lost)) == POINT * sum(lost)


@given(st.lists(points, max_size=6), points, st.booleans())
def test_breaking_the_unheard_rule_is_never_a_loss_and_always_preferred(
    lost: list[int], broken: int, must: bool
) -> None:
    weigh = ignorant_of(UNHEARD)
    known = tuple(charge("too-few-buds", each) for each in lost)
    without, once = weigh(known), weigh((*known, charge(UNHEARD, broken, must=must)))
    assert without is not None
    assert once is not None
    assert once < without


@given(st.integers(0, 6))
def test_no_number_of_broken_rules_outweighs_a_point(times: int) -> None:
    """A tie goes to the pruning that breaks it; a point lost by a known rule is no tie."""
    weigh = ignorant_of(UNHEARD)
    broken = weigh((charge("too-few-buds", 1), *[charge(UNHEARD, 5)] * times))
    kept = weigh(())
    assert broken is not None
    assert kept is not None
    assert broken > kept


def test_a_must_rule_that_is_known_bars_a_pruning() -> None:
    weigh = ignorant_of(UNHEARD)
    assert weigh((charge("too-few-buds", 5, must=True),)) is None
