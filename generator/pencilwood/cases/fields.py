"""Tables of keys: what a block of `name: value` lines may hold, read and described at once.

A table both reads a file and yields the JSON Schema that editors complete from, so the two
cannot drift apart. Readers note findings and never raise.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Generic, Protocol, TypeVar, cast

from pencilwood.cases.report import Fact, Report, quoted
from pencilwood.cases.yaml_nodes import ListNode, LostNode, MapNode, Node, TextNode, is_whole
from pencilwood.places import Place

T = TypeVar("T")
T_co = TypeVar("T_co", covariant=True)

Schema = dict[str, Any]


class Kind(Protocol[T_co]):
    """A kind of value: how it is read, and what an editor should know about it."""

    def read(self, node: Node, key: str, report: Report) -> T_co | None:
        """The value, or None when findings say what is wrong with it."""

    def schema(self) -> Schema:
        """The same kind as JSON Schema."""


@dataclass(frozen=True)
class Key(Generic[T]):
    """One name that a block of lines may give."""

    name: str
    kind: Kind[T]
    about: str
    """What it means, for editors."""
    required: bool = True


@dataclass(frozen=True)
class Placed(Generic[T]):
    """A value and where it stands."""

    value: T
    place: Place


@dataclass(frozen=True)
class Row:
    """A block of lines that has been read."""

    place: Place
    values: Mapping[str, object]
    """What could be read."""
    places: Mapping[str, Place]
    """Where each given key stands, also one whose value is wrong, in the file's order."""
    sound: bool
    """Whether nothing in the block, however deep, was found wrong."""

    def get(self, key: Key[T]) -> T | None:
        """The value of a key; None when it is not given or could not be read."""
        return cast("T | None", self.values.get(key.name))

    def need(self, key: Key[T]) -> T:
        """The value of a required key in a sound block; anything else is our own mistake."""
        return cast("T", self.values[key.name])

    def has(self, key: Key[Any]) -> bool:
        """Whether the key is given, rightly or wrongly."""
        return key.name in self.places

    def place_of(self, key: Key[Any]) -> Place:
        """Where the key stands, or the block when it is not given."""
        return self.places.get(key.name, self.place)


@dataclass(frozen=True)
class Table:
    """The keys of a block of lines; it is itself a kind of value."""

    about: str
    keys: tuple[Key[Any], ...]

    def read(self, node: Node, key: str, report: Report) -> Row | None:
        """The block, with a finding for each key that is unknown, missing or wrong."""
        if isinstance(node, LostNode):
            return None
        if not isinstance(node, MapNode):
            report.add(
                node.place,
                "not-lines" if key else "not-lines-at-all",
                key=key,
                names=", ".join(one.name for one in self.keys),
                found=found(node, report),
            )
            return None
        errors = report.errors
        known = {one.name: one for one in self.keys}
        values: dict[str, object] = {}
        places: dict[str, Place] = {}
        for name, value in node.pairs:
            places[name.text] = name.place
            if name.text in known:
                values[name.text] = known[name.text].kind.read(value, name.text, report)
        self._note_unknown(places, report)
        self._note_missing(node.place, places, report)
        sound = report.errors == errors and (errors == 0 or is_whole(node))
        return Row(node.place, values, places, sound=sound)

    def _note_unknown(self, places: Mapping[str, Place], report: Report) -> None:
        known = [key.name for key in self.keys]
        # A misspelt key most likely means one that is not given yet.
        free = [name for name in known if name not in places]
        for name, place in places.items():
            if name not in known:
                hint = report.hint(name, free if report.nearest(name, free) else known)
                report.add(place, "unknown-key", found=quoted(name), hint=hint)

    def _note_missing(self, place: Place, places: Mapping[str, Place], report: Report) -> None:
        known = [key.name for key in self.keys]
        # A misspelt key is already noted with "did you mean"; it is not missing as well.
        meant = {report.nearest(name, known) for name in places if name not in known}
        for key in self.keys:
            if key.required and key.name not in places and key.name not in meant:
                report.add(place, "missing-key", key=key.name)

    def schema(self) -> Schema:
        """The block as JSON Schema: its keys and no other."""
        schema: Schema = {
            "type": "object",
            "description": self.about,
            "properties": {
                key.name: {"description": key.about, **key.kind.schema()} for key in self.keys
            },
            "additionalProperties": False,
        }
        required = [key.name for key in self.keys if key.required]
        return {**schema, "required": required} if required else schema


