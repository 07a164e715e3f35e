"""Puts the cells of a measuring sheet together as the `vine:` block of a case."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from pencilwood.cases.csv_cells import Cell
from pencilwood.cases.report import Report, quoted
from pencilwood.cases.yaml_nodes import ListNode, MapNode, Node, TextNode
from pencilwood.places import Place
from pencilwood.units import UnitError, parse_length, round_half_up

_OF_CANE = ("from", "up", "buds", "internode", "thickness", "condition", "lean")
_OF_OLD = ("from", "up", "age", "length", "thickness", "condition", "lean")
_ONE_YEAR = re.compile("1( years?)?")

Frame = Mapping[str, Sequence[Cell]]


@dataclass(frozen=True)
class Wood:
    """One line of the sheet: a piece of wood, its cells by the name of their column."""

    place: Place
    cells: Mapping[str, Cell]


@dataclass
class _Position:
    """A position while its pieces are gathered."""

    name: Cell
    at: Cell | None
    pieces: list[Node]


def vine_node(
    file: Place, headings: Place, frame: Frame, wood: Sequence[Wood], report: Report
) -> MapNode:
    """The block; what is missing in it is found by whoever reads it."""
    pairs = [
        *_lines(file, frame, "form", "trunk thickness", "cordon height"),
        (TextNode(file, "wires"), _wires(file, frame)),
        *_lines(file, frame, "trimmed at"),
        (TextNode(file, "arms"), _arms(file, frame)),
        (TextNode(headings, "positions"), _positions(headings, wood, report)),
    ]
    return MapNode(file, tuple(pairs))


Pairs = list[tuple[TextNode, Node]]


def _lines(file: Place, frame: Frame, *names: str, cut_off: str = "") -> Pairs:
    """Lines of one value; `cut_off` is the part of the name that the block itself tells."""
    pairs: Pairs = []
    for name in names:
        if name in frame:
            cells = frame[name]
            place = cells[0].place if cells else file
            key = name.removeprefix(cut_off).removesuffix(" wire")
            text = cells[0].text if cells else ""
            pairs.append((TextNode(place, key), TextNode(place, text)))
    return pairs


def _wires(file: Place, frame: Frame) -> MapNode:
    pairs = _lines(file, frame, "fruiting wire")
    if "catch wires" in frame:
        cells = frame["catch wires"]
        place = cells[0].place if cells else file
        items = tuple(TextNode(cell.place, cell.text) for cell in cells)
        pairs.append((TextNode(place, "catch"), ListNode(place, items)))
    pairs += _lines(file, frame, "top wire")
    return MapNode(file, tuple(pairs))


def _arms(file: Place, frame: Frame) -> MapNode:
    pairs: Pairs = []
    for side in ("left", "right"):
        names = (f"{side} arm length", f"{side} arm thickness")
        arm = _lines(file, frame, *names, cut_off=f"{side} arm ")
        if arm:
            place = arm[0][0].place
            pairs.append((TextNode(place, side), MapNode(place, tuple(arm))))
    return MapNode(file, tuple(pairs))


def _positions(headings: Place, wood: Sequence[Wood], report: Report) -> ListNode:
    """Positions in the sheet's order; an empty cell means the position of the line above."""
    found: list[_Position] = []
    for line in wood:
        name, at = line.cells.get("position"), line.cells.get("at")
        if name is None and not found:
            report.add(line.place, "csv-which-position")
            continue
        if name is not None and (not found or found[-1].name.text != name.text):
            found.append(_Position(name, at, []))
        here = found[-1]
        if at is not None and here.at is not None and _mm(at) != _mm(here.at):
            other = quoted(here.at.text)
            report.add(at.place, "csv-two-places", position=here.name.text, other=other)
        here.at = here.at or at
        here.pieces.append(_piece(line, report))
    return ListNode(headings, tuple(_position(one) for one in found))


def _mm(cell: Cell) -> int | str:
    try:
        return parse_length(cell.text)
    except UnitError:
        return cell.text


def _position(one: _Position) -> MapNode:
    pairs: Pairs = [(TextNode(one.name.place, "position"), _text(one.name))]
    if one.at is not None:
        pairs.append((TextNode(one.at.place, "at"), _text(one.at)))
    wood = ListNode(one.name.place, tuple(one.pieces))
    pairs.append((TextNode(one.name.place, "wood"), wood))
    return MapNode(one.name.place, tuple(pairs))


def _piece(line: Wood, report: Report) -> MapNode:
    kind, letter = line.cells.get("wood"), line.cells.get("letter")
    pairs: Pairs = []
    if kind is not None:
        told = letter or Cell(kind.place, "")
        pairs.append((TextNode(kind.place, kind.text), _text(told)))
    cells = dict(line.cells)
    is_cane = kind is not None and kind.text == "cane"
    if is_cane:
        _as_cane(cells, report)
    used = {name: cell for name, cell in cells.items() if name not in ("position", "at")}
    fitting = _OF_CANE if is_cane else _OF_OLD
    for name in (*fitting, *(name for name in used if name not in (*fitting, "wood", "letter"))):
        if name in used:
            pairs.append((TextNode(used[name].place, name), _text(used[name])))
    return MapNode(line.place, tuple(pairs))


def _as_cane(cells: dict[str, Cell], report: Report) -> None:
    """A cane's age is one; its length, if it is given, tells how far apart the buds are."""
    age = cells.get("age")
    if age is not None and _ONE_YEAR.fullmatch(age.text):
        del cells["age"]
    elif age is not None:
        report.add(cells.pop("age").place, "csv-old-cane", found=quoted(age.text))
    length, buds = cells.get("length"), cells.get("buds")
    if length is None or buds is None or not re.fullmatch("[0-9]{1,3}", buds.text):
        return
    length_mm = _mm(length)
    if "internode" in cells:
        report.add(cells.pop("length").place, "csv-length-or-internode")
    elif isinstance(length_mm, int):
        internode_mm = round_half_up(Fraction(length_mm, int(buds.text) + 1))
        cells["internode"] = Cell(length.place, f"{internode_mm} mm")
        del cells["length"]


def _text(cell: Cell) -> TextNode:
    return TextNode(cell.place, cell.text)
