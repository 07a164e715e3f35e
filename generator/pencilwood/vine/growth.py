"""The winter after: what a pruned vine may measure once a summer has gone over it.

Growth at a position depends on nothing but what was left there and a seed, so the same pruning
always grows the same wood, and each position can be grown by itself. The figures stand in
`growth_figures`. Nothing is asked of a form but its positions and which way its shoots go.
"""

from __future__ import annotations

import random
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from pencilwood.vine.growth_figures import (
    BASE_BUD_MM,
    NEW_SPUR_GAINS,
    OLD_WOOD_GAINS,
    VARIES,
    internode_of,
    thickness_of,
)
from pencilwood.vine.measures import is_large_cut, trimmed_buds
from pencilwood.vine.model import (
    LETTER_OF_SIDE,
    Arm,
    Condition,
    Growth,
    Lean,
    Piece,
    Position,
    Side,
    Vine,
)
from pencilwood.vine.regrowth import Sprout, Standing, labelled, standing_wood
from pencilwood.vine.wood import Parts, WoodLeft, divide

MOST_PIECES = 12
"""A position carries no more wood: where more buds are left, the lowest stay asleep."""
MOST_BUDS = 60
"""A shoot is never longer, trimmed or not."""

Place = tuple[Side, int]
"""Where a position stands: its name may change when another one is lost, its place does not."""


class NoWoodLeftError(ValueError):
    """Everything was cut off, so no next winter can be measured."""


@dataclass(frozen=True)
class Summer:
    """What is assumed of the summer between two winters."""

    seed: str
    budbreak_percent: int
    """Of a hundred buds that are left, how many push."""
    latent_per_wound: int
    """Shoots that each large wound wakes."""
    large_wound_mm: int
    stub_mm: int
    """Wood left above the last bud of a shortened cane."""
    base_percent: int = 0
    """Of a hundred living canes left, how many push from the uncounted bud at their foot too."""
    growth_mm: Mapping[Place, int] = field(default_factory=dict)
    """Length that all shoots of a position grow together, where it is not last summer's."""


def growth_by_place(vine: Vine) -> dict[Place, int]:
    """Length of all living canes at each position: what grew there last summer."""
    return {
        place_of(position): sum(
            piece.length_mm for piece in position.pieces if piece.is_cane and piece.is_alive
        )
        for position in vine.positions_along_line()
    }


def place_of(position: Position) -> Place:
    """Where a position stands."""
    return position.side, position.at_mm


def next_winter(left: WoodLeft, summer: Summer) -> Vine:
    """The vine as it may be measured next winter; raises NoWoodLeftError.

    Each position grows as much as last summer, or as `summer.growth_mm` says, shared among the
    shoots that push there; what grows beyond the trimming height is cut in summer.
    """
    vine = left.parts.vine
    if not any(left.states):
        raise NoWoodLeftError
    growth = {**growth_by_place(vine), **summer.growth_mm}
    arms = tuple(grown_arm(left, arm, summer, growth) for arm in vine.arms)
    if not any(arm.positions for arm in arms):
        raise NoWoodLeftError
    return trimmed(replace(vine, arms=arms))


def grown_arm(left: WoodLeft, arm: Arm, summer: Summer, growth: Mapping[Place, int]) -> Arm:
    """The arm with the positions that still carry wood, numbered anew."""
    grown = [
        replace(position, pieces=pieces)
        for position in arm.positions
        if (pieces := _pieces(left, arm, position, summer, growth[place_of(position)]))
    ]
    return replace(arm, positions=numbered(arm.side, grown))


def numbered(side: Side, positions: Iterable[Position]) -> tuple[Position, ...]:
    """Positions named from the head outward."""
    in_order = sorted(positions, key=lambda position: position.at_mm)
    return tuple(
        replace(position, name=f"{LETTER_OF_SIDE[side]}{number}")
        for number, position in enumerate(in_order, start=1)
    )


def _pieces(
    left: WoodLeft, arm: Arm, position: Position, summer: Summer, growth_mm: int
) -> tuple[Piece, ...]:
    grown = _thickened(standing_wood(left, position.name, summer.stub_mm), arm.thickness_mm)
    below_mm = {piece.letter: piece.thickness_mm for piece in grown}
    canes = [
        cane_of(
            sprout,
            length_mm,
            below_mm.get(sprout.grows_from or "", arm.thickness_mm),
            left.parts.vine.form.growth,
        )
        for sprout, length_mm in shared(sprouts_of(left, position, summer), growth_mm)
    ]
    return labelled(grown, canes)


def sprouts_of(left: WoodLeft, position: Position, summer: Summer) -> list[Sprout]:
    """The buds that push at a position, no more than it has room for."""
    standing = standing_wood(left, position.name, summer.stub_mm)
    pushed = [*_pushed(left, position, summer), *_woken(left, position, standing, summer)]
    room = max(0, MOST_PIECES - len(standing))
    # The buds farthest from the foot push first.
    return pushed[len(pushed) - room :] if room < len(pushed) else pushed


