"""The plan posed to a general solver: a mixed-integer programme for scipy's HiGHS.

It is built from the rules' own charges on the vine, not from the scoring sheet's options, so
that it shares as little as possible with the plan it is held against.
"""

from __future__ import annotations

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import coo_matrix

from pencilwood.rules.shapes import BudTotal, Gap, PieceLeft, Shape, TallyTotal, WoundTotal
from pencilwood.score.judge import Target, charges_of
from pencilwood.vine import measures
from pencilwood.vine.bands import Limits
from pencilwood.vine.wood import Parts

Taken = dict[tuple[int, bool], int]
"""(state, living wood above) of one part -> the variable that says so."""


class Programme:
    """Rows and columns of the programme as they are added."""

    def __init__(self) -> None:
        self.cost: list[float] = []
        self.rows: list[tuple[dict[int, float], float, float]] = []

    def binary(self, cost: float = 0) -> int:
        """A new yes-or-no variable."""
        self.cost.append(cost)
        return len(self.cost) - 1

    def constrain(self, terms: dict[int, float], low: float, high: float) -> None:
        """`low` <= sum of terms <= `high`."""
        self.rows.append((terms, low, high))

    def solve(self) -> int:
        """The least cost; every programme here has a solution."""
        entries = [(r, c, v) for r, (terms, _, _) in enumerate(self.rows) for c, v in terms.items()]
        row, column, value = (np.array(one) for one in zip(*entries, strict=True))
        matrix = coo_matrix((value, (row, column)), shape=(len(self.rows), len(self.cost)))
        low, high = (np.array([r[i] for r in self.rows]) for i in (1, 2))
        result = milp(
            np.array(self.cost),
            constraints=LinearConstraint(matrix.tocsr(), low, high),
            integrality=np.ones(len(self.cost)),
            bounds=Bounds(0, 1),
        )
        assert result.success, result.message
        return round(float(result.fun))


def least_loss(parts: Parts, limits: Limits, target: Target) -> int:
    """Points that the best pruning loses, by mixed-integer programming."""
    return programme_for(parts, limits, target).solve()


def programme_for(parts: Parts, limits: Limits, target: Target) -> Programme:
    """The whole vine as one programme."""
    programme = Programme()
    gone, buds, wounds, taken = _add_wood(programme, parts, limits)
    spurs = _add_spurs(programme, parts, gone)
    if parts.vine.is_ring:
        _add_ring(programme, parts, limits, spurs)
    else:
        _add_line(programme, parts, limits, spurs)
    for tally in parts.vine.form.tallies:
        counted = {
            variable: 1
            for part, here in zip(parts.parts, taken, strict=True)
            for (state, _), variable in here.items()
            if state > 0 and tally.counts(part.position, part.piece, state, limits)
        }
        totals = (TallyTotal(tally.name, n, tally.wanted) for n in range(len(parts.parts) + 1))
        _add_total(programme, counted, [_price(parts, "tally", one, limits) for one in totals])
    bud_totals = (BudTotal(n, target.least, target.most) for n in range(sum(buds.values()) + 1))
    wound_totals = (WoundTotal(n) for n in range(sum(wounds.values()) + 1))
    _add_total(programme, buds, [_price(parts, "buds", one, limits) for one in bud_totals])
    _add_total(programme, wounds, [_price(parts, "wounds", one, limits) for one in wound_totals])
    return programme


def _price(parts: Parts, shape: Shape, facts: object, limits: Limits) -> int | None:
    charges = tuple(charges_of(parts.vine.form, shape, facts, limits))
    return None if any(c.must for c in charges) else sum(c.points for c in charges)


def _add_wood(
    programme: Programme, parts: Parts, limits: Limits
) -> tuple[dict[int, int], dict[int, int], dict[int, int], list[Taken]]:
    """One variable for each part, state and living-above flag; exactly one of them is taken."""
    gone: dict[int, int] = {}
    buds: dict[int, int] = {}
    wounds: dict[int, int] = {}
    taken: list[Taken] = []
    for number, part in enumerate(parts.parts):
        here: dict[tuple[int, bool], int] = {}
        for state in range(part.most + 1):
            for living in (False, True) if parts.above[number] else (False,):
                price = _price(parts, "piece", PieceLeft(parts, number, state, living), limits)
                if price is not None:
                    here[state, living] = programme.binary(price)
                    if part.is_cane and state:
                        buds[here[state, living]] = state
        programme.constrain(dict.fromkeys(here.values(), 1), 1, 1)
        taken.append(here)
        gone[number] = programme.binary()
        is_gone = {v: 1.0 for (state, _), v in here.items() if state == 0}
        programme.constrain({**is_gone, gone[number]: -1}, 0, 0)
    for number, part in enumerate(parts.parts):
        below = parts.parent[number]
        if below >= 0:
            programme.constrain({gone[number]: 1, gone[below]: -1}, 0, 1)
        if part.piece.is_alive and part.piece.thickness_mm >= limits["large wound from"]:
            wounds[_cut_face(programme, gone, number, below)] = 1
        _tie_living(programme, parts, taken[number], gone, number)
    return gone, buds, wounds, taken


