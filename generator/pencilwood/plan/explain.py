"""The plan cut by cut, in the order of the passes, each with its reason."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from pencilwood.rules.wrong_tool import tool_for
from pencilwood.score.judge import Charge, Judged, judge, lost, new_charges
from pencilwood.score.sheet import Sheet
from pencilwood.vine.bands import Limits
from pencilwood.vine.passes import DoneCut, Pass, Stub, Tool
from pencilwood.vine.tying import canes_to_tie
from pencilwood.vine.wood import Cut, Part, Shortening, ThinningOut, Tie, WoodLeft


@dataclass(frozen=True)
class ReasonedCut:
    """A cut of the plan, and what would be lost if it were not made (largest loss first)."""

    done: DoneCut
    reasons: tuple[Charge, ...]


@dataclass(frozen=True)
class Plan:
    """The best pruning of a vine."""

    left: WoodLeft
    charges: tuple[Charge, ...]
    """What even the best pruning loses: what could not be helped."""
    cuts: tuple[ReasonedCut, ...]

    @property
    def lost(self) -> int:
        """Points that even the best pruning loses."""
        return lost(self.charges)


def explain(sheet: Sheet, left: WoodLeft, judged: Judged) -> Plan:
    """Put the wood left by the solver into cuts of the three passes, with reasons.

    `judged` is what was found of the vine's pieces so far.
    """
    charges = judge(left, sheet.limits, sheet.target, judged)
    cuts = [
        ReasonedCut(done, _reasons(sheet, left, charges, done, judged))
        for done in _cuts_for(sheet.limits, left)
    ]
    return Plan(left, charges, tuple(cuts))


def explained(
    limits: Limits, left: WoodLeft, charges: Iterable[Charge], reasons: Iterable[Iterable[Charge]]
) -> Plan:
    """The same plan of what was found before: what it loses, and the reasons of each cut.

    Raises ValueError where there are not as many reasons as cuts.
    """
    cuts = zip(_cuts_for(limits, left), reasons, strict=True)
    return Plan(left, tuple(charges), tuple(ReasonedCut(done, tuple(why)) for done, why in cuts))


def _cuts_for(limits: Limits, left: WoodLeft) -> tuple[DoneCut, ...]:
    """The cuts that turn the uncut vine into `left`, pass by pass, along the line."""
    parts, form = left.parts.parts, left.parts.vine.form
    has_rough = Pass.ROUGH in form.passes
    rough_buds = limits["buds after the rough pass at most"] if has_rough else 0
    # A cane that stays longer than the rough pass would leave it waits for the fine pass.
    rough = [
        (Shortening(part.name, rough_buds), Pass.ROUGH)
        for part, state in zip(parts, left.states, strict=True)
        if has_rough and part.is_cane and part.most > rough_buds >= state
    ]
    thinning = [
        (ThinningOut(part.name), Pass.THINNING_OUT)
        for number, part in enumerate(parts)
        if left.is_cut_face(number)
    ]
    fine = [
        (Shortening(part.name, state), Pass.FINE)
        for part, state in zip(parts, left.states, strict=True)
        if part.is_cane and 0 < state < part.most and state != rough_buds
    ]
    planned: list[tuple[Cut, Pass]] = [*rough, *thinning, *fine]
    cuts = [DoneCut(cut, in_pass, _tool(limits, left, cut)) for cut, in_pass in planned]
    return (*cuts, *_ties(limits, left))


def _ties(limits: Limits, left: WoodLeft) -> list[DoneCut]:
    """Each cane to the side of the wire that it stands nearest to, so that none cross."""
    parts, sides = left.parts.parts, left.parts.vine.form.sides
    canes = canes_to_tie(left, limits)
    return [
        DoneCut(Tie(parts[number].name, side), Pass.TIE, Tool.SHEARS, Stub.RIGHT)
        for number, side in zip(canes, sides, strict=False)
    ]


def _tool(limits: Limits, left: WoodLeft, cut: Cut) -> Tool:
    part = left.parts.parts[left.parts.index[cut.part]]
    return tool_for(part.piece.thickness_mm, limits)


def _reasons(
    sheet: Sheet, left: WoodLeft, charges: Iterable[Charge], done: DoneCut, judged: Judged
) -> tuple[Charge, ...]:
    """Charges that appear when this one cut is not made; last what the plan loses less of too."""
    if done.in_pass in (Pass.ROUGH, Pass.TIE):
        return ()
    other = judge(_without(sheet, left, done.cut), sheet.limits, sheet.target, judged)
    lost_too = {(one.rule, one.where) for one in charges}
    new = new_charges(other, charges)
    return tuple(sorted(new, key=lambda one: (one.rule, one.where) in lost_too))


def _without(sheet: Sheet, left: WoodLeft, cut: Cut) -> WoodLeft:
    """The wood left if one cut is not made; what had fallen with it stays as short spurs."""
    number = left.parts.index[cut.part]
    states = list(left.states)
    if isinstance(cut, Shortening):
        states[number] += 1
    else:
        for back in (number, *left.parts.carries[number]):
            states[back] = _short(left.parts.parts[back], sheet)
    return replace(left, states=tuple(states))


def _short(part: Part, sheet: Sheet) -> int:
    return min(part.most, sheet.limits["buds on a spur at most"])
