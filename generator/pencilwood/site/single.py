"""One case by itself: its drawing, its measures, its plan."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import TypedDict

from pencilwood.cases.case import Profile
from pencilwood.drawing import Paper, WoodShown, draw_vine
from pencilwood.drawing.describe import describe_vine
from pencilwood.drawing.scene.stages import Stages
from pencilwood.findings import has_errors
from pencilwood.proof import CaseProof, prove_case
from pencilwood.score.told import message_text
from pencilwood.site.case_files import case_slugs
from pencilwood.site.folders import look_over
from pencilwood.site.handbook import read_one_case
from pencilwood.site.hints import Notes
from pencilwood.site.trouble import NoSuchCaseError, UnusableCaseError
from pencilwood.vine import measures
from pencilwood.vine.passes import PASSES
from pencilwood.vine.wood import Shortening, WoodLeft, uncut
from pencilwood.words import say

STATES = ("before", *(str(one) for one in PASSES), "plan")

Measured = dict[str, int | float]


@dataclass(frozen=True)
class OpenedCase:
    """A case and what was computed from it."""

    profile: Profile
    proof: CaseProof


class Measures(TypedDict):
    """Measures of a case before pruning, after the author's answer and after the plan."""

    case: str
    before: Measured
    answer: Measured
    plan: Measured


PlannedCut = TypedDict(
    "PlannedCut",
    {"pass": str, "part": str, "buds": int | None, "tool": str, "reasons": list[str]},
)
"""One cut of the plan; no buds where wood is taken off at its foot."""


class Planned(TypedDict):
    """The best pruning of a case and the points that even it loses."""

    case: str
    lost: int
    cuts: list[PlannedCut]


def open_case(root: Path, slug: str, language: str) -> OpenedCase:
    """Read one case of a handbook's folder; raises NoSuchCaseError or UnusableCaseError."""
    barred = look_over(root, language)
    if barred:
        raise UnusableCaseError(tuple(barred))
    known = case_slugs(root)
    if slug not in known:
        hint = Notes(language).hint(slug, known) if known else ""
        raise NoSuchCaseError(say(language, "cli.no-case", case=slug, hint=hint).strip())
    profile, case, findings = read_one_case(root, slug, language)
    if profile is None or case is None or has_errors(findings):
        raise UnusableCaseError(findings)
    return OpenedCase(profile, prove_case(case, profile, language))


def drawing_of(opened: OpenedCase, state: str, language: str) -> str:
    """The vine as an SVG file, before, after a pass of the author's answer, or as planned."""
    profile, proof = opened.profile, opened.proof
    left = proof.left_in(state)
    paper = Paper(
        "vine",
        language,
        title=proof.case.title[language],
        description=describe_vine(proof.parts, left, language, profile.units),
        units=profile.units,
        alone=True,
    )
    return draw_vine(WoodShown(proof.parts, Stages.leaving(left)), paper)


def measures_of(opened: OpenedCase) -> Measures:
    """The measures of the uncut vine, of the author's answer and of the plan."""
    profile, proof = opened.profile, opened.proof
    return {
        "case": proof.case.slug,
        "before": _measured(uncut(proof.parts), profile),
        "answer": _measured(proof.answer_left, profile),
        "plan": _measured(proof.plan.left, profile),
    }


def _measured(left: WoodLeft, profile: Profile) -> Measured:
    limits = profile.limits_of(left.parts.vine.form)
    found: Measured = {
        "buds": measures.buds_kept(left),
        "spurs": len(measures.spurs(left)),
        "longest_blank_mm": measures.blank_mm(left, limits["head zone"]),
        "climb_mm": measures.climb_mm(left),
        "large_wounds": measures.large_wounds(left, limits["large wound from"]),
    }
    if not left.parts.vine.is_ring:
        found["buds_per_metre"] = round(float(measures.buds_per_metre(left)), 1)
    spacings_mm = measures.spacings_mm(left)
    if spacings_mm:
        found["smallest_spacing_mm"] = min(spacings_mm)
    return found


def plan_of(opened: OpenedCase, language: str) -> Planned:
    """The best pruning of a case, cut by cut with reasons."""
    profile, proof = opened.profile, opened.proof
    return {
        "case": proof.case.slug,
        "lost": proof.plan.lost,
        "cuts": [
            {
                "pass": str(one.done.in_pass),
                "part": one.done.cut.part,
                "buds": one.done.cut.buds if isinstance(one.done.cut, Shortening) else None,
                "tool": str(one.done.tool),
                "reasons": [message_text(why, language, profile.units) for why in one.reasons],
            }
            for one in proof.plan.cuts
        ],
    }
