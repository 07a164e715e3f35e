"""The scoring sheet: every charge a pruning of one vine can meet, worked out beforehand.

The browser and the plan only look up and add. `format` 1; see `as_json` for the layout.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property, lru_cache, partial

from pencilwood.rules.shapes import BudTotal, Gap, PieceLeft, Shape, TallyTotal, WoundTotal
from pencilwood.score.cutting import cutting_tables
from pencilwood.score.judge import Charge, Target, charges_of
from pencilwood.score.ledger import Key, Ledger, key_of
from pencilwood.vine import measures
from pencilwood.vine.bands import Limits
from pencilwood.vine.model import Form, Tally
from pencilwood.vine.wood import Part, Parts

Weigh = Callable[[tuple[Charge, ...]], int | None]
"""Turns a charge list into a cost for the plan; None forbids it."""

Steps = tuple[tuple[int | None, int], ...]
"""Rows of (highest amount, charge list); the last row has no highest amount."""


@dataclass(frozen=True)
class TallyTable:
    """Something that the form counts: which pieces count at which state, and the charges."""

    name: str
    counts: tuple[tuple[int, ...], ...]
    """part -> state -> 1 where it is one of them."""
    steps: Steps


@dataclass(frozen=True)
class Sheet:
    """The scoring sheet of one vine under one profile."""

    parts: Parts
    limits: Limits
    target: Target
    ledger: Ledger
    pieces: tuple[tuple[tuple[int, int], ...], ...]
    """part -> state -> (charge list without, with living wood above)."""
    crowded: Steps
    blank: Steps
    buds: Steps
    wounds: Steps
    tallies: tuple[TallyTable, ...]

    @cached_property
    def x_mm(self) -> tuple[int, ...]:
        """Where each position stands along the line."""
        return tuple(measures.line_mm(position) for position in self.parts.positions)

    @cached_property
    def y_mm(self) -> tuple[int, ...]:
        """The same with the head zone taken out, where there are arms that meet in one."""
        if self.around_mm:
            return self.x_mm
        zone_mm = self.limits["head zone"]
        return tuple(measures.outside_head_mm(x, zone_mm) for x in self.x_mm)

    @cached_property
    def ends_mm(self) -> tuple[int, int]:
        """Both ends of the line with the head zone taken out; (0, 0) around a head."""
        if self.around_mm:
            return 0, 0
        return measures.line_ends_mm(self.parts.vine, self.limits["head zone"])

    @cached_property
    def around_mm(self) -> int:
        """The length once around the head; 0 when the positions stand along arms."""
        vine = self.parts.vine
        return vine.line_length_mm if vine.is_ring else 0

    def makes_large_wound(self, number: int) -> bool:
        """Whether cutting this part off leaves a large wound."""
        return is_large_wound(self.parts.parts[number], self.limits)


AMOUNTS = ("gap_mm", "buds", "wounds", "count")
"""Facts that are the looked-up amount itself; the reader puts them back. `buds` is the state
of the piece where a piece is charged, and the total where the total is."""


def compile_sheet(parts: Parts, limits: Limits, target: Target) -> Sheet:
    """Work out every charge that any pruning of this vine can meet."""
    ledger = Ledger()
    form = parts.vine.form
    longest_mm = parts.vine.line_length_mm
    most_buds = sum(part.most for part in parts.parts if part.is_cane)

    def table(shape: Shape, facts: Callable[[int], object], most: int) -> Steps:
        amounts = range(most + 1)
        return steps((charges_of(form, shape, facts(n), limits) for n in amounts), ledger)

    return Sheet(
        parts=parts,
        limits=limits,
        target=target,
        ledger=ledger,
        pieces=tuple(_piece(parts, number, limits, ledger) for number in range(len(parts.parts))),
        crowded=_gap_steps(form, "crowding", limits, longest_mm, ledger),
        blank=_gap_steps(form, "blank", limits, longest_mm, ledger),
        buds=table("buds", lambda n: BudTotal(n, target.least, target.most), most_buds),
        wounds=table("wounds", WoundTotal, _most_wounds(parts, limits)),
        tallies=tuple(
            TallyTable(
                one.name,
                counts := _counts(parts, one, limits),
                table(
                    "tally", partial(TallyTotal, one.name, wanted=one.wanted), sum(map(max, counts))
                ),
            )
            for one in form.tallies
        ),
    )


def _counts(parts: Parts, what: Tally, limits: Limits) -> tuple[tuple[int, ...], ...]:
    return tuple(
        tuple(
            int(state > 0 and what.counts(part.position, part.piece, state, limits))
            for state in range(part.most + 1)
        )
        for part in parts.parts
    )


def _most_wounds(parts: Parts, limits: Limits) -> int:
    return sum(is_large_wound(part, limits) for part in parts.parts)


def is_large_wound(part: Part, limits: Limits) -> bool:
    """Whether cutting this part off leaves a large wound; dead wood leaves none."""
    return part.piece.is_alive and part.piece.thickness_mm >= limits["large wound from"]


def _piece(
    parts: Parts, number: int, limits: Limits, ledger: Ledger
) -> tuple[tuple[int, int], ...]:
    def charges(state: int, living_above: bool) -> int:
        facts = PieceLeft(parts, number, state, living_above)
        found = charges_of(parts.vine.form, "piece", facts, limits)
        return ledger.enter(found, leave_out=AMOUNTS)

    both = bool(parts.above[number])
    rows = []
    for state in range(parts.parts[number].most + 1):
        without = charges(state, False)
        rows.append((without, charges(state, True) if both else without))
    return tuple(rows)


def steps(charges_by_amount: Iterable[Iterable[Charge]], ledger: Ledger) -> Steps:
    """A table over amounts 0, 1, 2...: one row for each run of equal charges."""
    rows: list[tuple[int | None, int]] = []
    for amount, charges in enumerate(charges_by_amount):
        entry = ledger.enter(charges, leave_out=AMOUNTS)
        if rows and rows[-1][1] == entry:
            rows[-1] = (amount, entry)
        else:
            rows.append((amount, entry))
    rows[-1] = (None, rows[-1][1])
    return tuple(rows)


def _gap_steps(form: Form, shape: Shape, limits: Limits, most_mm: int, ledger: Ledger) -> Steps:
    """The table of a gap, in millimetres from 0 to `most_mm`."""
    rows: list[tuple[int | None, int]] = []
    for last_mm, charges in _gap_runs(form, shape, tuple(limits.items()), -(-most_mm // 1000)):
        rows.append((last_mm, ledger.enter(charges, leave_out=AMOUNTS)))
        if last_mm >= most_mm:
            break
    rows[-1] = (None, rows[-1][1])
    return tuple(rows)


@lru_cache(maxsize=64)
def _gap_runs(
    form: Form, shape: Shape, limits: tuple[tuple[str, int], ...], metres: int
) -> tuple[tuple[int, tuple[Charge, ...]], ...]:
    """Gaps that are charged alike, by the last of them; the same for all vines of a form."""
    runs: list[tuple[int, tuple[Charge, ...]]] = []
    known: Key | None = None
    bands = dict(limits)
    for mm in range(metres * 1000 + 1):
        charges = tuple(charges_of(form, shape, Gap(mm), bands))
        key = key_of(charges, AMOUNTS)
        if key == known:
            runs[-1] = (mm, runs[-1][1])
        else:
            runs.append((mm, charges))
        known = key
    return tuple(runs)


def as_json(sheet: Sheet, case: str, plan_lost: int, pass_mark: int) -> Mapping[str, object]:
    """The sheet as the browser reads it."""
    body = _body(sheet, case, plan_lost, pass_mark)
    return {**body, "version": _version(dump(body))}


def as_text(sheet: Sheet, case: str, plan_lost: int, pass_mark: int) -> str:
    """The same as JSON text, which is written only once."""
    text = dump(_body(sheet, case, plan_lost, pass_mark))
    return f'{text[:-1]},"version":"{_version(text)}"}}'


def _version(text: str) -> str:
    return hashlib.sha256(text.encode()).hexdigest()[:12]


def _body(sheet: Sheet, case: str, plan_lost: int, pass_mark: int) -> dict[str, object]:
    cutting = cutting_tables(sheet.parts, sheet.limits, sheet.ledger)
    body: dict[str, object] = {
        "format": 1,
        "case": case,
        "passMark": pass_mark,
        "planLost": plan_lost,
        "armLength": sheet.parts.vine.line_length_mm,
        "messages": sheet.ledger.messages(),
        "charges": sheet.ledger.lists(),
        "pieces": _pieces_json(sheet),
        "positions": [
            {"name": position.name, "x": x, "y": y}
            for position, x, y in zip(sheet.parts.positions, sheet.x_mm, sheet.y_mm, strict=True)
        ],
        "ends": list(sheet.ends_mm),
        "crowded": sheet.crowded,
        "blank": sheet.blank,
        "buds": sheet.buds,
        "wounds": sheet.wounds,
        "cutting": cutting,
    }
    if sheet.around_mm:
        body["around"] = sheet.around_mm
    if sheet.tallies:
        body["tallies"] = [
            {"name": one.name, "counts": one.counts, "steps": one.steps} for one in sheet.tallies
        ]
    return body


def rules_charged(sheet: Sheet) -> list[str]:
    """Every rule that can cost points on this vine, for its wood or for a cut, by name."""
    # The ledger holds what is charged for cuts only once their tables are made.
    cutting_tables(sheet.parts, sheet.limits, sheet.ledger)
    return sorted({str(message["rule"]) for message in sheet.ledger.messages()})


def _pieces_json(sheet: Sheet) -> list[dict[str, object]]:
    parts = sheet.parts
    at = {position.name: number for number, position in enumerate(parts.positions)}
    return [
        {
            "name": part.name,
            "position": at[part.position.name],
            "kind": "cane" if part.is_cane else "old",
            "states": part.most + 1,
            "grows": parts.parent[number],
            "carries": parts.carries[number],
            "above": parts.above[number],
            "alive": int(part.piece.is_alive),
            "wound": int(sheet.makes_large_wound(number)),
            "thickness": part.piece.thickness_mm,
            "charges": sheet.pieces[number],
        }
        for number, part in enumerate(parts.parts)
    ]


def dump(body: object) -> str:
    """JSON with no spaces, keys in the order given: the same bytes every time."""
    return json.dumps(body, ensure_ascii=False, separators=(",", ":"))
