"""Reads high cordons: one wire, the height of the skirt cut, and one or two arms."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from pencilwood.cases import vine_keys as keys
from pencilwood.cases.arms import (
    arm_lines,
    arm_thickness_mm,
    check_positions,
    find_armed_form,
    vine_on,
)
from pencilwood.cases.drafts import PositionDraft
from pencilwood.cases.field_writer import exact
from pencilwood.cases.fields import Key, Row, Table
from pencilwood.cases.forms.reading import FormReading
from pencilwood.cases.frame_checks import check_arms_on_trunk, check_fruiting_wire
from pencilwood.cases.kinds import Length
from pencilwood.cases.report import Report
from pencilwood.vine.forms.high_cordon import HIGH_CORDONS
from pencilwood.vine.model import Form, Position, Trellis, Vine

WIRES = Key(
    "wires",
    Table("The one wire, by its height above the ground.", (keys.FRUITING,)),
    "The wire that carries the arms; there is no other.",
)
TRIMMED_AT = Key(
    "trimmed at",
    Length(100, 3000, "50 cm"),
    "Height above the ground at which hanging shoots are cut off in summer, below the arms.",
)
TABLE = Table(
    "The vine as you measured it, before any cut.",
    (
        keys.FORM,
        keys.TRUNK_THICKNESS,
        keys.CORDON_HEIGHT,
        WIRES,
        TRIMMED_AT,
        keys.ARMS,
        keys.POSITIONS,
    ),
)


def _check(vine: Row, positions: Sequence[PositionDraft], report: Report) -> None:
    check_arms_on_trunk(vine, report)
    cordon_mm, trimmed_mm = vine.get(keys.CORDON_HEIGHT), vine.get(TRIMMED_AT)
    if cordon_mm is not None and trimmed_mm is not None and trimmed_mm >= cordon_mm:
        report.add(
            vine.place_of(TRIMMED_AT),
            "trimmed-above-arms",
            trimmed=report.length(trimmed_mm),
            cordon=report.length(cordon_mm),
        )
    wires = vine.get(WIRES)
    if wires is not None:
        check_fruiting_wire(wires, cordon_mm, report)
    check_positions(vine, positions, report)


def _vine(row: Row, form: Form, positions: Sequence[Position]) -> Vine:
    wire_mm = row.need(WIRES).need(keys.FRUITING)
    return vine_on(Trellis(wire_mm, (), wire_mm, row.need(TRIMMED_AT)), row, form, positions)


def _frame_lines(vine: Vine) -> Iterator[str]:
    yield f"  trunk thickness: {vine.trunk_thickness_mm} mm"
    yield f"  cordon height: {exact(vine.cordon_height_mm)}"
    yield f"  wires: {{fruiting: {exact(vine.trellis.fruiting_wire_mm)}}}"
    yield f"  trimmed at: {exact(vine.trellis.trimming_mm)}"
    yield from arm_lines(vine)


HIGH_CORDON = FormReading(
    names=tuple(dict.fromkeys(form.name for form in HIGH_CORDONS)),
    table=TABLE,
    form=lambda row, report: find_armed_form(row, HIGH_CORDONS, report),
    check=_check,
    thickness_mm=arm_thickness_mm,
    vine=_vine,
    frame_lines=_frame_lines,
)
