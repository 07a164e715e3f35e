"""What one cut can remove, and what is left of a vine after some cuts.

A cane is one part, `L1a`. Older wood is divided where something grows from it, because the
trade cuts it there: the foot is `L1m`, what lies beyond cane a is `L1m above a`.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from itertools import pairwise

from pencilwood.vine.model import Piece, Position, Side, Vine, rise_mm

STUB_WORTH_CUTTING_MM = 20
"""A bare end shorter than this is left out of the drawing of cuts: shears cannot better it."""


@dataclass(frozen=True)
class Part:
    """The smallest stretch of wood that a cut can remove, with all that grows from it."""

    name: str
    position: Position
    piece: Piece
    start_mm: int
    end_mm: int
    """Where along the piece the part begins and ends."""
    grows_from: str | None
    """Name of the part below; None when it grows straight from the arm."""
    base_height_mm: int
    """Height of its foot above the arm."""

    @property
    def is_cane(self) -> bool:
        """Whether the part is a cane, that is, one-year wood."""
        return self.piece.is_cane

    @property
    def most(self) -> int:
        """The state of the uncut part: all buds of a cane, 1 for older wood."""
        return self.piece.buds if self.is_cane else 1

    def bud_height_mm(self, bud: int) -> int:
        """Height above the arm of counted bud `bud` (1 is the lowest)."""
        return self.base_height_mm + rise_mm(self.piece.lean, bud * self.piece.internode_mm)


@dataclass(frozen=True)
class Parts:
    """A vine divided into parts: position by position along the line, foot before tip."""

    vine: Vine
    parts: tuple[Part, ...]
    positions: tuple[Position, ...] = field(repr=False)

    @cached_property
    def index(self) -> Mapping[str, int]:
        """Number of the part with this name."""
        return {part.name: number for number, part in enumerate(self.parts)}

    @cached_property
    def place_of(self) -> Mapping[str, int]:
        """Number of the position with this name, along the line."""
        return {position.name: place for place, position in enumerate(self.positions)}

    @cached_property
    def parent(self) -> tuple[int, ...]:
        """For each part the number of the part it grows from, -1 for the arm."""
        return tuple(
            -1 if part.grows_from is None else self.index[part.grows_from] for part in self.parts
        )

    @cached_property
    def carries(self) -> tuple[tuple[int, ...], ...]:
        """For each part the numbers of all parts that fall with it."""
        falls: list[list[int]] = [[] for _ in self.parts]
        for number in range(len(self.parts)):
            for below in self.below(number):
                falls[below].append(number)
        return tuple(tuple(sorted(numbers)) for numbers in falls)

    def below(self, number: int) -> Iterator[int]:
        """Numbers of the parts that one grows from, the nearest first, down to the arm."""
        below = self.parent[number]
        while below >= 0:
            yield below
            below = self.parent[below]

    @cached_property
    def above(self) -> tuple[tuple[int, ...], ...]:
        """For each part the living canes that count as living wood above it.

        Above older wood stands what grows from it; above a cane stands every cane further
        along the same spur. Within a position the parts are in that order already.
        """
        return tuple(
            tuple(
                other
                for other in (self.of_position(part.position.name) if part.is_cane else falls)
                if other > number and self.parts[other].is_cane and self.parts[other].piece.is_alive
            )
            for number, (part, falls) in enumerate(zip(self.parts, self.carries, strict=True))
        )

    @cached_property
    def _by_position(self) -> Mapping[str, tuple[int, ...]]:
        numbers: dict[str, list[int]] = {position.name: [] for position in self.positions}
        for number, part in enumerate(self.parts):
            numbers[part.position.name].append(number)
        return {name: tuple(found) for name, found in numbers.items()}

    def of_position(self, name: str) -> tuple[int, ...]:
        """Numbers of the parts at one position."""
        return self._by_position[name]


def divide(vine: Vine) -> Parts:
    """Divide a vine into the parts that cuts can remove."""
    positions = vine.positions_along_line()
    parts: list[Part] = []
    for position in positions:
        for piece in position.pieces:
            if piece.grows_from is None:
                parts.extend(_grown(position, piece, None, 0))
    return Parts(vine, tuple(parts), positions)


def _grown(position: Position, piece: Piece, below: str | None, foot_mm: int) -> list[Part]:
    """The parts of a piece and of all that grows from it, foot first, canes before old wood."""
    name = position.name + piece.letter
    if piece.is_cane:
        return [Part(name, position, piece, 0, piece.length_mm, below, foot_mm)]
    children = [child for child in position.pieces if child.grows_from == piece.letter]
    joints = sorted({child.at_mm for child in children})
    ends = [0, *joints]
    if not joints or piece.length_mm - joints[-1] >= STUB_WORTH_CUTTING_MM:
        ends.append(piece.length_mm)
    parts: list[Part] = []
    for start_mm, end_mm in pairwise(ends):
        base = foot_mm + rise_mm(piece.lean, start_mm)
        parts.append(Part(name, position, piece, start_mm, end_mm, below, base))
        below = name
        growing = sorted(
            (child for child in children if child.at_mm == end_mm), key=lambda c: not c.is_cane
        )
        joint_mm = foot_mm + rise_mm(piece.lean, end_mm)
        for child in growing:
            parts.extend(_grown(position, child, below, joint_mm))
        if growing:
            name = f"{position.name}{piece.letter} above {growing[0].letter}"
    return parts


class CutError(ValueError):
    """A cut that cannot be made; `problem` is a short stable name for the reason."""

    def __init__(self, problem: str, part: str, **facts: int) -> None:
        super().__init__(f"{problem}: {part}")
        self.problem = problem
        self.part = part
        self.facts = facts


@dataclass(frozen=True, slots=True)
class Shortening:
    """Cut a cane above counted bud `buds`, so that so many buds stay."""

    part: str
    buds: int


@dataclass(frozen=True, slots=True)
class ThinningOut:
    """Take a whole part off where it grows, with all that grows from it."""

    part: str


@dataclass(frozen=True)
class Tie:
    """Bend a cane down and tie it along the wire on one side of the head; nothing comes off."""

    part: str
    side: Side


Cut = Shortening | ThinningOut | Tie


@dataclass(frozen=True)
class WoodLeft:
    """What is left of a vine: for each part its buds (cane) or 1 (older wood), 0 when gone."""

    parts: Parts
    states: tuple[int, ...]

    def state(self, part: str) -> int:
        """What is left of the part with this name."""
        return self.states[self.parts.index[part]]

    def is_spur(self, position: str) -> bool:
        """Whether a living bud is left at a position."""
        return any(
            self.states[number] > 0 and part.is_cane and part.piece.is_alive
            for number in self.parts.of_position(position)
            for part in (self.parts.parts[number],)
        )

    def living_above(self, number: int) -> bool:
        """Whether living wood is left above the part with this number."""
        # Asked for each piece of each pruning: any() would take twice as long.
        for other in self.parts.above[number]:  # noqa: SIM110
            if self.states[other] > 0:
                return True
        return False

    def is_cut_face(self, number: int) -> bool:
        """Whether the part was cut off itself, rather than fallen with the wood below it."""
        below = self.parts.parent[number]
        return self.states[number] == 0 and (below < 0 or self.states[below] > 0)

    def cut(self, cut: Cut) -> WoodLeft:
        """The wood left after one more cut.

        Raises CutError "no-such-wood", "already-gone", "not-a-cane", "no-such-bud" (facts:
        `left`, the buds still there) or "nothing-to-cut".
        """
        number = self.parts.index.get(cut.part)
        if number is None:
            raise CutError("no-such-wood", cut.part)
        if self.states[number] == 0:
            raise CutError("already-gone", cut.part)
        if isinstance(cut, ThinningOut):
            return self._with({number: 0, **dict.fromkeys(self.parts.carries[number], 0)})
        if not self.parts.parts[number].is_cane:
            raise CutError("not-a-cane", cut.part)
        if isinstance(cut, Tie):
            return self
        if not 1 <= cut.buds <= self.states[number]:
            raise CutError("no-such-bud", cut.part, left=self.states[number])
        if cut.buds == self.states[number]:
            raise CutError("nothing-to-cut", cut.part, left=self.states[number])
        return self._with({number: cut.buds})

    def _with(self, changed: Mapping[int, int]) -> WoodLeft:
        states = list(self.states)
        for number, state in changed.items():
            states[number] = state
        return WoodLeft(self.parts, tuple(states))


def uncut(parts: Parts) -> WoodLeft:
    """The vine before the first cut."""
    return WoodLeft(parts, tuple(part.most for part in parts.parts))
