"""What a pruning loses, rule by rule, read straight from the vine that is left."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import chain, pairwise

from pencilwood.rules import RULES
from pencilwood.rules.rulebook import RULEBOOK
from pencilwood.rules.shapes import (
    FACTS_OF_SHAPE,
    Broken,
    BudTotal,
    CutInPass,
    Gap,
    PieceLeft,
    Rule,
    Shape,
    StubLeft,
    ToolUse,
    WoundTotal,
)
from pencilwood.vine import measures
from pencilwood.vine.bands import Limits
from pencilwood.vine.model import Vine
from pencilwood.vine.passes import PASSES, DoneCut
from pencilwood.vine.wood import Parts, Shortening, WoodLeft

_RULES_OF_SHAPE: Mapping[Shape, tuple[Rule, ...]] = {
    shape: tuple(rule for rule in RULES if rule.shape == shape) for shape in FACTS_OF_SHAPE
}


@dataclass(frozen=True)
class Target:
    """Buds that the whole vine should carry, from least to most."""

    least: int
    most: int


@dataclass(frozen=True)
class Charge:
    """Points lost to one rule at one place."""

    rule: str
    message: str
    points: int
    must: bool
    facts: Mapping[str, int] = field(default_factory=dict)
    where: tuple[str, ...] = ()
    """Names of the part, or of the positions on both sides of a gap; empty for the vine."""


def target_for(vine: Vine, limits: Limits, own: tuple[int, int] | None = None) -> Target:
    """A case's own target, or buds per metre times the length of the arms."""
    if own is not None:
        return Target(*own)
    length_mm = vine.arm_length_mm
    least = -(-limits["buds per metre at least"] * length_mm // 1000)
    return Target(least, limits["buds per metre at most"] * length_mm // 1000)


def charge(rule: Rule, broken: Broken, where: tuple[str, ...] = ()) -> Charge:
    """Price a broken rule by the rulebook."""
    price = RULEBOOK[rule.name, broken.message]
    return Charge(
        rule.name,
        broken.message,
        price.points(broken.excess),
        price.must,
        broken.facts,
        where,
    )


def charges_of(shape: Shape, facts: object, limits: Limits, *where: str) -> Iterator[Charge]:
    """Charges of every rule of one shape for one set of facts."""
    for rule in _RULES_OF_SHAPE[shape]:
        for broken in rule.check(facts, limits):
            yield charge(rule, broken, where)


def judge(left: WoodLeft, limits: Limits, target: Target) -> tuple[Charge, ...]:
    """Every vine rule that the wood left breaks, along the line and then for the whole vine."""
    return (
        *_piece_charges(left, limits),
        *_gap_charges(left, limits),
        *charges_of("buds", BudTotal(measures.buds_kept(left), target.least, target.most), limits),
        *charges_of(
            "wounds", WoundTotal(measures.large_wounds(left, limits["large wound from"])), limits
        ),
    )


def _piece_charges(left: WoodLeft, limits: Limits) -> Iterator[Charge]:
    for number, part in enumerate(left.parts.parts):
        facts = PieceLeft(left.parts, number, left.states[number], left.living_above(number))
        yield from charges_of("piece", facts, limits, part.name)


def _gap_charges(left: WoodLeft, limits: Limits) -> Iterator[Charge]:
    spurs = measures.spurs(left)
    for (one, other), gap_mm in zip(pairwise(spurs), measures.spacings_mm(left), strict=True):
        yield from charges_of("crowding", Gap(gap_mm), limits, one.name, other.name)
    names = ["", *(position.name for position in spurs), ""]
    stretches = measures.stretches_mm(left, limits["head zone"])
    for between, gap_mm in zip(pairwise(names), stretches, strict=True):
        yield from charges_of("blank", Gap(gap_mm), limits, *(name for name in between if name))


def judge_cuts(parts: Parts, done: Sequence[DoneCut], limits: Limits) -> tuple[Charge, ...]:
    """Every cutting rule that the cuts break, in the order of the cuts."""
    return tuple(chain.from_iterable(charges_by_cut(parts, done, limits)))


def charges_by_cut(
    parts: Parts, done: Sequence[DoneCut], limits: Limits
) -> tuple[tuple[Charge, ...], ...]:
    """The same, for each cut its own charges."""
    found: list[tuple[Charge, ...]] = []
    latest = 0
    for cut in done:
        found.append(tuple(_cut_charges(parts, cut, latest, limits)))
        latest = max(latest, PASSES.index(cut.in_pass))
    return tuple(found)


def _cut_charges(parts: Parts, done: DoneCut, latest: int, limits: Limits) -> Iterator[Charge]:
    name = done.cut.part
    part = parts.parts[parts.index[name]]
    buds = done.cut.buds if isinstance(done.cut, Shortening) else None
    backwards = PASSES.index(done.in_pass) < latest
    yield from charges_of("order", CutInPass(done.in_pass, buds, backwards), limits, name)
    yield from charges_of("tool", ToolUse(part.piece.thickness_mm, done.tool), limits, name)
    if buds is not None:
        yield from charges_of("stub", StubLeft(done.stub), limits, name)


def lost(charges: Iterable[Charge]) -> int:
    """Points lost in all."""
    return sum(charge.points for charge in charges)


def score(charges: Iterable[Charge], plan_lost: int, pass_mark: int) -> int:
    """100 less the points lost against the plan; a broken must keeps it under the pass mark."""
    charges = tuple(charges)
    points = max(0, 100 - max(0, lost(charges) - plan_lost))
    if any(charge.must for charge in charges):
        return min(points, pass_mark - 1)
    return points
