"""The drawings above questions: which wood of a vine they show."""

from __future__ import annotations

from dataclasses import replace

from pencilwood.quiz.made import Picture
from pencilwood.quiz.vines import ProvedVine
from pencilwood.vine.model import Arm, Position, Vine
from pencilwood.vine.wood import Parts, WoodLeft, divide

NEIGHBOURS = 1
"""Positions on either side of the one that is shown close up."""


def wood_shown(picture: Picture, vine: ProvedVine) -> tuple[Parts, WoodLeft | None]:
    """The wood of a picture, and what is left of it where it is shown pruned.

    A close-up holds only the positions in its window: a whole vine takes a quarter of a
    megabyte of drawing, a window a tenth of that.
    """
    parts = vine.parts
    if picture.near is not None:
        parts = divide(near(parts.vine, picture.near))
    if picture.shown == "before":
        return parts, None
    answer = vine.answer_left
    return parts, WoodLeft(parts, tuple(answer.state(part.name) for part in parts.parts))


def near(vine: Vine, name: str) -> Vine:
    """The same vine with only the positions around one."""
    line = vine.positions_along_line()
    middle = next(number for number, position in enumerate(line) if position.name == name)
    kept = {p.name for p in line[max(0, middle - NEIGHBOURS) : middle + NEIGHBOURS + 1]}
    return replace(vine, arms=tuple(_only(arm, kept) for arm in vine.arms))


def _only(arm: Arm, kept: set[str]) -> Arm:
    return replace(arm, positions=tuple(one for one in arm.positions if one.name in kept))


def position_of(vine: ProvedVine, name: str) -> Position:
    """A position of a vine by its name."""
    return next(one for one in vine.parts.positions if one.name == name)
