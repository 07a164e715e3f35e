"""Makes a whole case of a measured vine, or answers a case anew by the computed plan.

The plan stands for the answer until the trainer puts their own cuts and reasons in.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from pencilwood.cases.case import AnswerCut, Case, Excuse, Level, Profile, Text
from pencilwood.places import Place
from pencilwood.plan import Plan, Solver, plan_by
from pencilwood.plan.explain import ReasonedCut
from pencilwood.proof.reached import is_met
from pencilwood.proof.safety import LADDER, needed_notes
from pencilwood.proof.teaching import lesson
from pencilwood.proof.untouched import ROUGH, TIE, WHY, excuse_key
from pencilwood.rules import RULE_BY_NAME, rules_of
from pencilwood.score.judge import target_for
from pencilwood.score.sheet import compile_sheet
from pencilwood.vine import measures
from pencilwood.vine.model import Vine
from pencilwood.vine.passes import Pass
from pencilwood.vine.wood import divide
from pencilwood.words import say

_USUAL_LEVEL: Level = "middling"
_MOST_TAUGHT = 4
"""A vine that teaches everything teaches nothing; the trainer may add more."""


def draft_case(
    vine: Vine,
    profile: Profile,
    slug: str,
    title: Text,
    note_names: Sequence[str],
    *,
    level: Level = _USUAL_LEVEL,
    author: str = "",
) -> Case:
    """A case of this vine, answered by the plan; it teaches the rules found to matter on it."""
    place = Place(slug)
    solver = _solver(vine, profile, None)
    plan = plan_by(solver)
    languages = profile.languages
    met = is_met(solver.sheet.target, measures.buds_kept(plan.left))
    story = "field.draft.story" if met else "field.draft.story-beyond"
    case = Case(
        slug=slug,
        place=place,
        title=title,
        level=level,
        teaches=tuple((name, place) for name in _taught(solver, plan, profile)[:_MOST_TAUGHT]),
        story={one: say(one, story) for one in languages},
        story_places={},
        vine=vine,
        answer=tuple(AnswerCut(one.done, _why(one, languages), place) for one in plan.cuts),
        excuses=tuple(_excuses(plan, languages, place)),
        author=dict.fromkeys(languages, author) if author else {},
    )
    needed = needed_notes(case, solver.sheet.parts)
    notes = dict.fromkeys(found for need in needed for found in _notes(need, note_names))
    return replace(case, safety=tuple((name, place) for name in notes))


def replan_case(case: Case, profile: Profile) -> Case:
    """The same case with the plan for its answer, by the handbook's figures as they are now.

    Reasons that the author gave for cuts, and for rules bent, that the plan has as well are kept.
    So are the rules that the case teaches, as far as nobody passes it without them.
    """
    solver = _solver(case.vine, profile, case.target_buds)
    plan = plan_by(solver)
    languages, place = profile.languages, case.place
    own_whys = {one.done.cut: one.why for one in case.answer}
    own_excuses = {one.rule: one for one in case.excuses if _still_bent(one, plan)}
    taught = _taught(solver, plan, profile)
    still = [name for name, _ in case.teaches if name in taught]
    return replace(
        case,
        teaches=tuple((name, place) for name in still or taught[:_MOST_TAUGHT]),
        answer=tuple(
            AnswerCut(one.done, own_whys.get(one.done.cut) or _why(one, languages), place)
            for one in plan.cuts
        ),
        excuses=tuple(own_excuses.get(one.rule, one) for one in _excuses(plan, languages, place)),
        far_from_plan=None,
    )


def _solver(vine: Vine, profile: Profile, target_buds: tuple[int, int] | None) -> Solver:
    limits = profile.limits_of(vine.form)
    return Solver(compile_sheet(divide(vine), limits, target_for(vine, limits, target_buds)))


def _still_bent(excuse: Excuse, plan: Plan) -> bool:
    """Whether a reason still speaks of every place where the plan bends its rule."""
    bent = [one for one in plan.charges if one.rule == excuse.rule]
    return all(excuse.at is None or excuse.at in one.where for one in bent)


def _taught(solver: Solver, plan: Plan, profile: Profile) -> tuple[str, ...]:
    """The rules without which nobody passes, those that cost most first."""
    cuts = tuple(one.done for one in plan.cuts)
    rules = rules_of(solver.sheet.parts.vine.form)
    lessons = [lesson(solver, rule.name, cuts, plan.lost, profile.pass_mark) for rule in rules]
    taught = [one for one in lessons if one.teaches]
    taught.sort(key=lambda one: (one.score is None, one.score or 0, one.rule))
    return tuple(one.rule for one in taught)


def _why(cut: ReasonedCut, languages: Sequence[str]) -> Text:
    """The name of what the cut puts right: words of a trainer say it better."""
    if cut.reasons:
        title = RULE_BY_NAME[cut.reasons[0].rule].title
        return {one: say(one, WHY, problem=title[one]) for one in languages}
    key = ROUGH if cut.done.in_pass is Pass.ROUGH else TIE
    return {one: say(one, key) for one in languages}


def _excuses(plan: Plan, languages: Sequence[str], place: Place) -> Iterator[Excuse]:
    """What even the plan bends needs a reason as well."""
    for rule in sorted({one.rule for one in plan.charges if not one.must}):
        why = {one: say(one, excuse_key(rule)) for one in languages}
        yield Excuse(rule, None, why, place)


def _notes(need: str, known: Sequence[str]) -> Iterator[str]:
    """The handbook's note that a need is met by; of two kinds of ladder, the first."""
    fitting = [name for name in known if name == need or name.startswith(f"{need}-")]
    yield from fitting[:1] if need == LADDER else fitting or [need]
