"""A vine's wood in words: the same facts that the drawing shows."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from pencilwood.pages.desk import Desk
from pencilwood.vine.long_wood import above_wire_mm, from_head_mm
from pencilwood.vine.model import Condition, Lean, Piece, Position, Vine
from pencilwood.vine.passes import DoneCut
from pencilwood.vine.wood import Part, Parts, Shortening, Tie


@dataclass(frozen=True)
class WoodRow:
    """One piece of wood as a row of the table."""

    name: str
    cells: tuple[tuple[str, str], ...]
    """Column and words; a column that says nothing of this piece is left out."""


@dataclass(frozen=True)
class PositionRows:
    """One spur position and its wood."""

    name: str
    at: str
    rows: tuple[WoodRow, ...]


def label(desk: Desk, part: Part) -> str:
    """What a part is called: `Cane L1a`, `Old wood L1m above cane a`."""
    if part.is_cane:
        return desk.say("wood.cane", name=part.name)
    name, _, cane = part.name.partition(" above ")
    if cane:
        return desk.say("wood.old-above", name=name, cane=cane)
    return desk.say("wood.old", name=name)


def label_named(desk: Desk, parts: Parts, name: str) -> str:
    """The same by the part's name; a position's name stays as it is."""
    number = parts.index.get(name)
    return name if number is None else label(desk, parts.parts[number])


def facts(desk: Desk, vine: Vine, part: Part) -> str:
    """What a learner must know of a part before cutting it, on one line."""
    piece = part.piece
    said = [desk.say("wood.thick", length=desk.length(piece.thickness_mm))]
    if part.is_cane:
        said.append(_counted(desk, "wood.buds-facts", piece.buds))
        said.extend(_where(desk, vine, part))
    else:
        said.append(_counted(desk, "wood.years", piece.age_years))
        said.append(desk.say("wood.long", length=desk.length(part.end_mm - part.start_mm)))
    if piece.condition is not Condition.SOUND:
        said.append(desk.say(f"wood.condition.{piece.condition}"))
    if piece.lean is not Lean.UP:
        said.append(desk.say_of(vine.own_words, f"wood.lean.{piece.lean}"))
    return ", ".join(said)


def _where(desk: Desk, vine: Vine, part: Part) -> Iterator[str]:
    """How high the lowest bud stands; of a cane that may be tied, where it begins."""
    if vine.form.tied:
        yield desk.say("wood.from-head", length=desk.length(from_head_mm(part)))
        above_mm = above_wire_mm(vine, part)
        if above_mm > 0:
            yield desk.say("wood.above-wire", length=desk.length(above_mm))
        return
    height_mm = part.bud_height_mm(1)
    key = "wood.low-bud" if height_mm >= 0 else "wood.low-bud-under"
    yield desk.say_of(vine.own_words, key, length=desk.length(abs(height_mm)))


def _counted(desk: Desk, key: str, n: int) -> str:
    return desk.say(f"{key}.{'one' if n == 1 else 'many'}", n=n)


def cut_words(desk: Desk, parts: Parts, done: DoneCut, *, made: bool = False) -> str:
    """One cut as a sentence: `Cane L1a: leave 2 buds`, or what was `made`: `2 buds left`."""
    name, ending = label_named(desk, parts, done.cut.part), ".made" if made else ""
    if isinstance(done.cut, Shortening):
        buds = done.cut.buds
        return desk.say(f"cut.to.{'one' if buds == 1 else 'many'}{ending}", part=name, buds=buds)
    if isinstance(done.cut, Tie):
        return desk.say(f"cut.tie.{done.cut.side}{ending}", part=name)
    return desk.say("cut.off.made" if made else "cut.off", part=name)


def wood_table(desk: Desk, vine: Vine) -> tuple[PositionRows, ...]:
    """Every position along the line with every piece that grows there."""
    return tuple(
        PositionRows(
            position.name,
            desk.say_of(vine.own_words, "wood.at", length=desk.length(position.at_mm)),
            tuple(_row(desk, vine, position, piece) for piece in position.pieces),
        )
        for position in vine.positions_along_line()
    )


def _row(desk: Desk, vine: Vine, position: Position, piece: Piece) -> WoodRow:
    key = "wood.cane" if piece.is_cane else "wood.old"
    return WoodRow(
        desk.say(key, name=position.name + piece.letter),
        tuple(_cells(desk, vine, position, piece)),
    )


def _cells(desk: Desk, vine: Vine, position: Position, piece: Piece) -> Iterator[tuple[str, str]]:
    yield desk.say("wood.thickness"), desk.length(piece.thickness_mm)
    if piece.is_cane:
        yield desk.say("wood.buds"), str(piece.buds)
    else:
        yield desk.say("wood.age"), _counted(desk, "wood.years", piece.age_years)
    yield desk.say("wood.length"), desk.length(piece.length_mm)
    yield desk.say("wood.where"), _origin(desk, vine, position, piece)
    lean = desk.say_of(vine.own_words, f"wood.lean.{piece.lean}")
    looks = [desk.say(f"wood.condition.{piece.condition}"), lean]
    yield desk.say("wood.looks"), ", ".join(looks)


def _origin(desk: Desk, vine: Vine, position: Position, piece: Piece) -> str:
    if piece.grows_from is None:
        return desk.say_of(vine.own_words, "wood.from-arm")
    below = position.name + piece.grows_from
    return desk.say("wood.from", piece=below, length=desk.length(piece.at_mm))
