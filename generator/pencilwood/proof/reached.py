"""How a case stands to its target of buds, and what is said of the answer's score.

A score counts against the best plan. Where even that misses the target, a bare "100 of 100"
beside "keep 16 to 24" would contradict itself, so whoever tells the score tells both.
"""

from __future__ import annotations

from collections.abc import Iterator

from pencilwood.cases.case_writer import UsualTarget
from pencilwood.proof.case_proof import CaseProof
from pencilwood.score.judge import Target
from pencilwood.vine import measures
from pencilwood.words import say


def is_met(target: Target, buds: int) -> bool:
    """Whether so many buds are what the target asks for."""
    return target.least <= buds <= target.most


def usual_target(proof: CaseProof) -> UsualTarget:
    """What the vine is asked for, beside what its best pruning keeps."""
    kept = measures.buds_kept(proof.plan.left)
    return UsualTarget(proof.target.least, proof.target.most, kept)


def answer_words(proof: CaseProof, language: str) -> str:
    """What the answer scores; where it misses the target, also what it and the plan keep."""
    return " ".join(_sentences(proof, language))


def _sentences(proof: CaseProof, language: str) -> Iterator[str]:
    mark = proof.profile.pass_mark
    yield say(language, "pages.case.answer.score", score=proof.answer_score, mark=mark)
    target, kept = proof.target, measures.buds_kept(proof.answer_left)
    if is_met(target, kept):
        return
    facts = {"kept": kept, "least": target.least, "most": target.most}
    yield say(language, "pages.case.answer.beside-target", **facts)
    best = measures.buds_kept(proof.plan.left)
    if not is_met(target, best):
        yield say(language, "pages.case.answer.plan-too", best=best)
