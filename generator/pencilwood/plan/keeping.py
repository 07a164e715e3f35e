"""The best pruning that keeps a given piece, and the pieces that no passing pruning keeps."""

from __future__ import annotations

from copy import deepcopy
from dataclasses import dataclass, replace

from pencilwood.plan.solver import solve
from pencilwood.score.judge import Charge, judge, lost, score
from pencilwood.score.sheet import Sheet
from pencilwood.vine.wood import WoodLeft

_DEAR = Charge("", "", 10_000, must=False)
"""Paid for taking off the piece: more than all other faults of a vine together."""


def best_keeping(sheet: Sheet, number: int) -> WoodLeft | None:
    """The cheapest pruning that leaves a piece and breaks no must-rule, None if there is none."""
    ledger = deepcopy(sheet.ledger)
    dear = ledger.enter([_DEAR])
    pieces = list(sheet.pieces)
    pieces[number] = ((dear, dear), *pieces[number][1:])
    left = solve(replace(sheet, ledger=ledger, pieces=tuple(pieces)))
    return left if left.states[number] else None


@dataclass(frozen=True)
class MustGo:
    """A piece that comes off in every pruning that passes."""

    part: str
    by_must: bool
    """Whether keeping it breaks a must-rule, and not only costs too many points."""


def must_go(sheet: Sheet, pass_mark: int) -> tuple[MustGo, ...]:
    """The pieces that come off in every pruning that passes, but for those that fall with them.

    A piece is one of them when even the best pruning that keeps it stays below the pass mark.
    """
    parts = sheet.parts
    plan_lost = lost(judge(solve(sheet), sheet.limits, sheet.target))
    gone: dict[int, bool] = {}
    for number in range(len(parts.parts)):
        if any(number in parts.carries[below] for below in gone):
            continue
        left = best_keeping(sheet, number)
        if left is None or _score(sheet, left, plan_lost, pass_mark) < pass_mark:
            gone[number] = left is None
    return tuple(MustGo(parts.parts[number].name, by_must) for number, by_must in gone.items())


def _score(sheet: Sheet, left: WoodLeft, plan_lost: int, pass_mark: int) -> int:
    return score(judge(left, sheet.limits, sheet.target), plan_lost, pass_mark)
