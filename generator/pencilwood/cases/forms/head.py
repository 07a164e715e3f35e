"""Reads head-trained vines: a trunk, a head measured with a tape around it, and no wires."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from pencilwood.cases import vine_keys as keys
from pencilwood.cases.arms import check_each
from pencilwood.cases.drafts import PositionDraft
from pencilwood.cases.field_writer import exact
from pencilwood.cases.fields import Key, ListOf, Row, Table
from pencilwood.cases.forms.reading import FormReading
from pencilwood.cases.kinds import Length, Text
from pencilwood.cases.report import Report
from pencilwood.vine.forms.head import HEAD_TRAINED
from pencilwood.vine.model import Arm, Form, Position, Side, Trellis, Vine

HEIGHT = Key("height", Length(100, 2000, "60 cm"), "Height of the head above the ground.")
AROUND = Key(
    "around",
    Length(200, 6000, "120 cm"),
    "Once around the head with a tape, where the spurs stand.",
)
THICKNESS = Key(
    "thickness", Length(5, 300, "45 mm"), "Thickness of the short arms, in their middle."
)
HEAD = Key(
    "head",
    Table("The head, with the short arms that carry the spurs.", (HEIGHT, AROUND, THICKNESS)),
    "The head: its height, the way once around it, and how thick its short arms are.",
)
POSITION = Key(
    keys.POSITION.name,
    Text("H[1-9][0-9]?", "not-a-head-position"),
    "Its name: H and a number, clockwise as seen from above, from a mark that faces the row.",
)
AT = Key(
    keys.AT.name, Length(1, 6000, "14 cm"), "Distance from the mark, with the tape, clockwise."
)
POSITION_ROW = Table("One place around the head where wood grows.", (POSITION, AT, keys.WOOD))
POSITIONS = Key(
    keys.POSITIONS.name, ListOf(POSITION_ROW, 1, keys.MOST_POSITIONS), keys.POSITIONS.about
)
_NO_WIRES = Trellis(0, (), 0, 0)
TABLE = Table(
    "The vine as you measured it, before any cut.",
    (keys.FORM, keys.TRUNK_THICKNESS, HEAD, POSITIONS),
)


def _check(vine: Row, positions: Sequence[PositionDraft], report: Report) -> None:
    _check_thickness(vine, report)
    around_mm = _of_head(vine, AROUND)

    def check_on_tape(position: PositionDraft) -> None:
        if position.at_mm is not None and around_mm is not None and position.at_mm > around_mm:
            report.add(
                position.place,
                "beyond-the-head",
                position=position.name,
                at=report.length(position.at_mm),
                around=report.length(around_mm),
            )

    check_each(positions, check_on_tape, report)


def _check_thickness(vine: Row, report: Report) -> None:
    head = vine.get(HEAD)
    arm_mm, trunk_mm = _of_head(vine, THICKNESS), vine.get(keys.TRUNK_THICKNESS)
    if head is not None and arm_mm is not None and trunk_mm is not None and arm_mm > trunk_mm:
        facts = {"arm": report.length(arm_mm), "trunk": report.length(trunk_mm)}
        report.add(head.place_of(THICKNESS), "arm-thicker-than-trunk", **facts)


def _of_head(vine: Row, key: Key[int]) -> int | None:
    head = vine.get(HEAD)
    return None if head is None else head.get(key)


def _form(vine: Row, _report: Report) -> Form | None:
    return None if vine.get(keys.FORM) is None else HEAD_TRAINED


def _vine(row: Row, form: Form, positions: Sequence[Position]) -> Vine:
    head = row.need(HEAD)
    ring = Arm(Side.ROUND, head.need(AROUND), head.need(THICKNESS), tuple(positions))
    return Vine(form, row.need(keys.TRUNK_THICKNESS), head.need(HEIGHT), _NO_WIRES, (ring,))


def _frame_lines(vine: Vine) -> Iterator[str]:
    ring = vine.arms[0]
    yield f"  trunk thickness: {vine.trunk_thickness_mm} mm"
    yield (
        f"  head: {{height: {exact(vine.cordon_height_mm)}, around: {exact(ring.length_mm)}, "
        f"thickness: {ring.thickness_mm} mm}}"
    )


HEAD_READING = FormReading(
    names=(HEAD_TRAINED.name,),
    table=TABLE,
    form=_form,
    check=_check,
    thickness_mm=lambda row, _side: _of_head(row, THICKNESS),
    vine=_vine,
    frame_lines=_frame_lines,
)
