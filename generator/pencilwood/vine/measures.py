"""The measures of a vine, each defined here and nowhere else.

Published readings of these words: Westover, Wines & Vines, May 2016 (a count bud stands clear
of the older wood; the bud at the junction is not counted); Lodi Winegrape Commission (leaves
a shoot can carry before it is hedged).
"""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

from pencilwood.units import PER_METRE
from pencilwood.vine.bands import Limits
from pencilwood.vine.model import Growth, Lean, Position, Side, Tally, Vine
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
    return Fraction(buds_kept(left) * 1000, left.parts.vine.line_length_mm)


def buds_on_length(left: WoodLeft) -> Fraction:
    """The same as figures of the profile are held, which whole numbers for each foot are too."""
    return buds_per_metre(left) * PER_METRE


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


def neighbours(left: WoodLeft) -> tuple[tuple[Position, Position, int], ...]:
    """Neighbouring spurs that are left, and their distance along the line in mm."""
    kept = spurs(left)
    pairs = [(one, other, line_mm(other) - line_mm(one)) for one, other in pairwise(kept)]
    if left.parts.vine.is_ring and len(kept) > 1:
        last, first = kept[-1], kept[0]
        pairs.append((last, first, line_mm(first) + left.parts.vine.line_length_mm - line_mm(last)))
    return tuple(pairs)


def spacings_mm(left: WoodLeft) -> tuple[int, ...]:
    """Distances along the line between neighbouring spurs that are left."""
    return tuple(distance_mm for _, _, distance_mm in neighbours(left))


def stretches(left: WoodLeft, head_zone_mm: int) -> tuple[tuple[tuple[Position, ...], int], ...]:
    """Each stretch without a spur: the spurs it lies between, one at an arm's end, and its mm.

    From end to end of the line, the head zone excluded; around a head there are no ends.
    """
    vine, kept = left.parts.vine, spurs(left)
    if vine.is_ring:
        if len(kept) < 2:
            return ((kept, vine.line_length_mm),)
        return tuple(((one, other), mm) for one, other, mm in neighbours(left))
    start, end = line_ends_mm(vine, head_zone_mm)
    at = [outside_head_mm(line_mm(position), head_zone_mm) for position in kept]
    between = [kept[max(0, n - 1) : n + 1] for n in range(len(kept) + 1)]
    lengths = [b - a for a, b in pairwise([start, *at, end])]
    return tuple(zip(between, lengths, strict=True))


def stretches_mm(left: WoodLeft, head_zone_mm: int) -> tuple[int, ...]:
    """Lengths of the stretches without a spur."""
    return tuple(length_mm for _, length_mm in stretches(left, head_zone_mm))


def blank_mm(left: WoodLeft, head_zone_mm: int) -> int:
    """The longest stretch of arm without a spur."""
    return max(stretches_mm(left, head_zone_mm))


def away_mm(vine: Vine, part: Part, bud: int = 1) -> int:
    """How far a bud stands from the arm, the way the vine's shoots are trained; bud 0 is the foot.

    Below 0 on the other side of the arm.
    """
    height_mm = part.bud_height_mm(bud)
    return -height_mm if vine.form.growth is Growth.DOWN else height_mm


def grows_against(vine: Vine, lean: Lean) -> bool:
    """Whether wood that leans so points away from where the vine's shoots are trained.

    Around a head that is inward, over the middle.
    """
    if vine.is_ring and lean is Lean.IN:
        return True
    return lean is (Lean.UP if vine.form.growth is Growth.DOWN else Lean.DOWN)


def climb_mm(left: WoodLeft) -> int:
    """How far from the arm the farthest spur's lowest bud stands; 0 when nothing is left."""
    heights = [
        away_mm(left.parts.vine, part)
        for part, state in zip(left.parts.parts, left.states, strict=True)
        if part.is_cane and state > 0
    ]
    return max(heights, default=0)


def leaf_room(vine: Vine, part: Part, bud: int) -> int:
    """Leaves that a shoot from this bud can carry before summer trimming cuts it.

    The room up to the trimming height in internodes, rounded down. Trimmed at 215 cm, arm at
    90 cm, internode 8 cm: a bud 5 cm above the arm has room for 15 leaves. Shoots that hang
    have their room down to the trimming height.
    """
    to_arm_mm = abs(vine.trellis.trimming_mm - vine.cordon_height_mm)
    room_mm = to_arm_mm - away_mm(vine, part, bud)
    return leaves_that_fit(room_mm, part.piece.internode_mm)


def trimmed_buds(vine: Vine, part: Part) -> int:
    """Buds that summer trimming leaves on a cane that grows straight to the trimming height.

    A cane ends one internode above its last bud; one bud is always left.
    """
    if not vine.trellis.is_trimmed:
        return part.piece.buds
    to_arm_mm = abs(vine.trellis.trimming_mm - vine.cordon_height_mm)
    room_mm = to_arm_mm - away_mm(vine, part, 0)
    return min(part.piece.buds, max(1, leaves_that_fit(room_mm, part.piece.internode_mm) - 1))


def leaves_that_fit(room_mm: int | Fraction, internode_mm: int | Fraction) -> int:
    """Whole internodes in the room above a bud, each with its leaf."""
    return max(0, int(room_mm // internode_mm))


def large_wounds(left: WoodLeft, large_wound_mm: int) -> int:
    """Fresh cuts as thick as `large_wound_mm` or thicker; cutting dead wood wounds nothing."""
    return sum(
        is_large_cut(left, number, large_wound_mm) for number in range(len(left.parts.parts))
    )


def is_large_cut(left: WoodLeft, number: int, large_wound_mm: int) -> bool:
    """Whether this part was cut off and left a large wound in living wood."""
    piece = left.parts.parts[number].piece
    return left.is_cut_face(number) and piece.is_alive and piece.thickness_mm >= large_wound_mm


def tally(left: WoodLeft, what: Tally, limits: Limits) -> int:
    """How many of something that the form counts are left on the vine."""
    return sum(
        state > 0 and what.counts(part.position, part.piece, state, limits)
        for part, state in zip(left.parts.parts, left.states, strict=True)
    )


def expected_shoots(
    left: WoodLeft, budbreak: Fraction, latent_per_wound: Fraction, large_wound_mm: int
) -> Fraction:
    """Shoots to expect in spring: buds that push, and latent buds that large wounds wake."""
    woken = large_wounds(left, large_wound_mm) * latent_per_wound
    return buds_kept(left) * budbreak + woken
