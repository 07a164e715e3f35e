"""Canes that are tied along the wire after the last cut."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from pencilwood.vine.bands import Limits
from pencilwood.vine.model import Side
from pencilwood.vine.passes import DoneCut
from pencilwood.vine.wood import Tie, WoodLeft


def canes_to_tie(left: WoodLeft, limits: Limits) -> tuple[int, ...]:
    """Numbers of the parts that the form ties along the wire, along the line."""
    form = left.parts.vine.form
    found = [one for one in form.tallies if one.name == form.tied]
    return tuple(
        number
        for what in found
        for number, (part, state) in enumerate(zip(left.parts.parts, left.states, strict=True))
        if state > 0 and what.counts(part.position, part.piece, state, limits)
    )


def sides_tied(done: Iterable[DoneCut]) -> Mapping[str, Side]:
    """The side that each cane was tied to last, by the cane's name."""
    return {one.cut.part: one.cut.side for one in done if isinstance(one.cut, Tie)}
