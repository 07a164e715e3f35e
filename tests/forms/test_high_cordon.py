"""High cordons: shoots that hang are measured, judged, planned, drawn and told downward."""

from __future__ import annotations

import random
from collections import Counter
from itertools import pairwise
from pathlib import Path

import pytest

from case_files import LANGUAGES, lines, usual_tool
from forms_alike import (
    assert_general_solver_finds_nothing_better,
    assert_sheet_says_what_rules_say,
    random_target,
)
from high_cordons import high, high_vine, random_high_vine
from pencilwood.cases.case import Case
from pencilwood.cases.case_file import CaseSurroundings, read_case
from pencilwood.cases.case_writer import write_case
from pencilwood.drawing import describe_vine
from pencilwood.drawing.scene.wood_text import plate_of
from pencilwood.findings import Finding
from pencilwood.plan import plan_for
from pencilwood.rules import RULE_BY_NAME, bands_of, rules_of
from pencilwood.rules.of_forms.high_cordon import BANDS
from pencilwood.score.judge import Target, judge, lost
from pencilwood.score.sheet import compile_sheet
from pencilwood.units import PER_METRE
from pencilwood.vine import measures
from pencilwood.vine.bands import default_limits
from pencilwood.vine.forms.high_cordon import HIGH_ARM_RIGHT
from pencilwood.vine.model import Lean, Piece, Side, Vine
from pencilwood.vine.wood import Parts, Shortening, ThinningOut, WoodLeft, divide, uncut
from prunings import every_pruning, first_small
from vines import arm, cane, old, vine

LIMITS = default_limits(bands_of(HIGH_ARM_RIGHT))
INCH_MM, FOOT_MM = 25.4, 304.8


def one_arm(*places: tuple[int, tuple[Piece, ...]], length_mm: int = 500) -> Parts:
    return divide(high(vine(HIGH_ARM_RIGHT, arm(Side.RIGHT, length_mm, *places))))


def broken(left: WoodLeft) -> Counter[str]:
    return Counter(charge.rule for charge in judge(left, LIMITS, Target(0, 99)))


def small_vine(rng: random.Random) -> Parts:
    """A vine with few enough prunings to try them all."""

    def grow() -> Vine:
        return random_high_vine(rng, positions=rng.randint(1, 4), most_canes=2, most_buds=4)

    return first_small(grow, 2500)


def test_the_plan_is_the_best_of_all_prunings() -> None:
    rng = random.Random(17)
    for _ in range(80):
        parts, target = small_vine(rng), random_target(rng)
        limits = LIMITS | {"large wounds in one winter at most": rng.randint(0, 2)}
        judged = [judge(left, limits, target) for left in every_pruning(parts)]
        best = min(lost(one) for one in judged if not any(charge.must for charge in one))
        assert plan_for(compile_sheet(parts, limits, target)).lost == best


def test_a_general_solver_finds_nothing_better() -> None:
    rng = random.Random(19)
    grown = (
        divide(random_high_vine(rng, positions=rng.randint(4, 14), most_buds=5)) for _ in range(15)
    )
    vines = ((parts, random_target(rng)) for parts in grown)
    assert_general_solver_finds_nothing_better(vines, LIMITS)


def test_the_sheet_says_what_the_rules_say() -> None:
    rng = random.Random(23)
    vines = [(divide(random_high_vine(rng)), random_target(rng)) for _ in range(60)]
    assert_sheet_says_what_rules_say(vines, LIMITS, rng)


