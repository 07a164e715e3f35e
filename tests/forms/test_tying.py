"""Canes that a form ties along the wire after the last cut, judged alike in the browser."""

from __future__ import annotations

import json
import random
from collections.abc import Iterator
from pathlib import Path

import pytest

import pencilwood.rules as rules
from browser_scores import scored_by_browser
from pencilwood.plan import plan_for
from pencilwood.rules import BANDS, rulebook
from pencilwood.rules.of_forms.cordon import CORDON
from pencilwood.rules.rulebook import Price
from pencilwood.rules.shapes import Broken, CaneTied, Rule, RulesOfForm, headings
from pencilwood.score.judge import Target, judge_cuts, judge_tying, target_for
from pencilwood.score.sheet import as_json, compile_sheet, dump
from pencilwood.vine.bands import Limits, default_limits
from pencilwood.vine.model import Form, Pass, Piece, Position, Side, Tally
from pencilwood.vine.passes import DoneCut, Stub, Tool, after_each_pass
from pencilwood.vine.tying import canes_to_tie
from pencilwood.vine.wood import CutError, Parts, Shortening, ThinningOut, Tie, divide, uncut
from pencilwood.words import LANGUAGES
from prunings import cut_at_random
from vines import arm, cane, random_vine, vine

LIMITS = default_limits(BANDS)


def _is_long(_position: Position, piece: Piece, state: int, _limits: Limits) -> bool:
    return piece.is_cane and piece.is_alive and state > 3


TIED = Form(
    "made-up tied canes",
    (Side.LEFT, Side.RIGHT),
    tallies=(Tally("long", _is_long, wanted=2),),
    passes=(Pass.THINNING_OUT, Pass.FINE, Pass.TIE),
    tied="long",
)
ONE_SIDE = Form(
    "made-up tied cane",
    (Side.RIGHT,),
    tallies=(Tally("long", _is_long, wanted=1),),
    passes=(Pass.THINNING_OUT, Pass.FINE, Pass.TIE),
    tied="long",
)
FORMS = pytest.mark.parametrize("form", [TIED, ONE_SIDE], ids=["two sides", "one side"])
PRICES = {"loose": Price(5), "no-room": Price(6), "crossed": Price(7)}


def _check(tied: CaneTied, _limits: Limits) -> Iterator[Broken]:
    if tied.side is None:
        yield Broken("loose")
    elif not tied.has_room:
        yield Broken("no-room")
    elif tied.others:
        yield Broken("crossed", facts={"others": min(tied.others, 1)})


TYING_RULE = Rule(
    name="made-up-tying",
    family="cutting",
    shape="tie",
    title={"en": "Tied badly", "es": "Mal amarrado"},
    messages={name: {"en": name, "es": name} for name in PRICES},
    bands=(),
    check=_check,
    page={one: dict.fromkeys(headings(one), "-") for one in LANGUAGES},
)


@pytest.fixture(autouse=True)
def _made_up_forms(monkeypatch: pytest.MonkeyPatch) -> None:
    spurs_may_be_long = tuple(rule for rule in CORDON.rules if rule.name != "spur-too-long")
    for form in (TIED, ONE_SIDE):
        own = RulesOfForm((form,), (*spurs_may_be_long, TYING_RULE))
        monkeypatch.setitem(rules._BY_FORM, form, own)
    monkeypatch.setitem(rules.RULE_BY_NAME, TYING_RULE.name, TYING_RULE)
    for name, price in PRICES.items():
        monkeypatch.setitem(rulebook.RULEBOOK, (TYING_RULE.name, name), price)


def three_long_canes(form: Form) -> Parts:
    left = arm(Side.LEFT, 600, (60, (cane("a", 6),)), (130, (cane("a", 6),)))
    right = arm(Side.RIGHT, 600, (70, (cane("a", 6),)))
    return divide(vine(form, left, right))


def tie(part: str, side: Side) -> DoneCut:
    return DoneCut(Tie(part, side), Pass.TIE)


def told(parts: Parts, *done: DoneCut) -> list[tuple[str, str]]:
    """Message and cane."""
    return [(one.message, one.where[0]) for one in judge_tying(parts, done, LIMITS)]


def test_each_cane_wants_a_side_of_its_own() -> None:
    parts = three_long_canes(TIED)
    off = DoneCut(ThinningOut("L2a"), Pass.THINNING_OUT)
    assert told(parts, off) == [("loose", "L1a"), ("loose", "R1a")]
    left, right = tie("L1a", Side.LEFT), tie("R1a", Side.RIGHT)
    assert told(parts, off, left) == [("loose", "R1a")]
    assert told(parts, off, left, right) == []
    assert told(parts, off, left, tie("R1a", Side.LEFT)) == [("crossed", "R1a")]
    # A cane that is tied anew lies where it was tied last.
    assert told(parts, off, left, tie("R1a", Side.LEFT), right) == []


