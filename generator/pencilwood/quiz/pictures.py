"""The drawings above questions: which wood of a vine they show, and the window on it."""

from __future__ import annotations

from dataclasses import replace

from pencilwood.quiz.made import Box, Picture
from pencilwood.quiz.vines import ProvedVine
from pencilwood.vine import measures
from pencilwood.vine.model import Arm, Position, Vine
from pencilwood.vine.wood import Parts, WoodLeft, divide

NEIGHBOURS = 1
"""Positions on either side of the one that is shown close up."""
_HALF_WIDTH_MM = 230
_BELOW_MM = 130
_ABOVE_MM = 420


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


def window(vine: ProvedVine, name: str) -> Box:
    """The window on a position, high enough for all the wood from which its canes grow."""
    position = position_of(vine, name)
    height_mm = vine.parts.vine.cordon_height_mm
    feet = [p.base_height_mm for p in vine.parts.parts if p.position.name == name]
    above_mm = max(0, *feet) + _ABOVE_MM
    left = measures.line_mm(position) - _HALF_WIDTH_MM
    return left, -height_mm - above_mm, 2 * _HALF_WIDTH_MM, above_mm + _BELOW_MM


def position_of(vine: ProvedVine, name: str) -> Position:
    """A position of a vine by its name."""
    return next(one for one in vine.parts.positions if one.name == name)
