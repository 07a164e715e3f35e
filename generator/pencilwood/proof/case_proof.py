"""All proofs of one case, and what they worked out on the way."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

from pencilwood.cases.case import Case, Profile
from pencilwood.findings import Finding, from_json, in_order
from pencilwood.kept import kept_json, key_of, name_of
from pencilwood.plan import Plan
from pencilwood.proof.answer import check_cutting, check_excuses, check_score
from pencilwood.proof.facts import facts_of
from pencilwood.proof.luck import HIGHEST_CHANCE, Luck
from pencilwood.proof.renewal import check_renewal
from pencilwood.proof.report import ProofReport
from pencilwood.proof.safety import check_safety
from pencilwood.proof.teaching import VISIBLE_POINTS, Lesson
from pencilwood.proof.texts import check_texts
from pencilwood.proof.untouched import check_own_words
from pencilwood.proof.winters import check_winters
from pencilwood.proof.worked import ToWorkOut, Worked, work_out
from pencilwood.score.judge import Charge, Target, judge, score, target_for
from pencilwood.score.sheet import Sheet, compile_sheet
from pencilwood.vine.bands import Limits
from pencilwood.vine.passes import Pass, after_cuts, after_pass
from pencilwood.vine.wood import Parts, WoodLeft, divide, uncut


@dataclass(frozen=True, eq=False)
class CaseProof:
    """A case whose proofs were run, and all that is computed from it.

    What was computed is held for the few cases that were looked at last. A large handbook would
    fill the memory otherwise, and where all is kept from an earlier build nobody asks for it.
    """

    case: Case
    profile: Profile
    findings: tuple[Finding, ...]

    @cached_property
    def name(self) -> str:
        """Changes with everything that can be computed of the case, and with our code."""
        return key_of("proof", [name_of(self.case), name_of(self.profile)])

    @property
    def parts(self) -> Parts:
        """The wood of its vine."""
        return self._computed.parts

    @property
    def sheet(self) -> Sheet:
        """Its scoring sheet."""
        return self._computed.sheet

    @property
    def sheet_text(self) -> str:
        """Its scoring sheet as JSON; where that is kept, the sheet need not be worked out."""
        return self._computed.worked.sheet_text

    @property
    def rules_charged(self) -> tuple[str, ...]:
        """Every rule that can cost points on its vine, for its wood or for a cut, by name."""
        return self._computed.worked.rules_charged

    @property
    def target(self) -> Target:
        """The buds that it should carry."""
        return self._computed.target

    @property
    def plan(self) -> Plan:
        """Its best pruning."""
        return self._computed.worked.plan

    @property
    def answer_left(self) -> WoodLeft:
        """What the author's answer leaves."""
        return self._computed.left

    @cached_property
    def wood_named(self) -> tuple[str, ...]:
        """The pieces that the cuts of its answer name, then those that only its plan names."""
        answer = [one.done for one in self.case.answer]
        cuts = [*answer, *(one.done for one in self.plan.cuts)]
        return tuple(dict.fromkeys(done.cut.part.partition(" ")[0] for done in cuts))

    def left_in(self, state: str) -> WoodLeft:
        """What is left "before" any cut, after a pass of the answer, in the "plan" or "answer"."""
        if state == "before":
            return uncut(self.parts)
        if state == "plan":
            return self.plan.left
        if state == "answer":
            return self.answer_left
        return after_pass(self.parts, [one.done for one in self.case.answer], Pass(state))

    @property
    def answer_charges(self) -> tuple[Charge, ...]:
        """What the author's answer loses."""
        return self._computed.charges

    @property
    def answer_score(self) -> int:
        """The score of the author's answer."""
        return score(self.answer_charges, self.plan.lost, self.profile.pass_mark)

    @property
    def lessons(self) -> tuple[Lesson, ...]:
        """What happens to somebody who does not know a rule that it teaches."""
        return self._computed.worked.lessons

    @property
    def habit_scores(self) -> Mapping[str, int]:
        """What each habit scores."""
        return self._computed.worked.habit_scores

    @property
    def luck(self) -> Luck:
        """How random prunings fared."""
        return self._computed.worked.luck

    @property
    def facts(self) -> Mapping[str, Mapping[str, str]]:
        """Language -> placeholder -> text."""
        return self._computed.facts

    @property
    def _computed(self) -> _Computed:
        return _computed(self.case, self.profile)


