"""A bench on which one rule looks at one small vine."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from pencilwood.rules import BANDS, FORM_BANDS, RULE_BY_NAME
from pencilwood.rules.shapes import Broken, PieceLeft
from pencilwood.vine.bands import Limits, default_limits
from pencilwood.vine.forms.cordon import ONE_ARM_RIGHT
from pencilwood.vine.model import Piece, Side, Vine
from pencilwood.vine.wood import WoodLeft, divide, uncut
from vines import arm, vine

_OF_FORMS = {band.name: band.default for bands in FORM_BANDS.values() for band in bands}
LIMITS: Limits = {**_OF_FORMS, **default_limits(BANDS)}
"""The usual limits, with those that only one form has."""


def with_limits(**changed: int) -> Limits:
    """The usual limits with some changed; `head_zone` stands for the band `head zone`."""
    new = {name.replace("_", " "): value for name, value in changed.items()}
    assert new.keys() <= LIMITS.keys(), new
    return {**LIMITS, **new}


def one_position(pieces: Iterable[Piece], at_mm: int = 200) -> Vine:
    """A vine with all its wood at R1."""
    return vine(ONE_ARM_RIGHT, arm(Side.RIGHT, 400, (at_mm, tuple(pieces))))


def wood_left(one: Vine, kept: Mapping[str, int]) -> WoodLeft:
    """The wood left when each named part of R1 (`a`, `m above a`) has its state, others 0."""
    parts = divide(one)
    names = {f"R1{name}": state for name, state in kept.items()}
    assert names.keys() <= parts.index.keys(), (names, tuple(parts.index))
    return WoodLeft(parts, tuple(names.get(part.name, 0) for part in parts.parts))


def piece_breaks(
    rule: str,
    pieces: Sequence[Piece],
    kept: Mapping[str, int] | None = None,
    at_mm: int = 200,
    limits: Limits = LIMITS,
) -> list[tuple[str, str, int]]:
    """What a rule about pieces says of R1: part without its position, message, excess.

    Without `kept` nothing has been cut.
    """
    one = one_position(pieces, at_mm)
    left = uncut(divide(one)) if kept is None else wood_left(one, kept)
    return [
        (left.parts.parts[number].name.removeprefix("R1"), broken.message, broken.excess)
        for number, state in enumerate(left.states)
        for broken in RULE_BY_NAME[rule].check(
            PieceLeft(left.parts, number, state, left.living_above(number)), limits
        )
    ]


def breaks(rule: str, facts: object, limits: Limits = LIMITS) -> list[Broken]:
    """What any other rule says of its facts."""
    return list(RULE_BY_NAME[rule].check(facts, limits))
