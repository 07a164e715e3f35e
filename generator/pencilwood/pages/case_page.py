"""The page of one case: story, exercise, then everything to look at after trying."""

from __future__ import annotations

import hashlib
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from pencilwood.cases.case import Case
from pencilwood.cases.credits import credit_words
from pencilwood.pages.desk import Desk
from pencilwood.pages.exercise import exercise_parts
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.kept_page import kept_page
from pencilwood.pages.page import Page
from pencilwood.pages.wood_words import cut_words, label_named, wood_table
from pencilwood.proof import CaseProof
from pencilwood.proof.reached import answer_words
from pencilwood.proof.reasons import answer_with_reasons, plan_with_reasons
from pencilwood.rules import RULE_BY_NAME
from pencilwood.score.judge import Charge
from pencilwood.score.told import message_text
from pencilwood.units import format_percent
from pencilwood.vine.passes import PASSES, DoneCut
from pencilwood.vine.wood import Tie
from pencilwood.words import say
from pencilwood.words.filling import fill


@dataclass(frozen=True)
class ShownCut:
    """A cut as a page lists it under its reason."""

    cut: str
    tool: str


@dataclass(frozen=True)
class ShownPass:
    """One pass and its cuts; those that share a reason stand where the first of them is made."""

    title: str
    cuts_by_reason: Mapping[str, Sequence[ShownCut]]


@dataclass(frozen=True)
class ShownCharge:
    """Something a pruning loses."""

    where: str
    sentence: str
    points: int
    rule: str


def case_page(handbook: Handbook, proof: CaseProof, language: str, *, whole: bool = True) -> Page:
    """The page of one case in one language; see `kept_page` for one that is not whole."""
    case = proof.case
    photo, following = handbook.photos.get(case.slug), handbook.following(case)
    facts = [
        proof.name,
        language,
        [handbook.note_by_name[name] for name, _ in case.safety],
        [following.slug, following.title] if following else None,
        hashlib.sha256(photo.data).hexdigest() if photo else None,
        sorted(handbook.holds) if handbook.holds is not None else None,
    ]
    return kept_page("case-page", facts, lambda: _case_page(handbook, proof, language), whole=whole)


def _case_page(handbook: Handbook, proof: CaseProof, language: str) -> Page:
    case = proof.case
    desk = Desk(handbook, f"cases/{case.slug}", language)
    facts = proof.facts[language]
    story = fill(desk.own(case.story), facts)
    return desk.write(
        "case.html",
        desk.own(case.title),
        description=story,
        proof=proof,
        case=case,
        story=story,
        photo=handbook.photos.get(case.slug),
        photo_file=photo_file(case.slug),
        photo_alt=fill(desk.own(case.photo.alt), facts) if case.photo else "",
        credits=credit_words(case, language),
        exercise=exercise_parts(desk, proof),
        wood=wood_table(desk, case.vine),
        answer=tuple(_passes(desk, proof, answer_with_reasons(proof, language))),
        plan=tuple(_passes(desk, proof, plan_with_reasons(proof, language))),
        not_helped=tuple(_charges(desk, proof, proof.plan.charges)),
        excuses=tuple(_excuses(desk, case, facts)),
        answer_words=answer_words(proof, language),
        far=fill(desk.own(case.far_from_plan), facts) if case.far_from_plan else "",
        lessons=tuple(_lessons(desk, proof)),
        habits=tuple(_habits(desk, proof)),
        luck=_luck(desk, proof),
        rules=RULE_BY_NAME,
        notes=tuple(handbook.note_by_name[name] for name, _ in case.safety),
        following=handbook.following(case),
    )


def photo_file(slug: str) -> str:
    """Where the photograph of a case stands among our own files."""
    return f"photos/{slug}.jpg"


def _passes(
    desk: Desk, proof: CaseProof, cuts: Iterator[tuple[DoneCut, str]]
) -> Iterator[ShownPass]:
    listed = list(cuts)
    for in_pass in PASSES:
        shown: dict[str, list[ShownCut]] = {}
        for done, why in listed:
            if done.in_pass is in_pass:
                cut = ShownCut(cut_words(desk, proof.parts, done), _tool(desk, done))
                shown.setdefault(why, []).append(cut)
        if shown:
            yield ShownPass(desk.say_of(proof.parts.vine.own_words, f"pass.{in_pass}"), shown)


def _tool(desk: Desk, done: DoneCut) -> str:
    """The tool of a cut; none for a cane that is tied."""
    return "" if isinstance(done.cut, Tie) else desk.say(f"tool.{done.tool}")


def _charges(desk: Desk, proof: CaseProof, charges: tuple[Charge, ...]) -> Iterator[ShownCharge]:
    for charge in charges:
        if charge.points:
            names = [label_named(desk, proof.parts, name) for name in charge.where]
            sentence = message_text(charge, desk.language, desk.profile.units)
            yield ShownCharge(" – ".join(names), sentence, charge.points, charge.rule)


def _excuses(desk: Desk, case: Case, facts: Mapping[str, str]) -> Iterator[tuple[str, str, str]]:
    for one in case.excuses:
        yield one.rule, one.at or "", fill(desk.own(one.why), facts)


def _lessons(desk: Desk, proof: CaseProof) -> Iterator[str]:
    for lesson in proof.lessons:
        rule = RULE_BY_NAME[lesson.rule].title[desk.language]
        if lesson.score is None:
            yield desk.say("case.proof.lesson.cutting", rule=rule)
        else:
            yield desk.say("case.proof.lesson.vine", rule=rule, score=lesson.score)


def _habits(desk: Desk, proof: CaseProof) -> Iterator[str]:
    for name, reached in proof.habit_scores.items():
        habit = say(desk.language, f"proof.habit.{name}")
        yield desk.say("case.proof.habit.row", habit=habit, score=reached)


def _luck(desk: Desk, proof: CaseProof) -> str:
    low, high = proof.luck.interval
    return desk.say(
        "case.proof.luck",
        tries=proof.luck.tries,
        passes=proof.luck.passes,
        low=percent(desk, low),
        high=percent(desk, high),
    )


def percent(desk: Desk, share: float) -> str:
    """A share as a percentage with two decimals at most."""
    return format_percent(Fraction(share) * 100, 2, desk.language)