def _thickened(standing: tuple[Standing, ...], arm_mm: int) -> list[Piece]:
    """Last winter's wood a year older; living wood is a little thicker, never more than below."""
    most_mm: dict[str | None, int] = {None: arm_mm}
    grown: list[Piece] = []
    for piece, length_mm in standing:
        gains = NEW_SPUR_GAINS if piece.is_cane else OLD_WOOD_GAINS
        thickness_mm = piece.thickness_mm + (gains.value if piece.is_alive else 0)
        bound_mm = max(most_mm[piece.grows_from], piece.thickness_mm)
        most_mm[piece.letter] = min(thickness_mm, bound_mm)
        grown.append(
            replace(
                piece,
                age_years=piece.age_years + 1,
                length_mm=length_mm,
                thickness_mm=most_mm[piece.letter],
                buds=0,
                internode_mm=0,
            )
        )
    return grown


def _pushed(left: WoodLeft, position: Position, summer: Summer) -> Iterator[Sprout]:
    """A shoot from each bud that pushes, the lowest first."""
    for number in left.parts.of_position(position.name):
        part = left.parts.parts[number]
        if not part.is_cane or not part.piece.is_alive or left.states[number] == 0:
            continue
        for bud in range(left.states[number] + 1):
            chance = _chance(summer, position, part.name, bud)
            percent = summer.budbreak_percent if bud else summer.base_percent
            if chance.random() * 100 < percent:
                at_mm = bud * part.piece.internode_mm if bud else BASE_BUD_MM
                yield Sprout(part.piece.letter, at_mm, weight_of(chance))


def _woken(
    left: WoodLeft, position: Position, standing: tuple[Standing, ...], summer: Summer
) -> Iterator[Sprout]:
    """Shoots from latent buds below each large wound, on living wood or on the arm."""
    alive = {piece.letter: mm for piece, mm in standing if piece.is_alive}
    for number in left.parts.of_position(position.name):
        part = left.parts.parts[number]
        if not is_large_cut(left, number, summer.large_wound_mm):
            continue
        below = _living_below(left.parts, number, alive)
        for turn in range(summer.latent_per_wound):
            chance = _chance(summer, position, part.name, -1 - turn)
            at_mm = 0 if below is None else chance.randint(1, max(1, alive[below] // 2))
            yield Sprout(below, at_mm, weight_of(chance))


def _living_below(parts: Parts, number: int, alive: Mapping[str, int]) -> str | None:
    """Letter of the nearest living piece that still stands below a part; None for the arm."""
    letters = (parts.parts[below].piece.letter for below in parts.below(number))
    return next((letter for letter in letters if letter in alive), None)


def _chance(summer: Summer, position: Position, part: str, bud: int) -> random.Random:
    return chance_of(summer, place_of(position), part.removeprefix(position.name), bud)


def chance_of(summer: Summer, place: Place, wood: str, bud: int) -> random.Random:
    """Its own chance for each bud, so that what is left elsewhere changes nothing here."""
    side, at_mm = place
    seed = f"{summer.seed}/{side}/{at_mm}/{wood}/{bud}"
    return random.Random(seed)  # noqa: S311 - no secret; the same every time


def weight_of(chance: random.Random) -> int:
    """A shoot's part of the growth beside others', about 100."""
    return chance.randint(100 - VARIES.value, 100 + VARIES.value)


def shared(sprouts: Sequence[Sprout], growth_mm: int) -> Iterator[tuple[Sprout, int]]:
    """All growth of the position, shared among its shoots."""
    weights = sum(sprout.weight for sprout in sprouts)
    return ((sprout, growth_mm * sprout.weight // weights) for sprout in sprouts)


def cane_of(sprout: Sprout, length_mm: int, below_mm: int, growth: Growth) -> Piece:
    """The cane that a shoot became, never thicker than the wood below it."""
    internode_mm = internode_of(length_mm)
    # A cane ends one internode above its last bud.
    buds = min(max(1, length_mm // internode_mm - 1), MOST_BUDS)
    return Piece(
        letter="",
        age_years=1,
        length_mm=(buds + 1) * internode_mm,
        thickness_mm=min(thickness_of(length_mm), below_mm),
        grows_from=sprout.grows_from,
        at_mm=sprout.at_mm,
        condition=Condition.SOUND,
        lean=Lean.DOWN if growth is Growth.DOWN else Lean.UP,
        buds=buds,
        internode_mm=internode_mm,
    )


def trimmed(vine: Vine) -> Vine:
    """The vine after its shoots were trimmed in summer."""
    buds = {
        (part.position.name, part.piece.letter): trimmed_buds(vine, part)
        for part in divide(vine).parts
        if part.is_cane
    }

    def cut(position: Position, piece: Piece) -> Piece:
        if not piece.is_cane:
            return piece
        kept = buds[position.name, piece.letter]
        return replace(piece, buds=kept, length_mm=(kept + 1) * piece.internode_mm)

    arms = tuple(
        replace(
            arm,
            positions=tuple(
                replace(one, pieces=tuple(cut(one, piece) for piece in one.pieces))
                for one in arm.positions
            ),
        )
        for arm in vine.arms
    )
    return replace(vine, arms=arms)
