"""Whether a quiz can be passed without knowing, and which rules it covers."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from pencilwood.cases.case import Profile, Quiz
from pencilwood.findings import Finding, in_order
from pencilwood.proof.case_proof import CaseProof
from pencilwood.proof.report import ProofReport
from pencilwood.rules import RULES

HIGHEST_CHANCE = 0.01
"""The most that somebody who prunes at random may pass the quiz, as a share."""


@dataclass(frozen=True)
class QuizProof:
    """What was computed for a quiz."""

    quiz: Quiz
    chance_at_most: float
    """Chance of passing by random pruning, from the upper ends of the cases' intervals."""
    covers: tuple[str, ...]
    leaves_out: tuple[str, ...]
    findings: tuple[Finding, ...]


def at_least(needed: int, chances: Sequence[float]) -> float:
    """Chance that at least `needed` of independent events happen (Poisson-binomial)."""
    exactly = [1.0]
    for chance in chances:
        grown = [share * (1 - chance) for share in exactly] + [0.0]
        for number, share in enumerate(exactly):
            grown[number + 1] += share * chance
        exactly = grown
    return sum(exactly[needed:])


def prove_quiz(
    quiz: Quiz, proofs: Mapping[str, CaseProof], profile: Profile, language: str = "en"
) -> QuizProof:
    """Prove a quiz whose cases have been proved."""
    report = ProofReport(language, profile.units)
    asked = [proofs[one.prune] for one in quiz.questions if one.prune in proofs]
    chance = at_least(quiz.passes_needed, [one.luck.interval[1] for one in asked])
    if chance > HIGHEST_CHANCE:
        report.add(quiz.place, "quiz-passed-by-luck", percent=f"{chance * 100:.1f}")
    covered = {rule for one in asked for rule, _ in one.case.teaches}
    return QuizProof(
        quiz=quiz,
        chance_at_most=chance,
        covers=tuple(rule.name for rule in RULES if rule.name in covered),
        leaves_out=tuple(rule.name for rule in RULES if rule.name not in covered),
        findings=tuple(in_order(report.findings)),
    )
