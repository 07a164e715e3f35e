"""The measures of a vine, each defined here and nowhere else.

Published readings of these words: Westover, Wines & Vines, May 2016 (a count bud stands clear
of the older wood; the bud at the junction is not counted); Lodi Winegrape Commission (leaves
a shoot can carry before it is hedged).
"""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

from pencilwood.vine.model import Position, Side, Vine
from pencilwood.vine.wood import Part, WoodLeft


def buds_kept(left: WoodLeft, side: Side | None = None) -> int:
    """Counted buds left on the vine, or on one arm."""
    return sum(
        state
        for part, state in zip(left.parts.parts, left.states, strict=True)
        if part.is_cane and (side is None or part.position.side is side)
    )


def buds_per_metre(left: WoodLeft) -> Fraction:
    """Counted buds left, per metre of arm."""
    return Fraction(buds_kept(left) * 1000, left.parts.vine.arm_length_mm)


def spurs(left: WoodLeft) -> tuple[Position, ...]:
    """Positions at which a living bud is left, along the line from left tip to right tip."""
    return tuple(p for p in left.parts.positions if left.is_spur(p.name))


def line_mm(position: Position) -> int:
    """Where a position stands on the line through both arms: left of the head below 0."""
    return -position.at_mm if position.side is Side.LEFT else position.at_mm


def outside_head_mm(distance_mm: int, head_zone_mm: int) -> int:
    """A place on the line with the head zone taken out, so that a blank never counts it."""
    if distance_mm < 0:
        return min(0, distance_mm + head_zone_mm)
    return max(0, distance_mm - head_zone_mm)


def line_ends_mm(vine: Vine, head_zone_mm: int) -> tuple[int, int]:
    """Both ends of the line with the head zone taken out; 0 where the vine has no arm."""
    left = -sum(arm.length_mm for arm in vine.arms if arm.side is Side.LEFT)
    right = sum(arm.length_mm for arm in vine.arms if arm.side is Side.RIGHT)
    return outside_head_mm(left, head_zone_mm), outside_head_mm(right, head_zone_mm)


def spacings_mm(left: WoodLeft) -> tuple[int, ...]:
    """Distances along the line between neighbouring spurs that are left."""
    at = [line_mm(position) for position in spurs(left)]
    return tuple(b - a for a, b in pairwise(at))


def stretches_mm(left: WoodLeft, head_zone_mm: int) -> tuple[int, ...]:
    """Lengths of arm without a spur, from end to end of the line, the head zone excluded."""
    start, end = line_ends_mm(left.parts.vine, head_zone_mm)
    at = [outside_head_mm(line_mm(position), head_zone_mm) for position in spurs(left)]
    marks = [start, *at, end]
    return tuple(b - a for a, b in pairwise(marks))


def blank_mm(left: WoodLeft, head_zone_mm: int) -> int:
    """The longest stretch of arm without a spur."""
    return max(stretches_mm(left, head_zone_mm))


def climb_mm(left: WoodLeft) -> int:
    """Height above the arm of the highest spur's lowest bud; 0 when nothing is left."""
    heights = [
        part.bud_height_mm(1)
        for part, state in zip(left.parts.parts, left.states, strict=True)
        if part.is_cane and state > 0
    ]
    return max(heights, default=0)


def leaf_room(vine: Vine, part: Part, bud: int) -> int:
    """Leaves that a shoot from this bud can carry before summer trimming cuts it.

    The room up to the trimming height in internodes, rounded down. Trimmed at 215 cm, arm at
    90 cm, internode 8 cm: a bud 5 cm above the arm has room for 15 leaves.
    """
    room_mm = vine.trellis.trimming_mm - vine.cordon_height_mm - part.bud_height_mm(bud)
    return leaves_that_fit(room_mm, part.piece.internode_mm)


def leaves_that_fit(room_mm: int | Fraction, internode_mm: int | Fraction) -> int:
    """Whole internodes in the room above a bud, each with its leaf."""
    return max(0, int(room_mm // internode_mm))


def large_wounds(left: WoodLeft, large_wound_mm: int) -> int:
    """Fresh cuts as thick as `large_wound_mm` or thicker; cutting dead wood wounds nothing."""
    return sum(
        1
        for number, part in enumerate(left.parts.parts)
        if left.is_cut_face(number)
        and part.piece.is_alive
        and part.piece.thickness_mm >= large_wound_mm
    )


def expected_shoots(
    left: WoodLeft, budbreak: Fraction, latent_per_wound: Fraction, large_wound_mm: int
) -> Fraction:
    """Shoots to expect in spring: buds that push, and latent buds that large wounds wake."""
    woken = large_wounds(left, large_wound_mm) * latent_per_wound
    return buds_kept(left) * budbreak + woken
