"""The small picture of each rule: its bad example, with a ring around what the rule finds there."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from pencilwood.cases.case import Profile, RuleExample
from pencilwood.drawing.views.fault import Spot, draw_fault
from pencilwood.proof.example_proof import charges_of_example
from pencilwood.rules.shapes import Rule, Shape, TallyTotal
from pencilwood.score.judge import Charge
from pencilwood.vine.measures import tally
from pencilwood.vine.passes import DoneCut, after_cuts
from pencilwood.vine.wood import Tie, divide, uncut

_RINGED: Mapping[Shape, str] = {
    "piece": "wood", "crowding": "wood", "tie": "wood", "blank": "between",
    "stub": "cut", "tool": "cut", "order": "cut",
}  # fmt: skip
"""What of a place has the ring. Buds and wounds, counted over the whole vine, have a bracket.

Of canes and spurs that a form counts each one too many has a ring, or the place of each that is
missing.
"""


def fault_picture(rule: Rule, example: RuleExample, profile: Profile) -> str:
    """A small drawing of the fault that the example shows."""
    charges = [one for one in charges_of_example(example, profile) if one.rule == rule.name]
    cuts = _up_to(rule, charges, example.cuts)
    spots = _tallied(rule, example, profile) if rule.shape == "tally" else ()
    found = tuple(spots or _spots(rule, charges, cuts))
    return draw_fault(divide(example.vine), cuts, found)


def _tallied(rule: Rule, example: RuleExample, profile: Profile) -> Sequence[Spot]:
    """What is counted, where it is too much; where it is too little, what was cut off of it."""
    limits = profile.limits_of(example.vine.form)
    left = after_cuts(uncut(divide(example.vine)), example.cuts)
    wood = list(zip(left.parts.parts, left.states, strict=True))
    found: list[str] = []
    for what in example.vine.form.tallies:
        count = tally(left, what, limits)
        if not any(rule.check(TallyTotal(what.name, count, what.wanted), limits)):
            continue
        for part, state in wood:
            buds = (state,) if state else range(1, part.most + 1)
            could = any(what.counts(part.position, part.piece, one, limits) for one in buds)
            if could and (state > 0) is (count > what.wanted):
                found.append(part.name)
    return [Spot((name,)) for name in found]


def _spots(rule: Rule, charges: Sequence[Charge], cuts: Sequence[DoneCut]) -> Iterator[Spot]:
    tools = {done.cut.part: done.tool for done in cuts} if rule.shape == "tool" else {}
    # A tied cane runs out of the picture: a ring at its foot, beside another, would tell nothing.
    tied = {done.cut.part for done in cuts if isinstance(done.cut, Tie)}
    shown = _shown(rule, charges)
    for one in [one for one in shown if not tied.intersection(one.where)] or shown:
        match _RINGED.get(rule.shape):
            case "wood":
                yield Spot(one.where)
            case "between":
                yield Spot(one.where, "between")
            case "cut":
                near = rule.shape == "stub"
                yield Spot(one.where, "cut", near=near, tool=tools.get(one.where[0]))


def _shown(rule: Rule, charges: Sequence[Charge]) -> Sequence[Charge]:
    """One fault of each kind.

    Of the order of the cuts only the last, for it is seen as it was, and one cut with its tool.
    """
    by_message = {one.message: one for one in reversed(charges)}
    shown = list(reversed(by_message.values()))
    if rule.shape == "tool":
        return shown[:1]
    return shown[-1:] if rule.shape == "order" else shown


def _up_to(rule: Rule, charges: Sequence[Charge], cuts: Sequence[DoneCut]) -> Sequence[DoneCut]:
    """A cut made too late is seen right after it; later ones would put it right."""
    late = _shown(rule, charges)
    if rule.shape != "order" or not late:
        return cuts
    at = [number for number, done in enumerate(cuts) if done.cut.part in late[0].where]
    return cuts[: at[-2 if len(at) > 1 else -1] + 1]
