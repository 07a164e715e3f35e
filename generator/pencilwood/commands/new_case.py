"""The dialogue of `pencilwood case new`: the measuring sheet, question by question."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from typing import Any

from pencilwood.cases import vine_keys as keys
from pencilwood.cases.csv_cells import Cell
from pencilwood.cases.field_columns import CONDITION_WORDS, LEAN_WORDS, WOOD_WORDS
from pencilwood.cases.field_sheet import vine_of
from pencilwood.cases.field_wood import Wood, vine_node
from pencilwood.cases.fields import Key
from pencilwood.cases.frame_checks import check_frame
from pencilwood.cases.vine_table import VINE
from pencilwood.cases.yaml_nodes import TextNode
from pencilwood.commands.asking import HERE, Terminal
from pencilwood.vine.forms.cordon import ONE_ARM_RIGHT, TWO_ARM_CORDON
from pencilwood.vine.model import Vine

Answers = dict[str, str]
"""What was answered, by the name of the line or the column."""

_FRAME: Mapping[str, Key[Any]] = {
    "trunk thickness": keys.TRUNK_THICKNESS,
    "cordon height": keys.CORDON_HEIGHT,
    "fruiting wire": keys.FRUITING,
    "catch wires": keys.FRUITING,
    "top wire": keys.TOP,
    "trimmed at": keys.TRIMMED_AT,
    "arm length": keys.ARM_LENGTH,
    "arm thickness": keys.ARM_THICKNESS,
}
_ARM = ("arm length", "arm thickness")
_OF_PIECE: Mapping[str, tuple[Key[Any], ...]] = {
    "cane": (keys.BUDS, keys.INTERNODE, keys.CANE_THICKNESS),
    "old": (keys.AGE, keys.OLD_LENGTH, keys.OLD_THICKNESS),
}
_LETTERS = {"cane": "abcdefghijkl", "old": "mnopqrstuvwxyz"}
_SIDES = {"left": "L", "right": "R"}


def ask_vine(terminal: Terminal) -> Vine:
    """A measured vine; raises StoppedError when the answers end."""
    frame, sides = _frame(terminal)
    while True:
        wood: list[Wood] = []
        for side in sides:
            for number in range(1, keys.MOST_POSITIONS):
                given = _position(terminal, f"{_SIDES[side]}{number}", frame, wood)
                if not given:
                    break
                wood += given
        report = terminal.report()
        vine = vine_of(HERE, HERE, _cells_of_frame(frame), wood, report)
        if vine is not None:
            return vine
        if wood:
            terminal.tell_findings(report)
        else:
            terminal.tell(terminal.say("no-wood"))


def _frame(terminal: Terminal) -> tuple[Answers, tuple[str, ...]]:
    """Trunk, wires and arms, asked again with the same answers on offer if they don't fit."""
    answers: Answers = {}
    while True:
        forms = (TWO_ARM_CORDON.name, ONE_ARM_RIGHT.name)
        form = terminal.choose(terminal.say("form"), forms, answers.get("form", forms[0]))
        sides: tuple[str, ...] = tuple(_SIDES)
        if form == ONE_ARM_RIGHT.name:
            sides = (terminal.choose(terminal.say("side"), _SIDES, "right"),)
        answers = {"form": form, **dict(_lines(terminal, sides, answers))}
        report = terminal.report()
        node = vine_node(HERE, HERE, _cells_of_frame(answers), (), report)
        row = VINE.kind.read(node, "", terminal.report())
        if row is not None:
            check_frame(row, report)
        if not report.errors:
            return answers, sides
        terminal.tell_findings(report)
        terminal.tell(terminal.say("again"))


