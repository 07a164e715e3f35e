"""Rules that speak of gaps and totals, and rules that speak of how a cut was made."""

from __future__ import annotations

import pytest

from pencilwood.rules.rulebook import RULEBOOK
from pencilwood.rules.shapes import BudTotal, CutInPass, Gap, StubLeft, ToolUse, WoundTotal
from pencilwood.rules.wrong_tool import tool_for
from pencilwood.vine.passes import Pass, Stub, Tool
from rule_bench import LIMITS, breaks, with_limits

Told = list[tuple[str, int]]


def told(rule: str, facts: object, **limits: int) -> Told:
    return [(one.message, one.excess) for one in breaks(rule, facts, with_limits(**limits))]


@pytest.mark.parametrize(
    ("gap_mm", "expected"),
    [(80, []), (79, [("too-close", 1)]), (0, [("too-close", 80)]), (500, [])],
)
def test_crowded_spurs(gap_mm: int, expected: Told) -> None:
    assert told("crowded-spurs", Gap(gap_mm)) == expected


@pytest.mark.parametrize(
    ("gap_mm", "expected"),
    [(200, []), (201, [("too-long", 1)]), (0, []), (900, [("too-long", 700)])],
)
def test_blank_on_arm(gap_mm: int, expected: Told) -> None:
    assert told("blank-on-arm", Gap(gap_mm)) == expected


@pytest.mark.parametrize(
    ("buds", "few", "many"),
    [
        (24, [], []),
        (30, [], []),
        (23, [("below-target", 1)], []),
        (31, [], [("above-target", 1)]),
        (0, [("below-target", 24)], []),
    ],
)
def test_bud_totals(buds: int, few: Told, many: Told) -> None:
    total = BudTotal(buds, least=24, most=30)
    assert told("too-few-buds", total) == few
    assert told("too-many-buds", total) == many


@pytest.mark.parametrize(("wounds", "expected"), [(0, []), (3, []), (4, [("above-limit", 1)])])
def test_too_many_large_wounds(wounds: int, expected: Told) -> None:
    assert told("too-many-large-wounds", WoundTotal(wounds)) == expected


WRONG_PASS: Told = [("not-for-this-pass", 0)]


@pytest.mark.parametrize(
    ("in_pass", "buds_left", "expected"),
    [
        (Pass.ROUGH, 3, WRONG_PASS),  # this is a spur already
        (Pass.ROUGH, 4, []),
        (Pass.ROUGH, 5, []),
        (Pass.ROUGH, 6, [("rough-cut-too-long", 1)]),
        (Pass.ROUGH, None, WRONG_PASS),
        (Pass.THINNING_OUT, None, []),
        (Pass.THINNING_OUT, 2, WRONG_PASS),
        (Pass.THINNING_OUT, 5, WRONG_PASS),
        (Pass.FINE, 1, []),
        (Pass.FINE, 3, []),  # too long for a spur perhaps, but cut in its own pass
        (Pass.FINE, 4, WRONG_PASS),
        (Pass.FINE, None, WRONG_PASS),
    ],
)
def test_passes(in_pass: Pass, buds_left: int | None, expected: Told) -> None:
    assert told("passes-out-of-order", CutInPass(in_pass, buds_left, backwards=False)) == expected


@pytest.mark.parametrize("buds_left", [1, 5, 9, None])
def test_going_back_is_told_once_and_alone(buds_left: int | None) -> None:
    cut = CutInPass(Pass.ROUGH, buds_left, backwards=True)
    assert told("passes-out-of-order", cut) == [("earlier-pass", 0)]


def test_a_spur_of_three_buds_fits_both_passes_where_the_profile_allows_both() -> None:
    limits = {"buds_on_a_spur_at_most": 3, "buds_after_the_rough_pass_at_least": 3}
    for in_pass in (Pass.ROUGH, Pass.FINE):
        assert told("passes-out-of-order", CutInPass(in_pass, 3, False), **limits) == []


@pytest.mark.parametrize(
    ("thickness_mm", "tool", "expected"),
    [
        (13, Tool.SHEARS, []),
        (14, Tool.SHEARS, [("too-thick", 0)]),
        (13, Tool.LOPPERS, []),
        (38, Tool.LOPPERS, []),
        (39, Tool.LOPPERS, [("too-thick", 0)]),
        (39, Tool.SHEARS, [("too-thick", 0)]),
        (39, Tool.SAW, []),
        (14, Tool.SAW, []),
        (13, Tool.SAW, [("clumsy", 0)]),
    ],
)
def test_wrong_tool(thickness_mm: int, tool: Tool, expected: Told) -> None:
    assert told("wrong-tool", ToolUse(thickness_mm, tool)) == expected


def test_a_saw_for_thin_wood_costs_as_much_as_a_cut_at_the_bud() -> None:
    # Both leave torn or drying wood by the bud; forcing a small tool hurts people, which is worse.
    clumsy, too_thick = (RULEBOOK["wrong-tool", one].points(0) for one in ("clumsy", "too-thick"))
    assert RULEBOOK["cut-too-close", "at-the-bud"].points(0) == clumsy < too_thick


@pytest.mark.parametrize("thickness_mm", range(1, 80))
def test_the_tool_that_is_needed_is_never_wrong(thickness_mm: int) -> None:
    needed = tool_for(thickness_mm, LIMITS)
    assert told("wrong-tool", ToolUse(thickness_mm, needed)) == []


@pytest.mark.parametrize(
    ("stub", "close", "long"),
    [
        (Stub.CLOSE, [("at-the-bud", 0)], []),
        (Stub.RIGHT, [], []),
        (Stub.LONG, [], [("long-stub", 0)]),
    ],
)
def test_stubs(stub: Stub, close: Told, long: Told) -> None:
    assert told("cut-too-close", StubLeft(stub)) == close
    assert told("stub-too-long", StubLeft(stub)) == long