def test_what_is_cut_short_needs_no_tie_any_more() -> None:
    parts = three_long_canes(TIED)
    short = [DoneCut(Shortening(name, 2), Pass.FINE) for name in ("L1a", "L2a", "R1a")]
    assert told(parts, *short) == []


def test_a_side_without_room_is_the_wrong_one() -> None:
    parts = divide(vine(ONE_SIDE, arm(Side.RIGHT, 600, (60, (cane("a", 6),)))))
    assert told(parts, tie("R1a", Side.LEFT)) == [("no-room", "R1a")]
    assert told(parts, tie("R1a", Side.RIGHT)) == []


def test_tying_takes_nothing_off() -> None:
    left = uncut(three_long_canes(TIED))
    assert left.cut(Tie("L1a", Side.LEFT)) == left
    gone = left.cut(ThinningOut("L1a"))
    with pytest.raises(CutError, match="already-gone"):
        gone.cut(Tie("L1a", Side.LEFT))


def test_the_passes_are_the_forms_own() -> None:
    parts = three_long_canes(TIED)
    done = [DoneCut(ThinningOut("L2a"), Pass.THINNING_OUT), tie("L1a", Side.LEFT)]
    after = after_each_pass(parts, done)
    assert list(after) == [Pass.THINNING_OUT, Pass.FINE, Pass.TIE]
    assert {left.state("L2a") for left in after.values()} == {0}
    sheet = as_json(compile_sheet(parts, LIMITS, Target(8, 12)), "x", 0, 80)
    assert json.loads(dump(sheet))["cutting"]["passes"] == ["thinning-out", "fine", "tie"]


@FORMS
def test_the_plan_ties_what_it_leaves_long(form: Form) -> None:
    rng = random.Random(3)
    tied = 0
    for _ in range(20):
        parts = divide(random_vine(rng, positions=rng.randint(1, 5), form=form))
        sheet = compile_sheet(parts, LIMITS, target_for(parts.vine, LIMITS, (8, 14)))
        plan = plan_for(sheet)
        done = [one.done for one in plan.cuts]
        assert Pass.ROUGH not in {one.in_pass for one in done}
        ties = [one.cut for one in done if isinstance(one.cut, Tie)]
        canes = canes_to_tie(plan.left, LIMITS)
        assert len(ties) == min(len(canes), len(form.sides))
        assert len({one.side for one in ties}) == len(ties)
        broken = {one.message for one in judge_tying(parts, done, LIMITS)}
        assert broken == ({"loose"} if len(canes) > len(form.sides) else set())
        tied += len(ties)
    assert tied


@FORMS
@pytest.mark.node
def test_the_browser_judges_tying_alike(
    form: Form, node: str, project: Path, tmp_path: Path
) -> None:
    rng = random.Random(19)
    rows, wanted = [], []
    for _ in range(150):
        parts = divide(random_vine(rng, positions=rng.randint(1, 7), form=form))
        left, done = cut_at_random(parts, rng)
        for number in canes_to_tie(left, LIMITS):
            for _ in range(rng.choice((0, 1, 1, 2))):
                side = rng.choice((Side.LEFT, Side.RIGHT))
                done.append(DoneCut(Tie(parts.parts[number].name, side), Pass.TIE))
        sheet = compile_sheet(parts, LIMITS, Target(6, 12))
        body = as_json(sheet, "random", 0, 80)
        rows.append({"sheet": body, "states": left.states, "cuts": list(map(as_told, done))})
        charges = judge_cuts(parts, done, LIMITS)
        wanted.append(sorted((one.rule, one.message, one.where[0], one.points) for one in charges))
    scored = scored_by_browser(node, project, tmp_path, rows)
    results = [one["cutting"]["broken"] for one in scored]
    told_there = [
        sorted((one["rule"], one["message"], one["where"]["part"], one["points"]) for one in row)
        for row in results
    ]
    assert told_there == wanted
    met = {message for row in wanted for rule, message, _, _ in row if rule == TYING_RULE.name}
    assert met >= {"loose", "crossed"}


def as_told(done: DoneCut) -> dict[str, object]:
    """A cut as the browser has it."""
    told: dict[str, object] = {
        "part": done.cut.part,
        "buds": done.cut.buds if isinstance(done.cut, Shortening) else None,
        "pass": str(done.in_pass),
        "tool": str(Tool(done.tool)),
        "stub": str(Stub(done.stub)),
    }
    return told | ({"tied": str(done.cut.side)} if isinstance(done.cut, Tie) else {})
