"""Refuses wood that cannot grow: each slip is one finding, at the piece that shows it."""

from __future__ import annotations

from collections.abc import Mapping

from pencilwood.cases import vine_keys as keys
from pencilwood.cases.drafts import PieceDraft, PositionDraft
from pencilwood.cases.report import Fact, Report, quoted


def check_wood(position: PositionDraft, arm_thickness_mm: int | None, report: Report) -> None:
    """Note everything at one position that cannot have grown so."""
    by_letter: dict[str, PieceDraft] = {}
    for piece in position.pieces:
        if piece.letter in by_letter:
            line = by_letter[piece.letter].place.line
            report.add(piece.place, "same-letter", piece=piece.name, line=line)
        else:
            by_letter[piece.letter] = piece
    for piece in position.pieces:
        if piece.grows_from is not None:
            _check_growth(piece, position, by_letter, report)
        elif not piece.row.has(keys.FROM):
            _check_on_arm(piece, arm_thickness_mm, report)


def _check_growth(
    piece: PieceDraft,
    position: PositionDraft,
    by_letter: Mapping[str, PieceDraft],
    report: Report,
) -> None:
    letter = piece.grows_from or ""
    below = by_letter.get(letter)
    if below is None and not position.whole:
        return  # It may well grow from the piece whose letter could not be read.
    if below is None:
        others = [other for other in by_letter if other != piece.letter]
        facts: dict[str, Fact] = {"found": quoted(letter), "hint": report.hint(letter, others)}
        report.add(piece.row.place_of(keys.FROM), "grows-from-nothing", piece=piece.name, **facts)
    elif _is_loop(piece, by_letter):
        place = piece.row.place_of(keys.FROM)
        report.add(place, "grows-from-itself", piece=piece.name, below=below.name)
    elif below.is_cane:
        place = piece.row.place_of(keys.FROM)
        report.add(place, "grows-from-cane", piece=piece.name, below=below.name)
    else:
        _check_joint(piece, below, report)
        _check_age(piece, below, report)
        _check_thickness(piece, below, report)


def _is_loop(piece: PieceDraft, by_letter: Mapping[str, PieceDraft]) -> bool:
    """Whether going down from a piece comes back to it."""
    letter, steps = piece.grows_from, 0
    while letter is not None and letter in by_letter and steps <= len(by_letter):
        if letter == piece.letter:
            return True
        letter, steps = by_letter[letter].grows_from, steps + 1
    return False


def _check_joint(piece: PieceDraft, below: PieceDraft, report: Report) -> None:
    """The place on the piece below where this one grows."""
    place, up_mm = piece.row.place_of(keys.UP), piece.row.get(keys.UP)
    if not piece.row.has(keys.UP):
        report.add(
            piece.place,
            "how-far-up",
            piece=piece.name,
            below=below.name,
            example=report.example("3 cm"),
        )
    elif up_mm == 0:
        report.add(place, "not-up-at-all", piece=piece.name, below=below.name)
    elif up_mm is not None and below.length_mm is not None and up_mm > below.length_mm:
        length = report.length(below.length_mm)
        up = report.length(up_mm)
        facts: dict[str, Fact] = {
            "piece": piece.name,
            "below": below.name,
            "length": length,
            "up": up,
        }
        report.add(place, "beyond-its-end", **facts)


def _check_age(piece: PieceDraft, below: PieceDraft, report: Report) -> None:
    if piece.age_years is None or below.age_years is None:
        return
    if piece.age_years >= below.age_years:
        facts: dict[str, Fact] = {"age": piece.age_years, "below_age": below.age_years}
        place = piece.row.place_of(keys.AGE)
        report.add(place, "older-than-below", piece=piece.name, below=below.name, **facts)


def _check_thickness(piece: PieceDraft, below: PieceDraft, report: Report) -> None:
    if piece.thickness_mm is None or below.thickness_mm is None:
        return
    if piece.thickness_mm > below.thickness_mm:
        facts = _thicknesses(piece, below.thickness_mm, report)
        place = piece.row.place_of(keys.OLD_THICKNESS)
        report.add(place, "thicker-than-below", piece=piece.name, below=below.name, **facts)


def _check_on_arm(piece: PieceDraft, arm_thickness_mm: int | None, report: Report) -> None:
    """What holds for wood that grows straight from the arm."""
    if piece.row.has(keys.UP):
        report.add(piece.row.place_of(keys.UP), "up-from-what", piece=piece.name)
    if piece.thickness_mm is None or arm_thickness_mm is None:
        return
    if piece.thickness_mm > arm_thickness_mm:
        facts = _thicknesses(piece, arm_thickness_mm, report)
        place = piece.row.place_of(keys.OLD_THICKNESS)
        report.add(place, "thicker-than-arm", piece=piece.name, **facts)


def _thicknesses(piece: PieceDraft, below_mm: int, report: Report) -> dict[str, Fact]:
    return {
        "thickness": report.length(piece.thickness_mm or 0),
        "below_thickness": report.length(below_mm),
    }
