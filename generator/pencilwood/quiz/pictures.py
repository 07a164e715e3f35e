"""The drawings above questions: which wood of a vine they show, and the window on it."""

from __future__ import annotations

from dataclasses import replace

from pencilwood.quiz.made import Box, Picture
from pencilwood.quiz.vines import ProvedVine
from pencilwood.vine import measures
from pencilwood.vine.model import Arm, Growth, Position, Vine
from pencilwood.vine.wood import Parts, WoodLeft, divide

NEIGHBOURS = 1
"""Positions on either side of the one that is shown close up."""
_HALF_WIDTH_MM = 230
_BEHIND_MM = 130
_AHEAD_MM = 420


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
    """The window on a position, far enough for all the wood from which its canes grow."""
    position, model = position_of(vine, name), vine.parts.vine
    here = [part for part in vine.parts.parts if part.position.name == name]
    ahead_mm = max(0, *(measures.away_mm(model, part, 0) for part in here)) + _AHEAD_MM
    hangs = model.form.growth is Growth.DOWN
    above_mm = _BEHIND_MM if hangs else ahead_mm
    left = measures.line_mm(position) - _HALF_WIDTH_MM
    top = -model.cordon_height_mm - above_mm
    return left, top, 2 * _HALF_WIDTH_MM, ahead_mm + _BEHIND_MM


def position_of(vine: ProvedVine, name: str) -> Position:
    """A position of a vine by its name."""
    return next(one for one in vine.parts.positions if one.name == name)
