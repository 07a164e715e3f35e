"""Whether a rule's good vine keeps the rule and its bad vine breaks it, as they say."""

from __future__ import annotations

from pencilwood.cases.case import Profile, RuleExample
from pencilwood.findings import Finding, in_order
from pencilwood.proof.report import ProofReport
from pencilwood.score.judge import Charge, judge, judge_cuts, target_for
from pencilwood.vine.passes import after_cuts
from pencilwood.vine.wood import divide, uncut


def charges_of_example(example: RuleExample, profile: Profile) -> tuple[Charge, ...]:
    """Everything that the example's vine and cuts are charged with under a profile."""
    parts = divide(example.vine)
    left = after_cuts(uncut(parts), example.cuts)
    limits = profile.limits_of(example.vine.form)
    target = target_for(example.vine, limits, example.target_buds)
    return (
        *judge(left, limits, target),
        *judge_cuts(parts, example.cuts, limits),
    )


def prove_example(
    example: RuleExample, profile: Profile, language: str = "en"
) -> tuple[Finding, ...]:
    """A good vine is silent for its rule; a bad one reports exactly what it lists."""
    report = ProofReport(language, profile.units)
    charges = charges_of_example(example, profile)
    reported = [charge.message for charge in charges if charge.rule == example.rule]
    listed = [message for message, _ in example.breaks]
    if reported != listed:
        place = example.breaks[0][1] if example.breaks else example.place
        report.add(
            place,
            f"{example.kind}-vine-says-otherwise",
            # A trainer who moves a band may publish before redrawing the engine's examples.
            level="warning",
            rule=example.rule,
            listed=", ".join(listed) or "-",
            reported=", ".join(reported) or "-",
        )
    return tuple(in_order(report.findings))
