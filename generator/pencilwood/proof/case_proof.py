"""All proofs of one case, and what they worked out on the way."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from pencilwood.cases.case import Case, Profile
from pencilwood.findings import Finding, in_order
from pencilwood.plan import Plan
from pencilwood.proof.answer import check_cutting, check_excuses, check_score
from pencilwood.proof.facts import facts_of
from pencilwood.proof.luck import HIGHEST_CHANCE, Luck
from pencilwood.proof.report import ProofReport
from pencilwood.proof.safety import check_safety
from pencilwood.proof.teaching import VISIBLE_POINTS, Lesson
from pencilwood.proof.texts import check_texts
from pencilwood.proof.worked import work_out
from pencilwood.score.judge import Charge, Target, judge, score, target_for
from pencilwood.score.sheet import Sheet, compile_sheet
from pencilwood.vine.passes import after_cuts
from pencilwood.vine.wood import Parts, WoodLeft, divide, uncut


@dataclass(frozen=True)
class CaseProof:
    """A case with everything that was computed from it."""

    case: Case
    parts: Parts
    sheet: Sheet
    target: Target
    plan: Plan
    answer_left: WoodLeft
    answer_charges: tuple[Charge, ...]
    answer_score: int
    lessons: tuple[Lesson, ...]
    habit_scores: Mapping[str, int]
    luck: Luck
    facts: Mapping[str, Mapping[str, str]]
    """Language -> placeholder -> text."""
    findings: tuple[Finding, ...]


def prove_case(case: Case, profile: Profile, language: str = "en") -> CaseProof:
    """Run every proof of a case; findings are worded in `language`."""
    report = ProofReport(language, profile.units)
    parts = divide(case.vine)
    limits = profile.limits_of(case.vine.form)
    target = target_for(case.vine, limits, case.target_buds)
    sheet = compile_sheet(parts, limits, target)
    worked = work_out(case, sheet, profile)
    plan = worked.plan
    # The reader has found these cuts possible already.
    left = after_cuts(uncut(parts), (one.done for one in case.answer))
    charges = judge(left, limits, target)
    facts = {one: facts_of(left, target, profile, one) for one in profile.languages}
    check_cutting(case, parts, profile, report)
    check_score(case, charges, plan.lost, profile, report)
    check_excuses(case, charges, report)
    check_texts(case, facts[profile.languages[0]], report)
    check_safety(case, parts, report)
    _check_lessons(case, worked.lessons, report)
    _check_habits(case, worked.habit_scores, profile, report)
    _check_luck(case, worked.luck, report)
    return CaseProof(
        case=case,
        parts=parts,
        sheet=sheet,
        target=target,
        plan=plan,
        answer_left=left,
        answer_charges=charges,
        answer_score=score(charges, plan.lost, profile.pass_mark),
        lessons=worked.lessons,
        habit_scores=worked.habit_scores,
        luck=worked.luck,
        facts=facts,
        findings=tuple(in_order(report.findings)),
    )


def _check_lessons(case: Case, lessons: tuple[Lesson, ...], report: ProofReport) -> None:
    for (rule, place), one in zip(case.teaches, lessons, strict=True):
        if not one.broken:
            report.add(place, "teaches-nothing", rule=rule)
        elif not one.teaches:
            report.add(
                place, "teaches-too-softly", rule=rule, score=one.score or 0, least=VISIBLE_POINTS
            )


def _check_habits(
    case: Case, scores: Mapping[str, int], profile: Profile, report: ProofReport
) -> None:
    for habit, reached in scores.items():
        if reached >= profile.pass_mark:
            report.add(case.place, "passed-by-habit", habit=report.habit(habit), score=reached)


def _check_luck(case: Case, luck: Luck, report: ProofReport) -> None:
    if luck.passes > HIGHEST_CHANCE * luck.tries:
        report.add(case.place, "passed-by-luck", passes=luck.passes, tries=luck.tries)
