"""How many buds the arms have room for, and the smaller of that and of what is asked for."""

from __future__ import annotations

from typing import Literal

from pencilwood.block.answer import Answer, Figure, Sentence
from pencilwood.block.errors import BlockError
from pencilwood.block.numbers import Range, whole

Reason = Literal["arms", "formula", "same"]


def spurs_that_fit(arms: Range, arm_mm: Range, spur_spacing_mm: Range) -> Range:
    """Spurs on all arms: a whole number on each, one for every full spacing."""
    spurs = (arm_mm / spur_spacing_mm).each(lambda value: value // 1) * arms
    if spurs.low < 1:
        raise BlockError("no-room").about("spur_spacing_mm")
    return spurs


def room_on_arms(
    *, arms: Range, arm_mm: Range, spur_spacing_mm: Range, buds_per_spur: Range
) -> Answer:
    """Spurs and buds that the arms have room for, and how densely they then stand.

    spurs = arms x (length of an arm / spur spacing, rounded down); buds = spurs x buds on each,
    whole ones.

    Limits: takes the arms as furnished from end to end; blanks and the head hold fewer.
    Errors: BlockError "no-room" when not even one spur fits on an arm.
    Source: arithmetic on the spur spacing, which is common practice from a hand's width (F.
    Westover, Wines & Vines, May 2016, read) to 3-5 in (University of Minnesota Extension 2022,
    read).
    """
    spurs = spurs_that_fit(arms, arm_mm, spur_spacing_mm)
    buds = whole(spurs * buds_per_spur)
    density = buds / (arm_mm * arms)
    facts = {
        "arms": ("arms", arms),
        "arm": ("arm", arm_mm),
        "spacing": ("spur-spacing", spur_spacing_mm),
        "spurs": ("spurs", spurs),
        "each": ("number", buds_per_spur),
        "buds": ("buds", buds),
        "density": ("on-length", density),
    }
    figures = (
        Figure("room", "buds", buds),
        Figure("spurs", "spurs", spurs),
        Figure("density", "on-length", density),
    )
    steps = (Sentence("spurs", facts), Sentence("room", facts), Sentence("density", facts))
    return Answer("room", figures, steps)


def smaller_of(wanted: Range, room: Range) -> tuple[Range, Reason]:
    """The smaller number of buds, value by value, and which of the two bound the likely one."""
    smaller = Range(
        min(wanted.low, room.low),
        min(wanted.likely, room.likely),
        min(wanted.high, room.high),
        wanted.digits,
    )
    if wanted.likely == room.likely:
        return smaller, "same"
    return smaller, "arms" if room.likely < wanted.likely else "formula"


def buds_that_fit(
    *,
    wanted_buds: Range,
    arms: Range,
    arm_mm: Range,
    spur_spacing_mm: Range,
    buds_per_spur: Range,
) -> Answer:
    """The buds to leave: those asked for, or those that the arms hold, whichever are fewer.

    Limits and errors: those of `room_on_arms`.
    Source: our own; a published sum that asks for more spurs than the arms can hold shows why.
    """
    room = room_on_arms(
        arms=arms, arm_mm=arm_mm, spur_spacing_mm=spur_spacing_mm, buds_per_spur=buds_per_spur
    )
    buds, reason = smaller_of(wanted_buds, room.main)
    facts = {"wanted": ("buds", wanted_buds), "room": ("buds", room.main), "buds": ("buds", buds)}
    figures = (Figure("buds", "buds", buds), *room.figures)
    remark = Sentence(f"bound-by-{reason}", facts)
    return Answer("fit", figures, (*room.steps, Sentence("smaller", facts)), (remark,))
