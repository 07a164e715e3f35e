"""Refuses a frame that cannot stand: arms, trunk and wires."""

from __future__ import annotations

from itertools import pairwise

from pencilwood.cases import vine_keys as keys
from pencilwood.cases.arms import arm_rows
from pencilwood.cases.fields import Row
from pencilwood.cases.report import Fact, Report
from pencilwood.places import Place

FARTHEST_FROM_WIRE_MM = 300
"""The arms are tied to the fruiting wire; further away than this one of both is mistyped."""


def check_frame(vine: Row, report: Report) -> None:
    """Note what cannot be in the trunk, the arms' thickness and the heights."""
    check_arms_on_trunk(vine, report)
    _check_heights(vine, report)


def check_arms_on_trunk(vine: Row, report: Report) -> None:
    """Note arms thicker than the trunk that bears them."""
    trunk_mm = vine.get(keys.TRUNK_THICKNESS)
    for row in arm_rows(vine).values():
        arm_mm = row.get(keys.ARM_THICKNESS)
        if arm_mm is not None and trunk_mm is not None and arm_mm > trunk_mm:
            facts: dict[str, Fact] = {
                "arm": report.length(arm_mm),
                "trunk": report.length(trunk_mm),
            }
            report.add(row.place_of(keys.ARM_THICKNESS), "arm-thicker-than-trunk", **facts)


def _check_heights(vine: Row, report: Report) -> None:
    cordon_mm, trimmed_mm = vine.get(keys.CORDON_HEIGHT), vine.get(keys.TRIMMED_AT)
    if cordon_mm is not None and trimmed_mm is not None and trimmed_mm <= cordon_mm:
        report.add(
            vine.place_of(keys.TRIMMED_AT),
            "trimmed-below-arms",
            trimmed=report.length(trimmed_mm),
            cordon=report.length(cordon_mm),
        )
    wires = vine.get(keys.WIRES)
    if wires is not None:
        check_fruiting_wire(wires, cordon_mm, report)
        check_rising(wires, report)


def check_fruiting_wire(wires: Row, cordon_mm: int | None, report: Report) -> None:
    """Note arms that lie nowhere near the wire that carries them."""
    fruiting_mm = wires.get(keys.FRUITING)
    if cordon_mm is None or fruiting_mm is None:
        return
    if abs(cordon_mm - fruiting_mm) > FARTHEST_FROM_WIRE_MM:
        report.add(
            wires.place_of(keys.FRUITING),
            "arms-off-the-wire",
            cordon=report.length(cordon_mm),
            wire=report.length(fruiting_mm),
            most=report.length(FARTHEST_FROM_WIRE_MM),
        )


def check_rising(wires: Row, report: Report) -> None:
    """Note a wire that is not above the one before it."""
    for (lower_mm, _), (upper_mm, place) in pairwise(_wires(wires)):
        if upper_mm <= lower_mm:
            lower, upper = report.length(lower_mm), report.length(upper_mm)
            report.add(place, "wires-do-not-rise", lower=lower, upper=upper)


def _wires(wires: Row) -> list[tuple[int, Place]]:
    """The wires that could be read, in the order in which they should rise."""
    heights = [(wires.get(keys.FRUITING), wires.place_of(keys.FRUITING))]
    heights += [(one.value, one.place) for one in wires.get(keys.CATCH) or ()]
    heights.append((wires.get(keys.TOP), wires.place_of(keys.TOP)))
    return [(height_mm, place) for height_mm, place in heights if height_mm is not None]
