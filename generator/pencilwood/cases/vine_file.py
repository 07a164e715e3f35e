"""Builds a measured vine from a `vine:` block, or notes why there can be no such vine."""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from itertools import permutations

from pencilwood.cases import vine_keys as keys
from pencilwood.cases.drafts import PieceDraft, PositionDraft, draft_positions
from pencilwood.cases.fields import Row
from pencilwood.cases.forms import READING_OF, READINGS
from pencilwood.cases.report import Report, quoted
from pencilwood.cases.wood_checks import check_wood
from pencilwood.places import Place
from pencilwood.vine.model import (
    Condition,
    Lean,
    Piece,
    Position,
    Side,
)
from pencilwood.vine.wood import Parts, divide


@dataclass(frozen=True)
class VineRead:
    """What came of a `vine:` block."""

    parts: Parts | None
    """The vine, divided into parts; None when it cannot be."""
    names: tuple[str, ...]
    """Names of wood that a cut may speak of, as far as they are known."""
    places: Mapping[str, Place]
    """Where each position and each piece stands."""
    all_named: bool
    """Whether each piece of wood has a name of its own, so that any other name is wrong."""

    def check_name(
        self, name: str, place: Place, report: Report, more: Collection[str] = ()
    ) -> bool:
        """Whether there is such wood, or it is one of `more`; if not, a finding is noted."""
        if name in self.names or name in more:
            return True
        if self.all_named:
            hint = report.hint(name, self._alike(name, more))
            report.add(place, "no-such-wood", found=quoted(name), hint=hint)
        return False

    def _alike(self, name: str, more: Collection[str]) -> list[str]:
        """Names to choose from: those at the same position, else the positions."""
        position = _position_of(name)
        here = [one for one in self.names if position and _position_of(one) == position]
        others = dict.fromkeys((*self.places, *more))
        return here or [one for one in others if _position_of(one) in ("", one)]


NO_VINE = VineRead(None, (), {}, all_named=False)


def _position_of(name: str) -> str:
    match = re.match("[LRH][0-9]+", name)
    return match[0] if match else ""


def read_vine(row: Row, report: Report) -> VineRead:
    """The vine of a block that has been read, with a finding for each impossible thing."""
    errors = report.errors
    positions = draft_positions(row)
    reading = READING_OF.get(row.get(keys.FORM) or "", READINGS[0])
    form = reading.form(row, report)
    reading.check(row, positions, report)
    for position in positions:
        check_wood(position, reading.thickness_mm(row, position.side), report)
    places = {one.name: one.place for one in positions}
    places.update({piece.name: piece.place for one in positions for piece in one.pieces})
    if form is None or not row.sound or report.errors > errors:
        return VineRead(None, _likely_names(positions), places, _all_named(row, positions))
    parts = divide(reading.vine(row, form, _in_order(positions)))
    if len(parts.parts) > keys.MOST_PARTS:
        place = row.place_of(keys.POSITIONS)
        report.add(place, "too-much-wood", most=keys.MOST_PARTS, count=len(parts.parts))
    return VineRead(parts, tuple(part.name for part in parts.parts), places, all_named=True)


def _all_named(row: Row, positions: Sequence[PositionDraft]) -> bool:
    """Whether all wood of the file has a name, and no two pieces the same one."""
    pieces = [piece.name for position in positions for piece in position.pieces]
    given = row.get(keys.POSITIONS)
    if given is None or len(positions) < len(given) or len(set(pieces)) < len(pieces):
        return False
    if any(not position.whole for position in positions) or not positions:
        return False
    # Where a number is left out, the later names are most likely right and the numbers wrong.
    sides = [[one.number for one in positions if one.side is side] for side in Side]
    return all(sorted(numbers) == list(range(1, len(numbers) + 1)) for numbers in sides)


def _likely_names(positions: Sequence[PositionDraft]) -> tuple[str, ...]:
    """Names for a vine that is not whole, so that cuts can be checked for misspelling."""
    names = [piece.name for position in positions for piece in position.pieces]
    for position in positions:
        letters = [piece.letter for piece in position.pieces]
        for below, above in permutations(dict.fromkeys(letters), 2):
            names.append(f"{position.name}{below} above {above}")
    return tuple(names)


def _in_order(positions: Sequence[PositionDraft]) -> tuple[Position, ...]:
    """The positions, side by side and by their numbers; the block is sound."""
    in_order = sorted(positions, key=lambda one: (list(Side).index(one.side), one.number))
    return tuple(
        Position(one.name, one.side, one.at_mm or 0, tuple(map(_piece, one.pieces)))
        for one in in_order
    )


def _piece(draft: PieceDraft) -> Piece:
    row = draft.row
    return Piece(
        letter=draft.letter,
        age_years=draft.age_years or 0,
        length_mm=draft.length_mm or 0,
        thickness_mm=draft.thickness_mm or 0,
        grows_from=draft.grows_from,
        at_mm=row.get(keys.UP) or 0,
        condition=row.get(keys.CONDITION) or Condition.SOUND,
        lean=row.get(keys.LEAN) or Lean.UP,
        buds=row.get(keys.BUDS) or 0,
        internode_mm=row.get(keys.INTERNODE) or 0,
    )
