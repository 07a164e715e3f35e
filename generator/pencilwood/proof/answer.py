"""The author's own answer, held against the rules it teaches."""

from __future__ import annotations

from collections.abc import Sequence

from pencilwood.cases.case import Case, Excuse, Profile
from pencilwood.places import Place
from pencilwood.proof.report import ProofReport
from pencilwood.score.judge import Charge, charges_by_cut, judge_tying, lost, score
from pencilwood.vine.wood import Parts


def place_of(case: Case, charge: Charge) -> Place:
    """Where in the file the wood of a charge was measured."""
    for name in charge.where:
        piece = name.split(" above ")[0]
        if piece in case.places:
            return case.places[piece]
    return case.places.get("answer", case.place)


def check_cutting(case: Case, parts: Parts, profile: Profile, report: ProofReport) -> None:
    """The author's cuts obey the passes, the tools and the bud."""
    limits = profile.limits_of(parts.vine.form)
    charges = charges_by_cut(parts, [one.done for one in case.answer], limits)
    for one, found in zip(case.answer, charges, strict=True):
        for charge in found:
            report.add(
                one.place,
                "answer-breaks-cutting-rule",
                rule=charge.rule,
                sentence=report.sentence(charge),
            )
    for charge in judge_tying(parts, [one.done for one in case.answer], limits):
        report.add(
            case.places.get("answer", case.place),
            "answer-breaks-cutting-rule",
            rule=charge.rule,
            sentence=report.sentence(charge),
        )


def check_score(
    case: Case,
    charges: Sequence[Charge],
    plan_lost: int,
    profile: Profile,
    report: ProofReport,
) -> None:
    """The answer breaks no must-rule, passes, and is near enough to the plan."""
    for charge in charges:
        if charge.must:
            place = place_of(case, charge)
            report.add(
                place, "answer-breaks-must", rule=charge.rule, sentence=report.sentence(charge)
            )
    reached = score(charges, plan_lost, profile.pass_mark)
    answer_place = case.places.get("answer", case.place)
    if reached < profile.pass_mark:
        report.add(answer_place, "answer-fails", score=reached, pass_mark=profile.pass_mark)
    distance = lost(charges) - plan_lost
    if distance > profile.plan_distance and case.far_from_plan is None:
        report.add(
            answer_place, "answer-far-from-plan", points=distance, most=profile.plan_distance
        )
    if distance <= profile.plan_distance and case.far_from_plan is not None:
        place = case.places.get("far from plan", case.place)
        report.add(place, "far-from-plan-is-near", points=distance, most=profile.plan_distance)


def check_excuses(case: Case, charges: Sequence[Charge], report: ProofReport) -> None:
    """Each should-rule that the answer breaks has a written reason, and no reason is idle."""
    used: set[int] = set()
    missing: dict[str, Charge] = {}
    for charge in charges:
        fitting = [one for one in case.excuses if _fits(one, charge)]
        used.update(id(one) for one in fitting)
        if not charge.must and not fitting:
            missing.setdefault(charge.rule, charge)
    for rule, charge in missing.items():
        report.add(
            place_of(case, charge), "no-reason-given", rule=rule, sentence=report.sentence(charge)
        )
    for one in case.excuses:
        if id(one) not in used:
            found = f"at: {one.at}" if one.at else f"rule: {one.rule}"
            report.add(one.place, "reason-not-needed", rule=one.rule, found=found)


def _fits(excuse: Excuse, charge: Charge) -> bool:
    return excuse.rule == charge.rule and (excuse.at is None or excuse.at in charge.where)
