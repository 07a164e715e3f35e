"""What a pruning loses, rule by rule, read straight from the vine that is left."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cache
from itertools import chain

from pencilwood.rules import rules_of
from pencilwood.rules.rulebook import RULEBOOK
from pencilwood.rules.shapes import (
    Broken,
    BudTotal,
    CaneTied,
    CutInPass,
    Gap,
    PieceLeft,
    Rule,
    Shape,
    StubLeft,
    TallyTotal,
    ToolUse,
    WoundTotal,
)
from pencilwood.units import DENSITY_MM
from pencilwood.vine import measures
from pencilwood.vine.bands import Limits
from pencilwood.vine.model import Form, Pass, Side, Vine
from pencilwood.vine.passes import PASSES, DoneCut, after_cuts
from pencilwood.vine.tying import canes_to_tie, sides_tied
from pencilwood.vine.wood import Parts, Shortening, Tie, WoodLeft, uncut


@cache
def _rules_of_shape(form: Form, shape: Shape) -> tuple[Rule, ...]:
    return tuple(rule for rule in rules_of(form) if rule.shape == shape)


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
    """A case's own target, or buds per metre times the length of the arms.

    A vine without arms goes by its form's figures for a whole vine.
    """
    if own is not None:
        return Target(*own)
    if vine.is_ring:
        return Target(limits["buds on a vine at least"], limits["buds on a vine at most"])
    length_mm = vine.line_length_mm
    least = -(-limits["buds per metre at least"] * length_mm // DENSITY_MM)
    return Target(least, limits["buds per metre at most"] * length_mm // DENSITY_MM)


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


def charges_of(
    form: Form, shape: Shape, facts: object, limits: Limits, *where: str
) -> Iterator[Charge]:
    """Charges of every rule of one shape, of those that a form goes by, for one set of facts."""
    for rule in _rules_of_shape(form, shape):
        for broken in rule.check(facts, limits):
            yield charge(rule, broken, where)


Judged = dict[tuple[int, int, bool], tuple[Charge, ...]]
"""What was found of a piece: by its number, the buds left, and whether wood lives above it."""


def judge(
    left: WoodLeft, limits: Limits, target: Target, judged: Judged | None = None
) -> tuple[Charge, ...]:
    """Every vine rule that the wood left breaks, along the line and then for the whole vine.

    Who judges many prunings of one vine hands in a `judged` that is kept from one to the next.
    """
    form = left.parts.vine.form
    buds = BudTotal(measures.buds_kept(left), target.least, target.most)
    wounds = WoundTotal(measures.large_wounds(left, limits["large wound from"]))
    tallies = (
        TallyTotal(one.name, measures.tally(left, one, limits), one.wanted) for one in form.tallies
    )
    return (
        *_piece_charges(left, limits, {} if judged is None else judged),
        *_gap_charges(left, limits),
        *charges_of(form, "buds", buds, limits),
        *charges_of(form, "wounds", wounds, limits),
        *chain.from_iterable(charges_of(form, "tally", one, limits) for one in tallies),
    )


def _piece_charges(left: WoodLeft, limits: Limits, judged: Judged) -> Iterator[Charge]:
    form = left.parts.vine.form
    for number, part in enumerate(left.parts.parts):
        key = number, left.states[number], left.living_above(number)
        if key not in judged:
            facts = PieceLeft(left.parts, *key)
            judged[key] = tuple(charges_of(form, "piece", facts, limits, part.name))
        yield from judged[key]


def _gap_charges(left: WoodLeft, limits: Limits) -> Iterator[Charge]:
    form = left.parts.vine.form
    for one, other, gap_mm in measures.neighbours(left):
        yield from charges_of(form, "crowding", Gap(gap_mm), limits, one.name, other.name)
    for between, gap_mm in measures.stretches(left, limits["head zone"]):
        names = (position.name for position in between)
        yield from charges_of(form, "blank", Gap(gap_mm), limits, *names)


def judge_cuts(parts: Parts, done: Sequence[DoneCut], limits: Limits) -> tuple[Charge, ...]:
    """Every cutting rule that the cuts break, in the order of the cuts, then the tying."""
    by_cut = chain.from_iterable(charges_by_cut(parts, done, limits))
    return (*by_cut, *judge_tying(parts, done, limits))


def judge_tying(parts: Parts, done: Sequence[DoneCut], limits: Limits) -> tuple[Charge, ...]:
    """What is lost by how the canes were tied, cane by cane along the line."""
    form = parts.vine.form
    if not form.tied:
        return ()
    tied = sides_tied(done)
    used: list[Side] = []
    charges: list[Charge] = []
    for number in canes_to_tie(after_cuts(uncut(parts), done), limits):
        name = parts.parts[number].name
        side = tied.get(name)
        facts = CaneTied(side, side in form.sides, used.count(side) if side else 0)
        charges.extend(charges_of(form, "tie", facts, limits, name))
        used.extend([side] if side else [])
    return tuple(charges)


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
    if isinstance(done.cut, Tie):
        return
    name = done.cut.part
    part = parts.parts[parts.index[name]]
    buds = done.cut.buds if isinstance(done.cut, Shortening) else None
    backwards = PASSES.index(done.in_pass) < latest
    form = parts.vine.form
    order = CutInPass(done.in_pass, buds, backwards, Pass.ROUGH in form.passes)
    yield from charges_of(form, "order", order, limits, name)
    yield from charges_of(form, "tool", ToolUse(part.piece.thickness_mm, done.tool), limits, name)
    if buds is not None:
        yield from charges_of(form, "stub", StubLeft(done.stub), limits, name)


def new_charges(charges: Iterable[Charge], known: Iterable[Charge]) -> list[Charge]:
    """The charges that are not among the known ones, the gravest first, by rule and place."""
    before = Counter(map(_same, known))
    new: list[Charge] = []
    for one in charges:
        if before[_same(one)]:
            before[_same(one)] -= 1
        else:
            new.append(one)
    return sorted(new, key=lambda one: (not one.must, -one.points, one.rule, one.where))


def _same(one: Charge) -> tuple[str, str, tuple[str, ...], int]:
    return one.rule, one.message, one.where, one.points


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
