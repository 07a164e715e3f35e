"""What has grown is a vine for all purposes, whatever its form."""

from __future__ import annotations

import random
from dataclasses import replace
from pathlib import Path

import pytest

from case_files import usual_tool
from growing import LIMITS, SUMMER, at_place, pruned
from made_up_forms import CROWN, LONG_CANES, install, random_vine_of
from pencilwood.cases.case import AnswerCut, Case
from pencilwood.cases.case_file import CaseSurroundings, read_case
from pencilwood.cases.case_writer import write_case
from pencilwood.drawing import Paper, WoodShown, describe_vine, draw_vine
from pencilwood.places import Place
from pencilwood.plan import plan_for
from pencilwood.rules import RULE_BY_NAME
from pencilwood.score.judge import target_for
from pencilwood.score.sheet import compile_sheet
from pencilwood.vine.growth import (
    next_winter,
)
from pencilwood.vine.model import Growth, Lean, Vine
from pencilwood.vine.wood import divide, uncut
from svg_reading import read


def read_back(one: Vine, folder: Path) -> Vine | None:
    """The vine of a case file that was written with it."""
    parts = divide(one)
    sheet = compile_sheet(parts, LIMITS, target_for(one, LIMITS))
    plan = plan_for(sheet)
    words = {"en": "Words."}
    place = Place("grown")
    answer = tuple(AnswerCut(cut.done, words, place) for cut in plan.cuts)
    rule = (("crowded-spurs", place),)
    case = Case(
        "grown", place, words, "easy", rule, words, {}, one, answer, safety=(("shears", place),)
    )
    path = folder / "grown.yml"
    path.write_text(write_case(case, "en"), "utf-8")
    read, findings = read_case(
        path, CaseSurroundings(("en",), list(RULE_BY_NAME), ["shears"], usual_tool)
    )
    assert [one.render() for one in findings if one.level == "error"] == []
    return None if read is None else read.vine


@pytest.mark.parametrize("seed", range(40))
def test_a_grown_vine_is_a_vine_for_all_purposes(seed: int, tmp_path: Path) -> None:
    """Three winters on: divided, planned, drawn, told, and read back from its file."""
    grown = next_winter(pruned(seed, most_positions=4), replace(SUMMER, budbreak_percent=80))
    for turn in range(2):
        parts = divide(grown)
        left = plan_for(compile_sheet(parts, LIMITS, target_for(grown, LIMITS))).left
        if not any(left.states):
            left = uncut(parts)
        grown = next_winter(left, replace(SUMMER, seed=f"{seed}/{turn}", budbreak_percent=80))
    parts = divide(grown)
    assert "L" in describe_vine(parts, None, "en") or "R" in describe_vine(parts, None, "es")
    svg = read(
        draw_vine(
            WoodShown(parts, cutpoints=True), Paper("g", "en", title="Grown", description="-")
        )
    )
    assert {one.get("data-part") for one in svg.iter()} >= {part.name for part in parts.parts}
    if plan_for(compile_sheet(parts, LIMITS, target_for(grown, LIMITS))).cuts:
        assert read_back(grown, tmp_path) == grown


@pytest.mark.parametrize("seed", range(10))
def test_any_form_grows(seed: int, monkeypatch: pytest.MonkeyPatch) -> None:
    install(monkeypatch)
    rng = random.Random(seed)
    for form in (CROWN, LONG_CANES):
        one = random_vine_of(form, rng, rng.randint(1, 6))
        left = uncut(divide(one))
        grown = next_winter(left, SUMMER)
        assert grown.form is form
        wanted = Lean.DOWN if grown.form.growth is Growth.DOWN else Lean.UP
        parts = divide(grown)
        assert {part.piece.lean for part in parts.parts if part.is_cane} <= {wanted}
        assert at_place(grown).keys() == at_place(one).keys()
