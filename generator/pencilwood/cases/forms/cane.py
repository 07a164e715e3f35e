"""Reads cane-pruned vines: wires, the head, and the room on the wire to its left and right."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from pencilwood.cases import vine_keys as keys
from pencilwood.cases.arms import check_each, trellis_lines
from pencilwood.cases.drafts import PositionDraft
from pencilwood.cases.field_writer import exact
from pencilwood.cases.fields import Key, Row, Table
from pencilwood.cases.forms.reading import FormReading
from pencilwood.cases.frame_checks import FARTHEST_FROM_WIRE_MM, check_rising
from pencilwood.cases.kinds import Length
from pencilwood.cases.report import Report
from pencilwood.vine.forms.cane import CANE_PRUNED
from pencilwood.vine.model import Arm, Form, Position, Side, Trellis, Vine

_ROOM = "From the middle of the head to where the neighbour's room begins."
LEFT = Key("left", Length(100, 15_000, "60 cm"), _ROOM, False)
RIGHT = Key("right", Length(100, 15_000, "60 cm"), _ROOM, False)
ROOM = Key(
    "room",
    Table("Room on the fruiting wire, as you stand before the vine.", (LEFT, RIGHT)),
    "Room on the fruiting wire: left and right of the head, or one of them.",
)
HEAD_HEIGHT = Key("head height", Length(100, 3000, "80 cm"), "Height of the head above ground.")
_SIDES = {Side.LEFT: LEFT, Side.RIGHT: RIGHT}

TABLE = Table(
    "The vine as you measured it, before any cut.",
    (
        keys.FORM,
        keys.TRUNK_THICKNESS,
        HEAD_HEIGHT,
        keys.WIRES,
        keys.TRIMMED_AT,
        ROOM,
        keys.POSITIONS,
    ),
)


def _room(vine: Row) -> dict[Side, int | None]:
    """The room on each side that the file speaks of, from left to right."""
    room = vine.get(ROOM)
    if room is None:
        return {}
    return {side: room.get(key) for side, key in _SIDES.items() if room.has(key)}


def _form(vine: Row, report: Report) -> Form | None:
    name = vine.get(keys.FORM)
    if name is None or vine.get(ROOM) is None:
        return None
    sides = tuple(_room(vine))
    for form in CANE_PRUNED:
        if form.name == name and form.sides == sides:
            return form
    needed = max(len(form.sides) for form in CANE_PRUNED if form.name == name)
    place = vine.place_of(ROOM)
    report.add(place, "room-and-form", form=name, needed=needed, count=len(sides))
    return None


def _check(vine: Row, positions: Sequence[PositionDraft], report: Report) -> None:
    _check_heights(vine, report)
    room = _room(vine)

    def check_in_room(position: PositionDraft) -> None:
        if room and position.side not in room:
            report.add(position.place, "no-room-there", position=position.name)
        length_mm = room.get(position.side)
        if position.at_mm is not None and length_mm is not None and position.at_mm > length_mm:
            facts = {"at": report.length(position.at_mm), "length": report.length(length_mm)}
            report.add(position.place, "beyond-the-room", position=position.name, **facts)

    check_each(positions, check_in_room, report)


def _check_heights(vine: Row, report: Report) -> None:
    head_mm, trimmed_mm = vine.get(HEAD_HEIGHT), vine.get(keys.TRIMMED_AT)
    wires = vine.get(keys.WIRES)
    if wires is None:
        return
    check_rising(wires, report)
    wire_mm = wires.get(keys.FRUITING)
    if wire_mm is None:
        return
    wire = report.length(wire_mm)
    if trimmed_mm is not None and trimmed_mm <= wire_mm:
        place = vine.place_of(keys.TRIMMED_AT)
        report.add(place, "trimmed-below-wire", trimmed=report.length(trimmed_mm), wire=wire)
    if head_mm is not None and abs(head_mm - wire_mm) > FARTHEST_FROM_WIRE_MM:
        report.add(
            vine.place_of(HEAD_HEIGHT),
            "head-off-the-wire",
            head=report.length(head_mm),
            wire=wire,
            most=report.length(FARTHEST_FROM_WIRE_MM),
        )


def _vine(row: Row, form: Form, positions: Sequence[Position]) -> Vine:
    wires, trunk_mm = row.need(keys.WIRES), row.need(keys.TRUNK_THICKNESS)
    trellis = Trellis(
        wires.need(keys.FRUITING),
        tuple(one.value for one in wires.need(keys.CATCH)),
        wires.need(keys.TOP),
        row.need(keys.TRIMMED_AT),
    )
    # What grows from the head grows from wood as thick as the trunk.
    arms = tuple(
        Arm(side, length_mm or 0, trunk_mm, tuple(one for one in positions if one.side is side))
        for side, length_mm in _room(row).items()
    )
    return Vine(form, trunk_mm, row.need(HEAD_HEIGHT), trellis, arms)


def _frame_lines(vine: Vine) -> Iterator[str]:
    # The lines for arms, but the height is the head's.
    for line in trellis_lines(vine):
        yield line.replace("  cordon height:", "  head height:")
    room = ", ".join(f"{arm.side}: {exact(arm.length_mm)}" for arm in vine.arms)
    yield f"  room: {{{room}}}"


CANE = FormReading(
    names=tuple(dict.fromkeys(form.name for form in CANE_PRUNED)),
    table=TABLE,
    form=_form,
    check=_check,
    thickness_mm=lambda row, _: row.get(keys.TRUNK_THICKNESS),
    vine=_vine,
    frame_lines=_frame_lines,
)
