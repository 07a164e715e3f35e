"""Reads cordons on a vertical-shoot trellis: wires, a trimming height, and one or two arms."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from pencilwood.cases import vine_keys as keys
from pencilwood.cases.arms import (
    arm_lines,
    arm_thickness_mm,
    armed_vine,
    check_positions,
    find_armed_form,
    trellis_lines,
)
from pencilwood.cases.drafts import PositionDraft
from pencilwood.cases.fields import Row, Table
from pencilwood.cases.forms.reading import FormReading
from pencilwood.cases.frame_checks import check_frame
from pencilwood.cases.report import Report
from pencilwood.vine.forms.cordon import CORDONS
from pencilwood.vine.model import Vine

TABLE = Table(
    "The vine as you measured it, before any cut.",
    (
        keys.FORM,
        keys.TRUNK_THICKNESS,
        keys.CORDON_HEIGHT,
        keys.WIRES,
        keys.TRIMMED_AT,
        keys.ARMS,
        keys.POSITIONS,
    ),
)


def _check(vine: Row, positions: Sequence[PositionDraft], report: Report) -> None:
    check_frame(vine, report)
    check_positions(vine, positions, report)


def _frame_lines(vine: Vine) -> Iterator[str]:
    yield from trellis_lines(vine)
    yield from arm_lines(vine)


CORDON = FormReading(
    names=tuple(dict.fromkeys(form.name for form in CORDONS)),
    table=TABLE,
    form=lambda row, report: find_armed_form(row, CORDONS, report),
    check=_check,
    thickness_mm=arm_thickness_mm,
    vine=armed_vine,
    frame_lines=_frame_lines,
)
