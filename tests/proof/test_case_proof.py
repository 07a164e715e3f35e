"""What `check` says of a case whose answer, words or vine are wrong."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path

import pytest

from case_files import usual_tool
from pencilwood.cases.case import Case, Profile
from pencilwood.cases.case_file import CaseSurroundings, read_case
from pencilwood.places import Place
from pencilwood.proof import CaseProof, prove_case
from pencilwood.rules import BANDS, RULE_BY_NAME
from pencilwood.score.judge import Charge, score
from pencilwood.vine.bands import default_limits

PROFILE = Profile(
    "Larkfell", ("en", "es"), "metric", default_limits(BANDS), 80, Place("profile.yml")
)
NOTES = ("eyes", "hand-shears", "loppers", "saw", "cold", "first-aid", "ladder-tripod")
TIDY = Path(__file__).resolve().parents[2] / "content/cases/tidy-vine.yml"


def read(text: str, folder: Path) -> Case:
    path = folder / "tidy-vine.yml"
    path.write_text(text, encoding="utf-8")
    case, findings = read_case(
        path, CaseSurroundings(PROFILE.languages, list(RULE_BY_NAME), NOTES, usual_tool), "vine.yml"
    )
    assert case is not None, [finding.render() for finding in findings]
    return case


@cache
def tidy_text() -> str:
    return TIDY.read_text(encoding="utf-8")


@pytest.fixture(scope="module")
def tidy(tmp_path_factory: pytest.TempPathFactory) -> CaseProof:
    return prove_case(read(tidy_text(), tmp_path_factory.mktemp("tidy")), PROFILE)


def test_a_good_case_is_proved_without_a_finding(tidy: CaseProof) -> None:
    assert tidy.findings == ()
    assert tidy.answer_score >= PROFILE.pass_mark
    assert all(one.teaches for one in tidy.lessons)
    assert all(reached < PROFILE.pass_mark for reached in tidy.habit_scores.values())


@dataclass(frozen=True)
class Flaw:
    reason: str
    old: str
    new: str
    name: str
    """The one kind of finding that must be among those reported."""
    says: str = ""


FLAWS = [
    Flaw(
        "a cane left at five buds breaks the must-rule on spur length",
        "cut: [L1a, L2a,",
        "cut: [L2a,",
        "answer-breaks-must",
        "L1a",
    ),
    Flaw(
        "the rough pass leaves fewer buds than a rough pass should",
        "      to: 5 buds",
        "      to: 3 buds",
        "answer-breaks-cutting-rule",
        "passes-out-of-order",
    ),
    Flaw(
        "two spurs stay at one place, and nobody says why",
        '"L1m above a", "L2m above a"',
        '"L2m above a"',
        "no-reason-given",
        "doubled-spur",
    ),
    Flaw(
        "a reason for a rule that is kept",
        "safety: [",
        "exceptions:\n  - {rule: head-wood, why: {en: Because., es: Porque.}}\nsafety: [",
        "reason-not-needed",
        "head-wood",
    ),
    Flaw(
        "far from the plan is claimed and not so",
        "safety: [",
        "far from plan: {why: {en: Because., es: Porque.}}\nsafety: [",
        "far-from-plan-is-near",
    ),
    Flaw(
        "a rule that this vine cannot teach",
        "teaches: [doubled-spur,",
        "teaches: [diseased-wood,",
        "teaches-nothing",
        "diseased-wood",
    ),
    Flaw(
        "no wood here needs another tool than shears",
        "teaches: [doubled-spur,",
        "teaches: [wrong-tool,",
        "teaches-nothing",
        "wrong-tool",
    ),
    Flaw(
        "a number typed by hand goes stale",
        "Work pass by pass",
        "It has 11 spurs. Work pass by pass",
        "number-typed-by-hand",
        "11",
    ),
    Flaw(
        "a placeholder with a slip of the finger",
        "{target_least} to {target_most} buds",
        "{target_least} to {target_mosst} buds",
        "unknown-placeholder",
        "target_most",
    ),
    Flaw(
        "one language names a number that the other leaves out",
        "It should keep {target_least} to {target_most} buds.",
        "It should keep {target_least} buds.",
        "placeholders-differ",
    ),
    Flaw(
        "hand shears are used and the note on them is missing",
        "safety: [eyes, hand-shears,",
        "safety: [eyes,",
        "safety-note-missing",
        "hand-shears",
    ),
    Flaw(
        "the saw is used without the note on saws",
        'cut: ["L1m above a", "L2m above a", "L4m above a", "L5m above a"]\n',
        'cut: ["L1m above a", "L2m above a", "L4m above a", "L5m above a"]\n      tool: saw\n',
        "safety-note-missing",
        "saw",
    ),
    Flaw(
        "a saw for thin wood",
        'cut: ["L1m above a", "L2m above a", "L4m above a", "L5m above a"]\n',
        'cut: ["L1m above a", "L2m above a", "L4m above a", "L5m above a"]\n      tool: saw\n',
        "answer-breaks-cutting-rule",
        "wrong-tool",
    ),
]


@pytest.mark.parametrize("flaw", FLAWS, ids=lambda flaw: flaw.reason)
def test_a_flaw_is_found_and_named(flaw: Flaw, tmp_path: Path) -> None:
    assert tidy_text().count(flaw.old) == 1
    proof = prove_case(read(tidy_text().replace(flaw.old, flaw.new), tmp_path), PROFILE)
    told = [finding.render() for finding in proof.findings if finding.name == flaw.name]
    assert any(flaw.says in one for one in told), [one.render() for one in proof.findings]


@pytest.mark.parametrize("flaw", FLAWS, ids=lambda flaw: flaw.reason)
def test_the_same_flaw_is_told_in_spanish(flaw: Flaw, tmp_path: Path) -> None:
    case = read(tidy_text().replace(flaw.old, flaw.new), tmp_path)
    english, spanish = (prove_case(case, PROFILE, language).findings for language in ("en", "es"))
    assert [f.name for f in english] == [f.name for f in spanish]
    assert all(e.what != s.what for e, s in zip(english, spanish, strict=True))


def test_an_answer_far_from_the_plan_needs_a_reason(tmp_path: Path) -> None:
    """One-bud spurs everywhere leave too few buds: far from the plan, though no must breaks."""
    short = tidy_text().replace("      to: 2 buds", "      to: 1 bud")
    names = {finding.name for finding in prove_case(read(short, tmp_path), PROFILE).findings}
    assert {"answer-far-from-plan", "answer-fails"} <= names
    excused = short + "far from plan: {why: {en: Young vine., es: Cepa joven.}}\n"
    names = {finding.name for finding in prove_case(read(excused, tmp_path), PROFILE).findings}
    assert "answer-far-from-plan" not in names


def test_a_vine_that_is_passed_by_habit_or_luck_is_refused(tmp_path: Path) -> None:
    """Where the target is nothing at all, taking everything off is the best pruning."""
    case = read(tidy_text(), tmp_path)
    limits = {**PROFILE.limits, "blank at most": 10_000, "buds on a spur at most": 9}
    easy = replace(PROFILE, limits=limits)
    names = {f.name for f in prove_case(replace(case, target_buds=(0, 999)), easy).findings}
    assert {"passed-by-habit", "passed-by-luck"} <= names


def test_a_high_cut_calls_for_the_notes_on_ladders_and_raised_hands(tmp_path: Path) -> None:
    case = read(tidy_text(), tmp_path)
    high = replace(case.vine, cordon_height_mm=2000)
    names = [
        finding.expected
        for finding in prove_case(replace(case, vine=high), PROFILE).findings
        if finding.name == "safety-note-missing"
    ]
    assert names
    assert [any(note in name for name in names) for note in ("overhead", "ladder")] == [True, True]
    notes = ("overhead", "ladder-tripod")
    with_note = replace(case, vine=high, safety=(*case.safety, *((n, case.place) for n in notes)))
    proof = prove_case(with_note, PROFILE)
    assert not any(finding.name == "safety-note-missing" for finding in proof.findings)


def test_findings_stand_where_the_author_typed(tmp_path: Path) -> None:
    text = tidy_text().replace("cut: [L1a, L2a,", "cut: [L2a,")
    proof = prove_case(read(text, tmp_path), PROFILE)
    must = next(f for f in proof.findings if f.name == "answer-breaks-must")
    line = text.splitlines()[must.place.line - 1]
    assert "cane: a" in line
    assert must.place.file == "vine.yml"


def test_the_score_is_against_the_plan_and_a_must_caps_it() -> None:
    charge = Charge("head-wood", "kept", points=30, must=False)
    assert score((charge,), plan_lost=30, pass_mark=80) == 100
    assert score((charge,), plan_lost=10, pass_mark=80) == 80
    assert score((replace(charge, must=True),), plan_lost=30, pass_mark=80) == 79
    assert score((replace(charge, points=500),), plan_lost=0, pass_mark=80) == 0
