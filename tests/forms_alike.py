"""What must hold for vines of every form, whatever they are trained to."""

from __future__ import annotations

import random
from collections import Counter
from collections.abc import Iterable

from milp import least_loss
from pencilwood.plan import plan_for
from pencilwood.score.judge import Target, judge, lost
from pencilwood.score.lookup import LookUp
from pencilwood.score.sheet import compile_sheet
from pencilwood.vine.bands import Limits
from pencilwood.vine.wood import Parts, uncut
from prunings import cut_at_random

Asked = tuple[Parts, Target]
"""A vine and the buds it should carry."""


def random_target(rng: random.Random) -> Target:
    """Buds to carry, from none to many."""
    least = rng.randint(0, 12)
    return Target(least, least + rng.randint(0, 6))


def assert_general_solver_finds_nothing_better(vines: Iterable[Asked], limits: Limits) -> None:
    """The plan against a mixed-integer programme of the same rules, solved by SciPy's HiGHS."""
    for parts, target in vines:
        plan = plan_for(compile_sheet(parts, limits, target))
        assert plan.lost == least_loss(parts, limits, target)


def assert_sheet_says_what_rules_say(
    vines: Iterable[Asked], limits: Limits, rng: random.Random
) -> None:
    """The compiled sheet against the rules themselves, before and after random cuts."""
    for parts, target in vines:
        look_up = LookUp(compile_sheet(parts, limits, target))
        for left in (uncut(parts), cut_at_random(parts, rng)[0]):
            charges = judge(left, limits, target)
            told = Counter((c.rule, c.message, c.points) for c in look_up.charges(left.states))
            assert told == Counter((c.rule, c.message, c.points) for c in charges)
            assert look_up.tally(left.states) == (lost(charges), any(c.must for c in charges))