def prove_case(case: Case, profile: Profile, language: str = "en") -> CaseProof:
    """Run every proof of a case; findings are worded in `language`."""
    return CaseProof(case, profile, proof_findings(case, profile, language))


def proof_findings(case: Case, profile: Profile, language: str) -> tuple[Finding, ...]:
    """What the proofs of a case find, worded in `language`."""
    kept = kept_json(
        "proof",
        [name_of(case), name_of(profile), language],
        lambda: [one.as_json() for one in _found(case, profile, language)],
        lambda value: _read(value) is not None,
    )
    return _read(kept) or ()


def _found(case: Case, profile: Profile, language: str) -> list[Finding]:
    report = ProofReport(language, profile.units)
    computed = _computed(case, profile)
    worked = computed.worked
    check_cutting(case, computed.parts, profile, report)
    check_score(case, computed.charges, worked.plan.lost, profile, report)
    check_excuses(case, computed.charges, report)
    check_texts(case, computed.facts[profile.languages[0]], report)
    check_own_words(case, report)
    check_safety(case, computed.parts, report)
    check_winters(case, profile, report)
    check_renewal(case, profile, report)
    _check_lessons(case, worked.lessons, report)
    _check_habits(case, worked.habit_scores, profile, report)
    _check_luck(case, worked.luck, report)
    return in_order(report.findings)


def _read(value: object) -> tuple[Finding, ...] | None:
    """Findings as they were kept; None for anything else."""
    try:
        return tuple(from_json(one) for one in value) if isinstance(value, list) else None
    except (KeyError, TypeError):
        return None


@dataclass(frozen=True)
class _Computed:
    """All that is computed of a case, each when it is first asked for."""

    case: Case
    profile: Profile

    @cached_property
    def parts(self) -> Parts:
        return divide(self.case.vine)

    @cached_property
    def limits(self) -> Limits:
        return self.profile.limits_of(self.case.vine.form)

    @cached_property
    def target(self) -> Target:
        return target_for(self.case.vine, self.limits, self.case.target_buds)

    @cached_property
    def sheet(self) -> Sheet:
        return compile_sheet(self.parts, self.limits, self.target)

    @cached_property
    def worked(self) -> Worked:
        return work_out(
            ToWorkOut(
                self.case, self.profile, self.parts, self.limits, self.target, lambda: self.sheet
            )
        )

    @cached_property
    def left(self) -> WoodLeft:
        # The reader has found these cuts possible already.
        return after_cuts(uncut(self.parts), (one.done for one in self.case.answer))

    @cached_property
    def charges(self) -> tuple[Charge, ...]:
        return judge(self.left, self.limits, self.target)

    @cached_property
    def facts(self) -> Mapping[str, Mapping[str, str]]:
        profile = self.profile
        return {one: facts_of(self.left, self.target, profile, one) for one in profile.languages}


_HELD = 40
_held: dict[tuple[int, int], _Computed] = {}


def _computed(case: Case, profile: Profile) -> _Computed:
    """What was computed of this very case, if it was looked at lately.

    By identity: to compare two cases takes longer than to look one up, and what is held keeps its
    case alive, so no other can have its number.
    """
    number = (id(case), id(profile))
    found = _held.pop(number, None) or _Computed(case, profile)
    _held[number] = found
    if len(_held) > _HELD:
        del _held[next(iter(_held))]
    return found


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
