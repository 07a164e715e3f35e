"""One score, three ways: read from the vine, looked up by Python, looked up by the browser."""

from __future__ import annotations

import json
import random
import re
from collections import Counter
from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from browser_scores import scored_by_browser
from pencilwood.plan import plan_for
from pencilwood.rules import BANDS, RULE_BY_NAME
from pencilwood.score.judge import Charge, judge, judge_cuts, lost, score, target_for
from pencilwood.score.lookup import LookUp
from pencilwood.score.sheet import as_json, compile_sheet
from pencilwood.vine.bands import default_limits
from pencilwood.vine.passes import DoneCut
from pencilwood.vine.wood import Shortening, divide
from prunings import cut_at_random
from vines import random_vine, vines

LIMITS = default_limits(BANDS)
PASS_MARK = 80
BROWSER_VINES = 1000
PLACEHOLDER = re.compile(r"\{(\w+)\}")


@settings(max_examples=150, deadline=None)
@given(vines(most_positions=10), st.integers(0, 2**32))
def test_the_sheet_says_what_the_rules_say(vine: Any, seed: int) -> None:
    parts = divide(vine)
    target = target_for(vine, LIMITS)
    look_up = LookUp(compile_sheet(parts, LIMITS, target))
    left, _ = cut_at_random(parts, random.Random(seed))
    charges = judge(left, LIMITS, target)
    assert look_up.tally(left.states) == (lost(charges), any(c.must for c in charges))
    looked_up = look_up.charges(left.states)
    assert Counter((c.rule, c.message, c.points) for c in looked_up) == Counter(
        (c.rule, c.message, c.points) for c in charges
    )
    assert look_up.score(left.states, 5, PASS_MARK) == score(charges, 5, PASS_MARK)


def _row(rng: random.Random) -> tuple[dict[str, object], dict[str, object]]:
    """What the browser is given, and what it must answer."""
    parts = divide(random_vine(rng, positions=rng.randint(1, 14)))
    target = target_for(parts.vine, LIMITS)
    sheet = compile_sheet(parts, LIMITS, target)
    plan_lost = plan_for(sheet).lost
    left, done = cut_at_random(parts, rng)
    charges = judge(left, LIMITS, target)
    cutting = judge_cuts(parts, done, LIMITS)
    given_to_browser: dict[str, object] = {
        "sheet": as_json(sheet, "random", plan_lost, PASS_MARK),
        "states": left.states,
        "cuts": [_cut_json(one) for one in done],
    }
    expected = {
        "score": score(charges, plan_lost, PASS_MARK),
        "lost": lost(charges),
        "cutting": max(0, 100 - lost(cutting)),
        "broken": _listed(charges),
        "cuttingBroken": _listed(cutting),
    }
    return given_to_browser, expected


def _cut_json(done: DoneCut) -> dict[str, object]:
    buds = done.cut.buds if isinstance(done.cut, Shortening) else None
    return {
        "part": done.cut.part,
        "buds": buds,
        "pass": str(done.in_pass),
        "tool": str(done.tool),
        "stub": str(done.stub),
    }


def _listed(charges: Sequence[Charge]) -> list[list[object]]:
    return _in_order([c.rule, c.message, c.points, c.must, dict(c.facts)] for c in charges)


def _browser_listed(broken: list[dict[str, Any]]) -> list[list[object]]:
    """The browser adds all that it measured; only facts that the sentence uses are compared."""
    return _in_order(
        [
            one["rule"],
            one["message"],
            one["points"],
            one["must"],
            {k: v for k, v in one["facts"].items() if k in _used(one["rule"], one["message"])},
        ]
        for one in broken
    )


def _used(rule: str, message: str) -> set[str]:
    names = set(PLACEHOLDER.findall(RULE_BY_NAME[rule].messages[message]["en"]))
    return names | {f"{name}_mm" for name in names}


def _in_order(rows: Iterable[list[object]]) -> list[list[object]]:
    return sorted(rows, key=lambda row: json.dumps(row, sort_keys=True))


@pytest.mark.node
def test_the_browser_scores_a_thousand_random_vines_alike(
    node: str, project: Path, tmp_path: Path
) -> None:
    rng = random.Random(20261125)
    rows, expected = zip(*(_row(rng) for _ in range(BROWSER_VINES)), strict=True)
    results = scored_by_browser(node, project, tmp_path, rows)
    assert len(results) == BROWSER_VINES
    for result, wanted in zip(results, expected, strict=True):
        told = {
            "score": result["score"],
            "lost": result["lost"],
            "cutting": result["cutting"]["score"],
            "broken": _browser_listed(result["broken"]),
            "cuttingBroken": _browser_listed(result["cutting"]["broken"]),
        }
        assert told == json.loads(json.dumps(wanted))
