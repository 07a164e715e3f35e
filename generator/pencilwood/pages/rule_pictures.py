"""The small picture of each rule: its bad example, with a ring around what the rule finds there."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from pencilwood.cases.case import Profile, RuleExample
from pencilwood.drawing.views.fault import Spot, draw_fault
from pencilwood.proof.example_proof import charges_of_example
from pencilwood.rules.shapes import Rule, Shape
from pencilwood.score.judge import Charge
from pencilwood.vine.passes import DoneCut
from pencilwood.vine.wood import divide

_RINGED: Mapping[Shape, str] = {
    "piece": "wood", "crowding": "wood", "tie": "wood", "blank": "between",
    "stub": "cut", "tool": "cut", "order": "cut",
}  # fmt: skip
"""What of a place has the ring. Buds and wounds, counted over the whole vine, have a bracket."""


def fault_picture(rule: Rule, example: RuleExample, profile: Profile) -> str:
    """A small drawing of the fault that the example shows."""
    charges = [one for one in charges_of_example(example, profile) if one.rule == rule.name]
    cuts = _up_to(rule, charges, example.cuts)
    return draw_fault(divide(example.vine), cuts, tuple(_spots(rule, charges, cuts)))


def _spots(rule: Rule, charges: Sequence[Charge], cuts: Sequence[DoneCut]) -> Iterator[Spot]:
    tools = {done.cut.part: done.tool for done in cuts} if rule.shape == "tool" else {}
    for one in _shown(rule, charges):
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
