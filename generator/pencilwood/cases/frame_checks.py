"""Refuses a frame that cannot stand: arms, trunk, wires, and positions out of their order."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import pairwise

from pencilwood.cases import vine_keys as keys
from pencilwood.cases.drafts import PositionDraft
from pencilwood.cases.fields import Key, Row
from pencilwood.cases.report import Fact, Report
from pencilwood.places import Place
from pencilwood.vine.forms import FORMS
from pencilwood.vine.model import Form, Side

FARTHEST_FROM_WIRE_MM = 300
"""The arms are tied to the fruiting wire; further away than this one of both is mistyped."""

_ARM_KEYS: Mapping[Side, Key[Row]] = {Side.LEFT: keys.LEFT, Side.RIGHT: keys.RIGHT}


def arm_rows(vine: Row) -> dict[Side, Row]:
    """The arms that could be read, from left to right."""
    arms = vine.get(keys.ARMS)
    rows = {} if arms is None else {side: arms.get(key) for side, key in _ARM_KEYS.items()}
    return {side: row for side, row in rows.items() if row is not None}


def find_form(vine: Row, report: Report) -> Form | None:
    """The form that goes by this name and has these arms; else a finding."""
    name, arms = vine.get(keys.FORM), vine.get(keys.ARMS)
    if name is None or arms is None:
        return None
    sides = tuple(side for side, key in _ARM_KEYS.items() if arms.has(key))
    for form in FORMS:
        if form.name == name and form.sides == sides:
            return form
    needed = max(len(form.sides) for form in FORMS if form.name == name)
    place = vine.place_of(keys.ARMS)
    report.add(place, "arms-and-form", form=name, needed=needed, count=len(sides))
    return None


def check_frame(vine: Row, report: Report) -> None:
    """Note what cannot be in the trunk, the arms' thickness and the heights."""
    trunk_mm = vine.get(keys.TRUNK_THICKNESS)
    for row in arm_rows(vine).values():
        arm_mm = row.get(keys.ARM_THICKNESS)
        if arm_mm is not None and trunk_mm is not None and arm_mm > trunk_mm:
            facts: dict[str, Fact] = {
                "arm": report.length(arm_mm),
                "trunk": report.length(trunk_mm),
            }
            report.add(row.place_of(keys.ARM_THICKNESS), "arm-thicker-than-trunk", **facts)
    _check_heights(vine, report)


def _check_heights(vine: Row, report: Report) -> None:
    cordon_mm, trimmed_mm = vine.get(keys.CORDON_HEIGHT), vine.get(keys.TRIMMED_AT)
    if cordon_mm is not None and trimmed_mm is not None and trimmed_mm <= cordon_mm:
        report.add(
            vine.place_of(keys.TRIMMED_AT),
            "trimmed-below-arms",
            trimmed=report.length(trimmed_mm),
            cordon=report.length(cordon_mm),
        )
    wires = vine.get(keys.WIRES)
    if wires is not None:
        _check_fruiting_wire(wires, cordon_mm, report)
        _check_rising(wires, report)


def _check_fruiting_wire(wires: Row, cordon_mm: int | None, report: Report) -> None:
    fruiting_mm = wires.get(keys.FRUITING)
    if cordon_mm is None or fruiting_mm is None:
        return
    if abs(cordon_mm - fruiting_mm) > FARTHEST_FROM_WIRE_MM:
        report.add(
            wires.place_of(keys.FRUITING),
            "arms-off-the-wire",
            cordon=report.length(cordon_mm),
            wire=report.length(fruiting_mm),
            most=report.length(FARTHEST_FROM_WIRE_MM),
        )


def _check_rising(wires: Row, report: Report) -> None:
    for (lower_mm, _), (upper_mm, place) in pairwise(_wires(wires)):
        if upper_mm <= lower_mm:
            lower, upper = report.length(lower_mm), report.length(upper_mm)
            report.add(place, "wires-do-not-rise", lower=lower, upper=upper)


def _wires(wires: Row) -> list[tuple[int, Place]]:
    """The wires that could be read, in the order in which they should rise."""
    heights = [(wires.get(keys.FRUITING), wires.place_of(keys.FRUITING))]
    heights += [(one.value, one.place) for one in wires.get(keys.CATCH) or ()]
    heights.append((wires.get(keys.TOP), wires.place_of(keys.TOP)))
    return [(height_mm, place) for height_mm, place in heights if height_mm is not None]


def check_positions(
    positions: Sequence[PositionDraft], arms: Mapping[Side, Row], report: Report
) -> None:
    """Note positions off the arm, twice the same, or numbered against their distance."""
    seen: dict[str, PositionDraft] = {}
    for position in positions:
        if position.name in seen:
            line = seen[position.name].place.line
            report.add(position.place, "same-position", position=position.name, line=line)
            continue
        seen[position.name] = position
        _check_on_arm(position, arms, report)
    for side in Side:
        _check_order([one for one in seen.values() if one.side is side], report)


def _check_on_arm(position: PositionDraft, arms: Mapping[Side, Row], report: Report) -> None:
    arm = arms.get(position.side)
    if arm is None:
        if arms:
            report.add(position.place, "no-such-arm", position=position.name)
        return
    length_mm = arm.get(keys.ARM_LENGTH)
    if position.at_mm is not None and length_mm is not None and position.at_mm > length_mm:
        facts: dict[str, Fact] = {
            "at": report.length(position.at_mm),
            "length": report.length(length_mm),
        }
        report.add(position.place, "beyond-the-arm", position=position.name, **facts)


def _check_order(positions: Sequence[PositionDraft], report: Report) -> None:
    """One arm's positions: the first slip in numbering is told, the rest follow from it."""
    placed = sorted(
        ((one.at_mm, one) for one in positions if one.at_mm is not None),
        key=lambda pair: (pair[0], pair[1].number),
    )
    if len(placed) < len(positions):
        return
    for (near_mm, near), (far_mm, far) in pairwise(placed):
        if near_mm == far_mm:
            facts: dict[str, Fact] = {
                "position": far.name,
                "other": near.name,
                "at": report.length(far_mm),
            }
            report.add(far.place, "same-spot", **facts)
    for number, (_, position) in enumerate(placed, start=1):
        if position.number != number:
            wanted = f"{position.name[0]}{number}"
            report.add(position.place, "misnumbered", position=position.name, wanted=wanted)
            return