def test_leaf_room_is_measured_down_to_the_skirt() -> None:
    # Worked by hand: arm at 170 cm, skirt at 50 cm, 8 cm from bud to bud, 8 cm and 29 cm down.
    near = cane("a", 6, internode_mm=80, lean=Lean.DOWN)
    wood = (
        old("m", 210, lean=Lean.DOWN),
        cane("b", 6, on="m", at_mm=210, internode_mm=80, lean=Lean.DOWN),
    )
    parts = one_arm((100, (near,)), (300, wood))
    rooms = {
        part.name: measures.leaf_room(parts.vine, part, 1) for part in parts.parts if part.is_cane
    }
    assert rooms == {"R1a": (1200 - 80) // 80, "R2b": (1200 - 210 - 80) // 80}
    assert measures.climb_mm(uncut(parts)) == 290


def test_the_farther_cane_costs_and_the_near_one_renews() -> None:
    wood = (
        old("m", 200, 20, age_years=4, lean=Lean.DOWN),
        cane("a", 6, on="m", at_mm=20, lean=Lean.DOWN),
        cane("b", 6, on="m", at_mm=195, lean=Lean.DOWN),
    )
    parts = one_arm((150, wood), length_mm=250)
    far = uncut(parts).cut(ThinningOut("R1a")).cut(Shortening("R1b", 2))
    near = uncut(parts).cut(ThinningOut("R1m above a")).cut(Shortening("R1a", 2))
    assert broken(far)["climbed-too-far"] == broken(far)["no-renewal-bud"] == 1
    assert broken(near) == Counter()


def test_upright_wood_is_the_fault_and_hanging_or_leaning_wood_is_not() -> None:
    for lean in Lean:
        parts = one_arm((150, (cane("a", 6, lean=lean),)), length_mm=250)
        told = broken(uncut(parts).cut(Shortening("R1a", 2)))
        assert told["upright-wood"] == (lean is Lean.UP), lean
        assert told["wood-below-arm"] == 0


def test_the_forms_own_figures_hold_what_was_read() -> None:
    own = {band.name: band for band in BANDS}
    spacing = own["spur spacing at least"]
    # NC State Extension, fig. 14-33: 2-bud spurs 3 to 8 in apart on a high cordon.
    assert (spacing.lowest, spacing.highest) == (round(3 * INCH_MM), round(8 * INCH_MM))
    assert own["blank at most"].default <= 8 * INCH_MM
    # J. Fiola, Univ. Maryland Extension, 2021: 3 to 5 shoots per foot, high cordons included.
    least, most = own["buds per metre at least"], own["buds per metre at most"]
    assert (least.default, most.default) == (
        round(3 * 1000 / FOOT_MM) * PER_METRE,
        round(5 * 1000 / FOOT_MM) * PER_METRE,
    )
    assert "wood-below-arm" not in {rule.name for rule in rules_of(HIGH_ARM_RIGHT)}


def test_hanging_wood_is_drawn_below_the_arm_and_canes_can_be_told_apart() -> None:
    rng = random.Random(29)
    for vine_drawn in (high_vine(), *(random_high_vine(rng) for _ in range(20))):
        plate = plate_of(divide(vine_drawn))
        for position in plate.parts.positions:
            pieces = [
                piece for piece in position.pieces if piece.lean is Lean.DOWN and piece.is_cane
            ]
            ends = []
            for piece in pieces:
                stem = plate.stems[position.name + piece.letter]
                assert stem.curve.points[-1].y > stem.curve.points[0].y
                if piece.grows_from is None:
                    assert stem.curve.points[0].y >= plate.foot(position).y
                    ends.append(stem.curve.at(min(200, piece.length_mm)).x)
            ends.sort()
            assert all(b - a > 15 for a, b in pairwise(ends))


def test_the_words_speak_of_one_wire_and_below_the_arm() -> None:
    words = describe_vine(divide(high_vine()), None, "en")
    assert "There is one wire, at 170 cm." in words
    assert "below the arm" in words
    assert "catch wire" not in words
    assert "un solo alambre" in describe_vine(divide(high_vine()), None, "es")


CASE = Path(__file__).resolve().parents[2] / "content/cases/hanging-spurs.yml"


def read(text: str, folder: Path, language: str = "en") -> tuple[Case | None, list[Finding]]:
    """The case of a text, which calls for the safety notes of this form."""
    path = folder / CASE.name
    path.write_text(text, encoding="utf-8")
    notes = ("eyes", "overhead", "hand-shears", "cold", "first-aid")
    return read_case(
        path, CaseSurroundings(LANGUAGES, tuple(RULE_BY_NAME), notes, usual_tool), language=language
    )


def with_slip(was: str, now: str) -> str:
    text = CASE.read_text(encoding="utf-8")
    assert text.count(was) == 1
    return text.replace(was, now)


@pytest.mark.parametrize(
    ("was", "now", "said"),
    [
        (
            "trimmed at: 55 cm",
            "trimmed at: 180 cm",
            "shoots that hang cannot be trimmed above the arms; expected less than the cordon "
            "height, 165 cm; found 180 cm (trimmed-above-arms)",
        ),
        (
            "wires: {fruiting: 165 cm}",
            "wires: {fruiting: 165 cm, top: 200 cm}",
            '"top" is not known here; expected one of fruiting (unknown-key)',
        ),
        (
            "wires: {fruiting: 165 cm}",
            "wires: {fruiting: 120 cm}",
            "the arms are too far from the fruiting wire; expected at most 30 cm between them; "
            "found arms at 165 cm, wire at 120 cm (arms-off-the-wire)",
        ),
    ],
)
def test_a_frame_that_cannot_stand_is_told(was: str, now: str, said: str, tmp_path: Path) -> None:
    case, findings = read(with_slip(was, now), tmp_path)
    assert case is None
    assert any(line.endswith(said) for line in lines(findings)), lines(findings)
    spanish = read(with_slip(was, now), tmp_path, "es")[1]
    assert {one.what for one in spanish}.isdisjoint(one.what for one in findings)


def test_a_case_is_written_as_it_is_read(tmp_path: Path) -> None:
    case, findings = read(CASE.read_text(encoding="utf-8"), tmp_path)
    assert case is not None, findings
    again, findings = read(write_case(case, "en"), tmp_path)
    assert again is not None, findings
    assert again.vine == case.vine
