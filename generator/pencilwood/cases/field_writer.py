"""Writes a vine as a measuring sheet in CSV, for a spreadsheet; nothing is lost on the way."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator
from fractions import Fraction

from pencilwood.cases.field_columns import COLUMNS, FRAME
from pencilwood.units import format_number
from pencilwood.vine.model import Piece, Position, Side, Vine
from pencilwood.words import say


def field_sheet(vine: Vine, language: str = "en") -> str:
    """The sheet as CSV text, headings and words in one language, lengths metric."""
    out = io.StringIO()
    sheet = csv.writer(out, lineterminator="\n")
    frame = _frame(vine, language)
    for name in FRAME:
        if name in frame:
            sheet.writerow([say(language, f"field.frame.{name}"), *frame[name]])
    sheet.writerow([column.heading("metric", language) for column in COLUMNS])
    for arm in vine.arms:
        for position in arm.positions:
            for piece in position.pieces:
                cells = dict(_cells(position, piece, language))
                sheet.writerow([cells.get(column.name, "") for column in COLUMNS])
    return out.getvalue()


def _frame(vine: Vine, language: str) -> dict[str, list[str]]:
    trellis = vine.trellis
    lines = {
        "form": [say(language, f"field.word.{vine.form.name}")],
        "trunk thickness": [f"{vine.trunk_thickness_mm} mm"],
        "cordon height": [exact(vine.cordon_height_mm)],
        "fruiting wire": [exact(trellis.fruiting_wire_mm)],
        "catch wires": [exact(mm) for mm in trellis.catch_wires_mm],
        "top wire": [exact(trellis.top_wire_mm)],
        "trimmed at": [exact(trellis.trimming_mm)],
    }
    for arm in vine.arms:
        side = "left" if arm.side is Side.LEFT else "right"
        lines[f"{side} arm length"] = [exact(arm.length_mm)]
        lines[f"{side} arm thickness"] = [f"{arm.thickness_mm} mm"]
    return lines


def _cells(position: Position, piece: Piece, language: str) -> Iterator[tuple[str, str]]:
    yield "position", position.name
    yield "at", _cm(position.at_mm)
    yield "wood", say(language, f"field.word.{'cane' if piece.is_cane else 'old'}")
    yield "letter", piece.letter
    if piece.grows_from is not None:
        yield "from", piece.grows_from
        yield "up", _cm(piece.at_mm)
    yield "age", str(piece.age_years)
    yield "thickness", str(piece.thickness_mm)
    if piece.is_cane:
        yield "buds", str(piece.buds)
        yield "internode", _cm(piece.internode_mm)
    else:
        yield "length", _cm(piece.length_mm)
    yield "condition", say(language, f"field.word.{piece.condition}")
    yield "lean", say(language, f"field.word.{piece.lean}")


def _cm(mm: int) -> str:
    return format_number(Fraction(mm, 10), 1, "en")


def exact(mm: int) -> str:
    """A length with its unit, to the millimetre."""
    return f"{_cm(mm)} cm" if mm >= 100 or mm % 10 == 0 else f"{mm} mm"
