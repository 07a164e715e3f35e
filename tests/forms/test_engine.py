"""What the engine can carry for any form: positions around a head, and things that are counted."""

from __future__ import annotations

import random
from collections import Counter
from collections.abc import Iterable
from pathlib import Path
from typing import Any

import pytest

from browser_scores import scored_by_browser
from made_up_forms import CROWN, LONG_CANES, install, random_vine_of
from milp import least_loss
from pencilwood.plan import plan_for
from pencilwood.plan.bound import Problem
from pencilwood.plan.options import Option
from pencilwood.plan.search import Found, search
from pencilwood.rules import BANDS
from pencilwood.score.judge import Charge, Target, judge, lost, score
from pencilwood.score.lookup import LookUp
from pencilwood.score.sheet import as_json, compile_sheet
from pencilwood.vine import measures
from pencilwood.vine.bands import default_limits
from pencilwood.vine.model import Arm, Form, Position, Side, Vine
from pencilwood.vine.wood import Parts, ThinningOut, WoodLeft, divide, uncut
from prunings import cut_at_random, every_pruning
from vines import TRELLIS, cane

LIMITS = default_limits(BANDS)
FORMS = pytest.mark.parametrize("form", [CROWN, LONG_CANES], ids=["around a head", "counted canes"])
PASS_MARK = 80
VINES = 60


@pytest.fixture(autouse=True)
def _made_up_forms(monkeypatch: pytest.MonkeyPatch) -> None:
    install(monkeypatch)


def random_target(rng: random.Random) -> Target:
    least = rng.randint(0, 12)
    return Target(least, least + rng.randint(0, 6))


@FORMS
def test_the_sheet_says_what_the_rules_say(form: Form) -> None:
    rng = random.Random(3)
    for _ in range(VINES):
        parts = divide(random_vine_of(form, rng, rng.randint(1, 9)))
        target = random_target(rng)
        look_up = LookUp(compile_sheet(parts, LIMITS, target))
        for left in (uncut(parts), nothing(parts), cut_at_random(parts, rng)[0]):
            charges = judge(left, LIMITS, target)
            assert look_up.tally(left.states) == (lost(charges), any(c.must for c in charges))
            told = Counter((c.rule, c.message, c.points) for c in look_up.charges(left.states))
            assert told == Counter((c.rule, c.message, c.points) for c in charges)


def nothing(parts: Parts) -> WoodLeft:
    return WoodLeft(parts, (0,) * len(parts.parts))


@FORMS
def test_the_plan_is_the_best_of_all_prunings(form: Form) -> None:
    rng = random.Random(5)
    for _ in range(VINES):
        parts = small_vine(form, rng)
        target = random_target(rng)
        limits = LIMITS | {"large wounds in one winter at most": rng.randint(0, 2)}
        judged = [judge(left, limits, target) for left in every_pruning(parts)]
        best = min(lost(one) for one in judged if not any(charge.must for charge in one))
        assert plan_for(compile_sheet(parts, limits, target)).lost == best


def test_a_number_that_is_worth_something_is_found_behind_a_dearer_cut() -> None:
    # By hand: counting one costs 0 in all; counting none costs 50, and is worth 100.
    one, none = Option(0, ((0, 1),)), Option(50, ((0, 0),))
    problem = Problem(
        options=[[((True, 1, 0, (1,)), one), ((False, 0, 0, (0,)), none)]],
        between=[[0, 0, 0], [0, 0, 0]],
        buds=[0, 0],
        wounds=[0],
        tallies=[[-100, 0]],
    )
    assert search(problem) == Found(-50, [none])


def small_vine(form: Form, rng: random.Random) -> Parts:
    """A vine with few enough prunings to try them all."""
    while True:
        vine = random_vine_of(form, rng, rng.randint(1, 4), most_canes=2, most_buds=4)
        prunings = 1
        for part in divide(vine).parts:
            prunings *= part.most + 1
        if prunings <= 2500:
            return divide(vine)


@FORMS
def test_a_general_solver_finds_nothing_better(form: Form) -> None:
    rng = random.Random(7)
    for _ in range(VINES // 4):
        parts = divide(random_vine_of(form, rng, rng.randint(4, 14), most_buds=5))
        target = random_target(rng)
        plan = plan_for(compile_sheet(parts, LIMITS, target))
        assert plan.lost == least_loss(parts, LIMITS, target)


@FORMS
@pytest.mark.node
def test_the_browser_scores_alike(form: Form, node: str, project: Path, tmp_path: Path) -> None:
    rng = random.Random(11)
    rows, wanted = [], []
    for _ in range(VINES * 3):
        parts = divide(random_vine_of(form, rng, rng.randint(1, 9)))
        target = random_target(rng)
        sheet = compile_sheet(parts, LIMITS, target)
        left, _ = cut_at_random(parts, rng)
        charges = judge(left, LIMITS, target)
        body = as_json(sheet, "random", 10, PASS_MARK)
        rows.append({"sheet": body, "states": left.states, "cuts": []})
        wanted.append((score(charges, 10, PASS_MARK), lost(charges), charged(charges)))
    results = scored_by_browser(node, project, tmp_path, rows)
    told = [(one["score"], one["lost"], shown(one["broken"])) for one in results]
    assert told == wanted


GAP_RULES = ("crowded-spurs", "blank-on-arm")


def charged(charges: Iterable[Charge]) -> list[tuple[str, int, list[str]]]:
    """Rule, points, and for a gap the positions on both sides."""
    return sorted(
        (one.rule, one.points, sorted(one.where) if one.rule in GAP_RULES else [])
        for one in charges
    )


def shown(broken: Iterable[dict[str, Any]]) -> list[tuple[str, int, list[str]]]:
    """The same of what the browser tells."""
    return sorted(
        (one["rule"], one["points"], sorted(one["where"].get("positions", ()))) for one in broken
    )


def test_distances_around_a_head_close_the_ring() -> None:
    spots = ((100, "H1"), (400, "H2"), (700, "H3"))
    places = tuple(Position(name, Side.ROUND, at, (cane("a", 4),)) for at, name in spots)
    parts = divide(Vine(CROWN, 70, 700, TRELLIS, (Arm(Side.ROUND, 1000, 60, places),)))
    left = uncut(parts)
    assert measures.spacings_mm(left) == (300, 300, 400)
    assert measures.stretches_mm(left, 100) == (300, 300, 400)
    two = left.cut(ThinningOut("H2a"))
    assert measures.spacings_mm(two) == (600, 400)
    one = two.cut(ThinningOut("H1a"))
    assert measures.spacings_mm(one) == ()
    assert measures.stretches_mm(one, 100) == (1000,)
    assert measures.stretches_mm(one.cut(ThinningOut("H3a")), 100) == (1000,)
