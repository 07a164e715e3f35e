"""The measures of a vine as a table: asked for, before, and after somebody's cuts."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from pencilwood.cases.case import Profile
from pencilwood.proof import CaseProof
from pencilwood.rules import rules_of
from pencilwood.units import format_density, format_length
from pencilwood.vine import measures
from pencilwood.vine.bands import Limits, arm_unit
from pencilwood.vine.model import Form, Tally
from pencilwood.vine.wood import WoodLeft, uncut
from pencilwood.words import fitting, say

Named = Callable[..., str]
"""Words under a key, with their figures put in."""


@dataclass(frozen=True)
class Measure:
    """One line of the table."""

    name: str
    asked: str
    of: Callable[[WoodLeft], str]


def measures_for(proof: CaseProof, profile: Profile, language: str) -> Iterator[Measure]:
    """What a learner measures on paper, with what the rules ask for."""
    limits, target, vine = proof.sheet.limits, proof.target, proof.parts.vine

    def length(mm: int) -> str:
        return format_length(mm, profile.units, language)

    def asked(which: str, **facts: str | int) -> str:
        return say(language, f"print.asked.{which}", **facts)

    vine = proof.parts.vine

    def named(key: str, **facts: str | int) -> str:
        return say(language, fitting(f"print.measure.{key}", vine.own_words), **facts)

    in_all = asked("between", least=target.least, most=target.most)
    yield Measure(named("buds"), in_all, lambda left: str(measures.buds_kept(left)))
    if proof.case.target_buds is None and not vine.is_ring:
        ends = ("buds per metre at least", "buds per metre at most")
        low, high = (format_density(limits[one], profile.units, language) for one in ends)
        yield Measure(
            named("buds-per-metre", **arm_unit(profile.units, language)),
            asked("between", least=low, most=high),
            lambda left: format_density(measures.buds_on_length(left), profile.units, language),
        )
    yield from _counted(vine.form, limits, named)
    yield from _of_spurs(vine.form, limits, named, asked, length)
    yield Measure(
        named("wounds", **{"from": length(limits["large wound from"])}),
        asked("most", most=limits["large wounds in one winter at most"]),
        lambda left: str(measures.large_wounds(left, limits["large wound from"])),
    )


def _blank_limit(form: Form) -> str:
    """The figure that the longest stretch without a spur is held to on such a vine."""
    rule = next(rule for rule in rules_of(form) if rule.shape == "blank")
    return rule.bands[0].name


def _counted(form: Form, limits: Limits, named: Named) -> Iterator[Measure]:
    """What the form wants a number of; else the spurs."""
    for one in form.tallies:
        if one.wanted:
            yield Measure(named(one.name.replace(" ", "-")), str(one.wanted), _tally(one, limits))
    if not any(one.wanted for one in form.tallies):
        yield Measure(named("spurs"), "", lambda left: str(len(measures.spurs(left))))


def _of_spurs(
    form: Form, limits: Limits, named: Named, asked: Named, length: Callable[[int], str]
) -> Iterator[Measure]:
    """How spurs stand, as far as the form's rules look at it."""
    rules = rules_of(form)
    shapes = {rule.shape for rule in rules}
    if "crowding" in shapes:
        least = asked("least", least=length(limits["spur spacing at least"]))
        yield Measure(named("spacing"), least, lambda left: _smallest(left, length))
    if "blank" in shapes:
        yield Measure(
            named("blank"),
            asked("most", most=length(limits[_blank_limit(form)])),
            lambda left: length(measures.blank_mm(left, limits["head zone"])),
        )
    if any(rule.name == "climbed-too-far" for rule in rules):
        most = asked("most", most=length(limits["climb at most"]))
        yield Measure(named("climb"), most, lambda left: length(measures.climb_mm(left)))


def _tally(tally: Tally, limits: Limits) -> Callable[[WoodLeft], str]:
    return lambda left: str(measures.tally(left, tally, limits))


def _smallest(left: WoodLeft, length: Callable[[int], str]) -> str:
    apart_mm = measures.spacings_mm(left)
    return length(min(apart_mm)) if apart_mm else "–"


def rows(proof: CaseProof, profile: Profile, language: str) -> list[list[str]]:
    """Name, what is asked for, before, after the answer, after the plan."""
    before = uncut(proof.parts)
    return [
        [one.name, one.asked, one.of(before), one.of(proof.answer_left), one.of(proof.plan.left)]
        for one in measures_for(proof, profile, language)
    ]
