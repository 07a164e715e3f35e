"""Why each cut is made, in the reader's language: the author's reasons and the plan's."""

from __future__ import annotations

from collections.abc import Iterator

from pencilwood.plan.explain import ReasonedCut
from pencilwood.proof.case_proof import CaseProof
from pencilwood.score.told import message_text
from pencilwood.vine.passes import DoneCut, Pass
from pencilwood.vine.wood import Shortening
from pencilwood.words import fitting, say
from pencilwood.words.filling import fill


def answer_with_reasons(proof: CaseProof, language: str) -> Iterator[tuple[DoneCut, str]]:
    """The author's cuts in order, each with the reason that the author gives."""
    facts = proof.facts[language]
    for one in proof.case.answer:
        yield one.done, fill(one.why[language], facts)


def plan_with_reasons(proof: CaseProof, language: str) -> Iterator[tuple[DoneCut, str]]:
    """The plan's cuts in order, each with what its absence would cost first."""
    for one in proof.plan.cuts:
        yield one.done, _plan_reason(proof, one, language)


def _plan_reason(proof: CaseProof, cut: ReasonedCut, language: str) -> str:
    """A cut that costs nothing when left out, or a cane that is tied, has a plain reason."""
    if cut.reasons:
        what = message_text(cut.reasons[0], language, proof.profile.units)
        return say(language, f"pages.case.plan.reason.{_left_out(cut)}", what=what)
    plain = {Pass.ROUGH: "rough-reason", Pass.TIE: "to-wire"}.get(cut.done.in_pass, "tie")
    return say(language, fitting(f"pages.case.plan.{plain}", proof.parts.vine.own_words))


def _left_out(cut: ReasonedCut) -> str:
    """What was compared: the cane one bud longer, or the wood left where it is."""
    return "longer" if isinstance(cut.done.cut, Shortening) else "stays"
