"""All proofs of one case, and what they worked out on the way."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from pencilwood.cases.case import Case, Profile
from pencilwood.findings import Finding, in_order
from pencilwood.plan import Plan, plan_for
from pencilwood.proof.answer import check_cutting, check_excuses, check_score, wood_after
from pencilwood.proof.facts import facts_of
from pencilwood.proof.luck import HIGHEST_CHANCE, Luck, habits, try_luck
from pencilwood.proof.report import ProofReport
from pencilwood.proof.safety import check_safety
from pencilwood.proof.teaching import VISIBLE_POINTS, Lesson, lesson
from pencilwood.proof.texts import check_texts
from pencilwood.score.judge import Charge, Target, judge, score, target_for
from pencilwood.score.lookup import LookUp
from pencilwood.score.sheet import Sheet, compile_sheet
from pencilwood.vine.wood import Parts, WoodLeft, divide


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
    target = target_for(case.vine, profile.limits, case.target_buds)
    sheet = compile_sheet(parts, profile.limits, target)
    plan = plan_for(sheet)
    left = wood_after(parts, case.answer)
    charges = judge(left, profile.limits, target)
    facts = {one: facts_of(left, target, profile, one) for one in profile.languages}
    check_cutting(case, parts, profile, report)
    check_score(case, charges, plan.lost, profile, report)
    check_excuses(case, charges, report)
    check_texts(case, facts[profile.languages[0]], report)
    check_safety(case, parts, report)
    look_up = LookUp(sheet)
    return CaseProof(
        case=case,
        parts=parts,
        sheet=sheet,
        target=target,
        plan=plan,
        answer_left=left,
        answer_charges=charges,
        answer_score=score(charges, plan.lost, profile.pass_mark),
        lessons=_lessons(case, sheet, plan, profile, report),
        habit_scores=_habits(case, look_up, plan, profile, report),
        luck=_luck(case, look_up, plan, profile, report),
        facts=facts,
        findings=tuple(in_order(report.findings)),
    )


def _lessons(
    case: Case, sheet: Sheet, plan: Plan, profile: Profile, report: ProofReport
) -> tuple[Lesson, ...]:
    cuts = tuple(cut.done for cut in plan.cuts)
    found = []
    for rule, place in case.teaches:
        one = lesson(sheet, rule, cuts, plan.lost, profile.pass_mark)
        found.append(one)
        if not one.broken:
            report.add(place, "teaches-nothing", rule=rule)
        elif not one.teaches:
            report.add(
                place, "teaches-too-softly", rule=rule, score=one.score or 0, least=VISIBLE_POINTS
            )
    return tuple(found)


def _habits(
    case: Case, look_up: LookUp, plan: Plan, profile: Profile, report: ProofReport
) -> Mapping[str, int]:
    scores = {
        habit: look_up.score(states, plan.lost, profile.pass_mark)
        for habit, states in habits(plan.left.parts).items()
    }
    for habit, reached in scores.items():
        if reached >= profile.pass_mark:
            report.add(case.place, "passed-by-habit", habit=report.habit(habit), score=reached)
    return scores


def _luck(case: Case, look_up: LookUp, plan: Plan, profile: Profile, report: ProofReport) -> Luck:
    luck = try_luck(look_up, plan.left.parts, plan.lost, profile.pass_mark, seed=case.slug)
    if luck.passes > HIGHEST_CHANCE * luck.tries:
        report.add(case.place, "passed-by-luck", passes=luck.passes, tries=luck.tries)
    return luck