def _lines(
    terminal: Terminal, sides: tuple[str, ...], before: Answers
) -> Iterator[tuple[str, str]]:
    cordon = ""
    arms = [f"{side} {size}" for side in sides for size in _ARM]
    for name in [*(line for line in _FRAME if line not in _ARM), *arms]:
        key = _FRAME[name.removeprefix("left ").removeprefix("right ")]
        default = before.get(name, cordon if name == "fruiting wire" else "")
        if name == "catch wires":
            yield name, _catch_wires(terminal, key, default)
            continue
        text = terminal.ask_for(terminal.say(name), key.kind, key.name, default)
        cordon = text if name == "cordon height" else cordon
        yield name, text


def _catch_wires(terminal: Terminal, key: Key[Any], default: str) -> str:
    """Several heights on one line."""
    while True:
        text = terminal.ask(terminal.say("catch wires"), default)
        report = terminal.report()
        for cell in _several(text):
            key.kind.read(TextNode(cell.place, cell.text), "catch", report)
        if not report.errors:
            return text
        terminal.tell_findings(report)


def _several(text: str) -> tuple[Cell, ...]:
    return tuple(Cell(HERE, part.strip()) for part in text.split(",") if part.strip())


def _cells_of_frame(answers: Answers) -> dict[str, tuple[Cell, ...]]:
    return {
        name: _several(text) if name == "catch wires" else (Cell(HERE, text),)
        for name, text in answers.items()
    }


def _position(terminal: Terminal, name: str, frame: Answers, before: list[Wood]) -> list[Wood]:
    """The wood of one position; empty when there is no further position on this arm."""
    while True:
        question = terminal.say("at", position=name)
        at = terminal.ask_for(question, keys.AT.kind, "at", may_skip=True)
        if not at:
            return []
        wood = [_wood(name, at, piece) for piece in _pieces(terminal, name)]
        report = terminal.report()
        vine_of(HERE, HERE, _cells_of_frame(frame), [*before, *wood], report)
        if wood and not report.errors:
            return wood
        terminal.tell_findings(report)
        terminal.tell(terminal.say("again"))


def _wood(position: str, at: str, piece: Answers) -> Wood:
    answers = {"position": position, "at": at, **piece}
    return Wood(HERE, {name: Cell(HERE, text) for name, text in answers.items() if text})


def _pieces(terminal: Terminal, position: str) -> Iterator[Answers]:
    letters: list[str] = []
    old: list[str] = []
    while len(letters) < keys.MOST_PIECES:
        question = terminal.say("wood", position=position)
        kind = terminal.choose(question, WOOD_WORDS, may_skip=True)
        if not kind:
            return
        piece = _piece(terminal, position, kind, letters, old)
        letters.append(piece["letter"])
        if kind == "old":
            old.append(piece["letter"])
        yield piece


def _piece(
    terminal: Terminal, position: str, kind: str, letters: list[str], old: list[str]
) -> Answers:
    free = next((one for one in _LETTERS[kind] if one not in letters), "")
    letter_key: Key[Any] = keys.CANE if kind == "cane" else keys.OLD
    question = terminal.say("letter", position=position)
    letter = terminal.ask_for(question, letter_key.kind, "letter", free)
    name = position + letter

    def ask(key: Key[Any], default: str = "") -> str:
        return terminal.ask_for(terminal.say(key.name, piece=name), key.kind, key.name, default)

    piece = {"wood": kind, "letter": letter, **_growth(terminal, name, old, ask)}
    for key in _OF_PIECE[kind]:
        piece[key.name] = ask(key)
    for column, names in (("condition", CONDITION_WORDS), ("lean", LEAN_WORDS)):
        piece[column] = terminal.choose(terminal.say(column, piece=name), names, names[0])
    return piece


def _growth(
    terminal: Terminal, name: str, old: list[str], ask: Callable[[Key[Any]], str]
) -> Answers:
    """What the piece grows from; not asked where there is nothing but the arm."""
    if not old:
        return {}
    question = terminal.say("from", piece=name)
    below = terminal.ask_for(question, keys.FROM.kind, "from", may_skip=True)
    return {"from": below, "up": ask(keys.UP)} if below else {}