def _cut_face(programme: Programme, gone: dict[int, int], number: int, below: int) -> int:
    """A variable that is 1 where the part is gone and the wood below it is not."""
    if below < 0:
        return gone[number]
    face = programme.binary()
    programme.constrain({face: 1, gone[number]: -1, gone[below]: 1}, 0, 0)
    return face


def _tie_living(
    programme: Programme,
    parts: Parts,
    taken: dict[tuple[int, bool], int],
    gone: dict[int, int],
    number: int,
) -> None:
    above = parts.above[number]
    if not above:
        return
    flag = {v: 1.0 for (_, living), v in taken.items() if living}
    for other in above:  # a living cane above raises the flag
        programme.constrain({**flag, gone[other]: 1}, 1, 2)
    # no living cane above lowers it: flag <= sum of (1 - gone)
    programme.constrain({**flag, **{gone[o]: 1.0 for o in above}}, 0, len(above))


def _add_spurs(programme: Programme, parts: Parts, gone: dict[int, int]) -> list[int]:
    spurs = []
    for position in parts.positions:
        canes = [
            n
            for n in parts.of_position(position.name)
            if parts.parts[n].is_cane and parts.parts[n].piece.is_alive
        ]
        spur = programme.binary()
        for cane in canes:
            programme.constrain({spur: 1, gone[cane]: 1}, 1, 2)
        programme.constrain({spur: 1, **{gone[c]: 1.0 for c in canes}}, 0, len(canes))
        spurs.append(spur)
    return spurs


def _add_line(programme: Programme, parts: Parts, limits: Limits, spurs: list[int]) -> None:
    """A path from the line's left end to its right end that visits exactly the spurs."""
    x = [measures.line_mm(position) for position in parts.positions]
    zone = limits["head zone"]
    start, end = measures.line_ends_mm(parts.vine, zone)
    y = [start, *(measures.outside_head_mm(one, zone) for one in x), end]
    count = len(spurs)
    leaving: list[dict[int, float]] = [{} for _ in range(count + 2)]
    entering: list[dict[int, float]] = [{} for _ in range(count + 2)]
    for one in range(count + 1):
        for other in range(one + 1, count + 2):
            price = _price(parts, "blank", Gap(y[other] - y[one]), limits)
            crowded: int | None = 0
            if one > 0 and other <= count:
                crowded = _price(parts, "crowding", Gap(x[other - 1] - x[one - 1]), limits)
            if price is None or crowded is None:
                continue
            arc = programme.binary(price + crowded)
            leaving[one][arc] = 1
            entering[other][arc] = 1
    programme.constrain(leaving[0], 1, 1)
    programme.constrain(entering[count + 1], 1, 1)
    for number, spur in enumerate(spurs, start=1):
        programme.constrain({**leaving[number], spur: -1}, 0, 0)
        programme.constrain({**entering[number], spur: -1}, 0, 0)


def _add_ring(programme: Programme, parts: Parts, limits: Limits, spurs: list[int]) -> None:
    """One way around that visits exactly the spurs, or none at all; one step of it closes it."""
    x = [position.at_mm for position in parts.positions]
    around = parts.vine.line_length_mm
    leaving: list[dict[int, float]] = [{} for _ in spurs]
    entering: list[dict[int, float]] = [{} for _ in spurs]
    whole = _price(parts, "blank", Gap(around), limits)
    closing = [] if whole is None else [programme.binary(whole)]
    for one in range(len(spurs)):
        for other in range(len(spurs)):
            gap = Gap((x[other] - x[one]) % around or around)
            price = _price(parts, "blank", gap, limits)
            crowded = 0 if one == other else _price(parts, "crowding", gap, limits)
            if price is None or crowded is None:
                continue
            step = programme.binary(price + crowded)
            leaving[one][step] = 1
            entering[other][step] = 1
            if other <= one:
                closing.append(step)
    programme.constrain(dict.fromkeys(closing, 1), 1, 1)
    for number, spur in enumerate(spurs):
        programme.constrain({**leaving[number], spur: -1}, 0, 0)
        programme.constrain({**entering[number], spur: -1}, 0, 0)


def _add_total(programme: Programme, amounts: dict[int, int], prices: list[int | None]) -> None:
    """Exactly one total is taken, and it is the sum of the amounts."""
    totals = {programme.binary(p): n for n, p in enumerate(prices) if p is not None}
    programme.constrain(dict.fromkeys(totals, 1), 1, 1)
    programme.constrain(
        {**{v: float(n) for v, n in totals.items()}, **{v: -float(n) for v, n in amounts.items()}},
        0,
        0,
    )
