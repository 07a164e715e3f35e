"""Builds a measured vine from a `vine:` block, or notes why there can be no such vine."""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from itertools import permutations

from pencilwood.cases import vine_keys as keys
from pencilwood.cases.drafts import PieceDraft, PositionDraft, draft_positions
from pencilwood.cases.fields import Row
from pencilwood.cases.frame_checks import arm_rows, check_frame, check_positions, find_form
from pencilwood.cases.report import Report, quoted
from pencilwood.cases.wood_checks import check_wood
from pencilwood.places import Place
from pencilwood.vine.model import (
    Arm,
    Condition,
    Form,
    Lean,
    Piece,
    Position,
    Side,
    Trellis,
    Vine,
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
    match = re.match("[LR][0-9]+", name)
    return match[0] if match else ""


def read_vine(row: Row, report: Report) -> VineRead:
    """The vine of a block that has been read, with a finding for each impossible thing."""
    errors = report.errors
    positions = draft_positions(row)
    arms = arm_rows(row)
    form = find_form(row, report)
    check_frame(row, report)
    check_positions(positions, arms, report)
    for position in positions:
        arm = arms.get(position.side)
        check_wood(position, arm.get(keys.ARM_THICKNESS) if arm else None, report)
    places = {one.name: one.place for one in positions}
    places.update({piece.name: piece.place for one in positions for piece in one.pieces})
    if form is None or not row.sound or report.errors > errors:
        return VineRead(None, _likely_names(positions), places, _all_named(row, positions))
    parts = divide(_vine(row, form, positions))
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


def _vine(row: Row, form: Form, positions: Sequence[PositionDraft]) -> Vine:
    """The vine; every required value is there, for the block is sound."""
    wires = row.need(keys.WIRES)
    trellis = Trellis(
        wires.need(keys.FRUITING),
        tuple(one.value for one in wires.need(keys.CATCH)),
        wires.need(keys.TOP),
        row.need(keys.TRIMMED_AT),
    )
    arms = tuple(_arm(side, arm, positions) for side, arm in arm_rows(row).items())
    return Vine(form, row.need(keys.TRUNK_THICKNESS), row.need(keys.CORDON_HEIGHT), trellis, arms)


def _arm(side: Side, row: Row, positions: Sequence[PositionDraft]) -> Arm:
    mine = sorted((one for one in positions if one.side is side), key=lambda one: one.number)
    return Arm(
        side,
        row.need(keys.ARM_LENGTH),
        row.need(keys.ARM_THICKNESS),
        tuple(
            Position(one.name, side, one.at_mm or 0, tuple(_piece(p) for p in one.pieces))
            for one in mine
        ),
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
