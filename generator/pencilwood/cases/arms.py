"""Arms in a file: which form has them, what grows on them, and how they are written."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from itertools import pairwise

from pencilwood.cases import vine_keys as keys
from pencilwood.cases.drafts import PositionDraft
from pencilwood.cases.field_writer import exact
from pencilwood.cases.fields import Key, Row
from pencilwood.cases.report import Fact, Report
from pencilwood.vine.model import Arm, Form, Position, Side, Trellis, Vine

_ARM_KEYS: Mapping[Side, Key[Row]] = {Side.LEFT: keys.LEFT, Side.RIGHT: keys.RIGHT}


def arm_rows(vine: Row) -> dict[Side, Row]:
    """The arms that could be read, from left to right."""
    arms = vine.get(keys.ARMS)
    rows = {} if arms is None else {side: arms.get(key) for side, key in _ARM_KEYS.items()}
    return {side: row for side, row in rows.items() if row is not None}


def find_armed_form(vine: Row, forms: Sequence[Form], report: Report) -> Form | None:
    """The one of these forms that goes by this name and has these arms; else a finding."""
    name, arms = vine.get(keys.FORM), vine.get(keys.ARMS)
    if name is None or arms is None:
        return None
    sides = tuple(side for side, key in _ARM_KEYS.items() if arms.has(key))
    for form in forms:
        if form.name == name and form.sides == sides:
            return form
    needed = max(len(form.sides) for form in forms if form.name == name)
    place = vine.place_of(keys.ARMS)
    report.add(place, "arms-and-form", form=name, needed=needed, count=len(sides))
    return None


def arm_thickness_mm(vine: Row, side: Side) -> int | None:
    """Thickness of one arm, if it could be read."""
    arm = arm_rows(vine).get(side)
    return arm.get(keys.ARM_THICKNESS) if arm else None


def armed_vine(row: Row, form: Form, positions: Sequence[Position]) -> Vine:
    """A vine with arms; every required value is there, for the block is sound."""
    wires = row.need(keys.WIRES)
    trellis = Trellis(
        wires.need(keys.FRUITING),
        tuple(one.value for one in wires.need(keys.CATCH)),
        wires.need(keys.TOP),
        row.need(keys.TRIMMED_AT),
    )
    return vine_on(trellis, row, form, positions)


def vine_on(trellis: Trellis, row: Row, form: Form, positions: Sequence[Position]) -> Vine:
    """The same on a trellis that was read already."""
    arms = tuple(
        Arm(
            side,
            arm.need(keys.ARM_LENGTH),
            arm.need(keys.ARM_THICKNESS),
            tuple(one for one in positions if one.side is side),
        )
        for side, arm in arm_rows(row).items()
    )
    return Vine(form, row.need(keys.TRUNK_THICKNESS), row.need(keys.CORDON_HEIGHT), trellis, arms)


def trellis_lines(vine: Vine) -> Iterator[str]:
    """Trunk, heights and wires as a file has them."""
    trellis = vine.trellis
    catch = ", ".join(exact(mm) for mm in trellis.catch_wires_mm)
    fruiting, top = exact(trellis.fruiting_wire_mm), exact(trellis.top_wire_mm)
    yield f"  trunk thickness: {vine.trunk_thickness_mm} mm"
    yield f"  cordon height: {exact(vine.cordon_height_mm)}"
    yield f"  wires: {{fruiting: {fruiting}, catch: [{catch}], top: {top}}}"
    yield f"  trimmed at: {exact(trellis.trimming_mm)}"


def arm_lines(vine: Vine) -> Iterator[str]:
    """The arms as a file has them."""
    yield "  arms:"
    for arm in vine.arms:
        size = f"length: {exact(arm.length_mm)}, thickness: {arm.thickness_mm} mm"
        yield f"    {arm.side}: {{{size}}}"


def check_positions(vine: Row, positions: Sequence[PositionDraft], report: Report) -> None:
    """Note positions off the arm, twice the same, or numbered against their distance."""
    arms = arm_rows(vine)
    check_each(positions, lambda position: _check_on_arm(position, arms, report), report)


def check_each(
    positions: Sequence[PositionDraft], check: Callable[[PositionDraft], None], report: Report
) -> None:
    """Check every position by itself, then their names and numbers."""
    seen: dict[str, PositionDraft] = {}
    for position in positions:
        if position.name in seen:
            line = seen[position.name].place.line
            report.add(position.place, "same-position", position=position.name, line=line)
            continue
        seen[position.name] = position
        check(position)
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