@dataclass(frozen=True)
class ListOf(Generic[T]):
    """Several things of one kind, each behind a dash."""

    kind: Kind[T]
    fewest: int = 1
    most: int = 100

    def read(self, node: Node, key: str, report: Report) -> tuple[Placed[T], ...] | None:
        """All that can be read; each that cannot is a finding."""
        if isinstance(node, LostNode):
            return None
        if not isinstance(node, ListNode):
            report.add(node.place, "not-several", key=key, found=found(node, report))
            return None
        return self.read_items(node.items, node.place, key, report)

    def read_items(
        self, items: Sequence[Node], place: Place, key: str, report: Report
    ) -> tuple[Placed[T], ...]:
        """The items, and a finding when they are too few or too many."""
        if not self.fewest <= len(items) <= self.most:
            facts: dict[str, Fact] = {"fewest": self.fewest, "most": self.most, "count": len(items)}
            report.add(place, "wrong-count", key=key, **facts)
        read = ((self.kind.read(item, key, report), item.place) for item in items[: self.most])
        return tuple(Placed(value, place) for value, place in read if value is not None)

    def schema(self) -> Schema:
        """An array."""
        return {
            "type": "array",
            "items": self.kind.schema(),
            "minItems": self.fewest,
            "maxItems": self.most,
        }


@dataclass(frozen=True)
class OneOrMore(Generic[T]):
    """One thing, or several of its kind in square brackets or behind dashes."""

    kind: Kind[T]
    most: int = 100

    def read(self, node: Node, key: str, report: Report) -> tuple[Placed[T], ...] | None:
        """All that can be read."""
        if isinstance(node, LostNode):
            return None
        items = node.items if isinstance(node, ListNode) else (node,)
        return ListOf(self.kind, 1, self.most).read_items(items, node.place, key, report)

    def schema(self) -> Schema:
        """The thing itself or an array."""
        return {"anyOf": [self.kind.schema(), ListOf(self.kind, 1, self.most).schema()]}


@dataclass(frozen=True)
class OneTableOf:
    """A block whose first kind of key tells which table it follows, such as `cane` or `old`."""

    tables: Mapping[str, Table]
    misfit: str = "which-wood"
    """The finding for a block that no table, or more than one, would take."""

    def read(self, node: Node, key: str, report: Report) -> Row | None:
        """The block, read by the table whose telling key it gives; an empty row if none is."""
        if isinstance(node, LostNode):
            return None
        names = [] if not isinstance(node, MapNode) else [name.text for name, _ in node.pairs]
        told = [name for name in self.tables if name in names]
        if len(told) == 1:
            return self.tables[told[0]].read(node, key, report)
        given = ", ".join(names) if names else found(node, report)
        telling = " / ".join(f'"{name}"' for name in self.tables)
        report.add(node.place, self.misfit, telling=telling, found=given)
        return Row(node.place, {}, {}, sound=False)

    def schema(self) -> Schema:
        """Any of the tables."""
        return {"oneOf": [table.schema() for table in self.tables.values()]}


def typed_text(node: Node | None, name: str) -> str:
    """What stands behind `name:`, unread; empty where no single value does."""
    pairs = node.pairs if isinstance(node, MapNode) else ()
    values = (value for key, value in pairs if key.text == name)
    return next((value.text for value in values if isinstance(value, TextNode)), "")


def one_value(node: Node, key: str, report: Report) -> str | None:
    """The text of a node that must be one value; a finding when it is not, or is empty."""
    if isinstance(node, LostNode):
        return None
    if not isinstance(node, TextNode):
        report.add(node.place, "not-one-value", key=key, found=found(node, report))
        return None
    text = node.text.strip()
    if not text:
        report.add(node.place, "nothing-given", key=key)
        return None
    return text


def found(node: Node, report: Report) -> str:
    """What stands in the file, for the end of a finding."""
    if isinstance(node, TextNode):
        return quoted(node.text) if node.text.strip() else report.say("found-nothing")
    return report.say("found-several" if isinstance(node, ListNode) else "found-lines")
