"""Reads the small, plain part of YAML that a notebook needs, and keeps every place.

Every value is text: nothing turns `no` into a refusal or `012` into ten. What makes a file mean
something other than it shows (aliases, merge keys, tags, a key given twice) is refused.
This is the only module that knows the YAML library.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path
from typing import NoReturn, Protocol

import yaml

from pencilwood.cases.report import Report, quoted
from pencilwood.cases.source import first_unseen, read_text
from pencilwood.cases.syntax import (
    BEGINS_AT_CONTEXT,
    BEHIND_QUOTE,
    OTHERWISE,
    is_behind_quote,
    is_comma_in_number,
    is_cut_off,
    slip,
)
from pencilwood.places import Place

DEEPEST = 12
"""A case nests six deep; deeper than this nobody writes by hand."""

_SHORT = 60
"""Letters of a text that may well stand in many files: a name, a number, a condition."""

MOST_NODES = 40_000
"""Three times what the fullest vine needs; reading more than a few times that takes long."""


@dataclass(frozen=True)
class TextNode:
    """One value, exactly as it was typed."""

    place: Place
    text: str


@dataclass(frozen=True)
class ListNode:
    """Several things under one another, each behind a dash."""

    place: Place
    items: tuple[Node, ...]


@dataclass(frozen=True)
class MapNode:
    """Lines of the form `name: value`; no name comes twice."""

    place: Place
    pairs: tuple[tuple[TextNode, Node], ...]


@dataclass(frozen=True)
class LostNode:
    """Something that was refused; a finding about it is already noted."""

    place: Place


def is_whole(node: Node) -> bool:
    """Whether nothing in it, however deep, was refused before its meaning was looked at."""
    if isinstance(node, MapNode):
        return all(is_whole(value) for _, value in node.pairs)
    if isinstance(node, ListNode):
        return all(is_whole(item) for item in node.items)
    return not isinstance(node, LostNode)


class _Mark(Protocol):
    """A place as the parser counts it."""

    line: int
    column: int


Node = TextNode | ListNode | MapNode | LostNode


Parser = type[yaml.SafeLoader] | type[yaml.CSafeLoader]

QUICK_PARSER: Parser | None = getattr(yaml, "CSafeLoader", None)
"""The parser in C, eight times as fast, where the library was built with it. Both give the same
places for a file that both can read; tests compare them."""


class _TooMuchError(Exception):
    """Stops the reading of a file that nests too deep or holds too much."""


def read_nodes(path: Path, report: Report, shown_as: str | None = None) -> Node | None:
    """The content of one file; None when it cannot be read at all (a finding says why).

    `shown_as` is the file's name in findings. Other findings are noted and reading goes on, so
    that a trainer sees them together with what is wrong in the values.
    """
    file = shown_as if shown_as is not None else str(path)
    text = read_text(path, file, report)
    return None if text is None else parse_nodes(text, report, file)


def parse_nodes(text: str, report: Report, file: str) -> Node | None:
    """The content of a text; see `read_nodes`."""
    if QUICK_PARSER is not None:
        quick = report.fresh()
        try:
            root = _Composer(text, quick, file, QUICK_PARSER).compose()
        except (yaml.YAMLError, ValueError, OverflowError):
            pass  # The careful parser says better what is wrong, and where.
        except _TooMuchError:
            report.take(quick)
            return None
        else:
            report.take(quick)
            return root
    return _parse_carefully(text, report, file)


def _parse_carefully(text: str, report: Report, file: str) -> Node | None:
    composer = _Composer(text, report, file, yaml.SafeLoader)
    try:
        return composer.compose()
    except _TooMuchError:
        return None
    except yaml.MarkedYAMLError as error:
        name = slip(error.context or "", error.problem or "")
        mark = error.problem_mark or error.context_mark
        if mark and is_behind_quote(name, text, mark.line, mark.column):
            report.add(composer.last, BEHIND_QUOTE, line=mark.line + 1)
            return None
        if name in BEGINS_AT_CONTEXT and error.context_mark is not None:
            mark = error.context_mark
        report.add(_place(mark, file) if mark else composer.last, name)
    except (yaml.YAMLError, ValueError, OverflowError):
        # The parser turns an escape such as "\U99999999" into a character without checking it.
        report.add(composer.last, OTHERWISE)
    return None


def _place(mark: _Mark | None, file: str) -> Place:
    """The one spot where the parser's count from 0 becomes an editor's count from 1."""
    if mark is None:
        return Place(file)
    return Place(file, mark.line + 1, mark.column + 1)


def _shared(text: str) -> str:
    """The same text, held once for all files: most that is short stands in every one of them."""
    return sys.intern(text) if len(text) < _SHORT else text


class _Composer:
    """Builds nodes from the parser's events; going by events keeps deep nesting harmless."""

    def __init__(self, text: str, report: Report, file: str, parser: Parser) -> None:
        self._events: Iterator[yaml.Event] = yaml.parse(text, Loader=parser)
        self._report = report
        self._lines = text.splitlines()
        self._file = file
        self._nodes = 0
        self.last = Place(file)
        """Where the latest thing began that could be read."""

    def compose(self) -> Node | None:
        """The one document; what a second one means nobody can tell."""
        root: Node | None = None
        for event in self._events:
            if isinstance(event, yaml.DocumentStartEvent):
                if root is not None:
                    self._report.add(_place(event.start_mark, self._file), "second-document")
                    return None
                root = self._node(next(self._events), 0)
        if root is None or (isinstance(root, TextNode) and not root.text.strip()):
            self._report.add(Place(self._file), "empty-file")
            return None
        return root

    def _node(self, event: yaml.Event, depth: int) -> Node:
        place = self.last = _place(event.start_mark, self._file)
        self._nodes += 1
        if depth > DEEPEST or self._nodes > MOST_NODES:
            self._refuse_all(place, deep=depth > DEEPEST)
        if isinstance(event, yaml.AliasEvent):
            self._report.add(place, "alias", mark=f"*{event.anchor}")
            return LostNode(place)
        if not isinstance(event, yaml.ScalarEvent | yaml.CollectionStartEvent):
            raise TypeError(f"nothing in a file begins with {event}")
        self._refuse_marks(event, place)
        if isinstance(event, yaml.ScalarEvent):
            return self._text(event, place)
        if isinstance(event, yaml.SequenceStartEvent):
            return ListNode(place, tuple(self._items(depth)))
        return MapNode(place, tuple(self._pairs(depth)))

    def _refuse_all(self, place: Place, *, deep: bool) -> NoReturn:
        if deep:
            self._report.add(place, "too-deep")
        else:
            self._report.add(place, "too-many-parts", most=MOST_NODES)
        raise _TooMuchError

    def _refuse_marks(
        self, event: yaml.ScalarEvent | yaml.CollectionStartEvent, place: Place
    ) -> None:
        """Anchors and tags are refused, and what they stand before is read all the same."""
        if event.anchor is not None:
            self._report.add(place, "anchor", mark=f"&{event.anchor}")
        if event.tag is not None:
            self._report.add(place, "tag")

    def _text(self, event: yaml.ScalarEvent, place: Place) -> Node:
        unseen = first_unseen(event.value)
        if unseen is None:
            return TextNode(place, _shared(event.value))
        self._report.add(place, "unseen-character", code=f"U+{ord(unseen[0]):04X}")
        return LostNode(place)

    def _after_its_name(
        self, value: TextNode, event: yaml.Event, name_end: _Mark | None
    ) -> TextNode:
        """The same; where nothing is given, it is missed behind its name.

        In `{from: , up: 6 cm}` the parsers count to different places.
        """
        nothing = isinstance(event, yaml.ScalarEvent) and not (
            event.value or event.style or event.anchor or event.tag
        )
        if not nothing or name_end is None:
            return value
        return replace(value, place=Place(self._file, name_end.line + 1, name_end.column + 2))

    def _items(self, depth: int) -> Iterator[Node]:
        for event in self._events:
            if isinstance(event, yaml.SequenceEndEvent):
                return
            yield self._node(event, depth + 1)

    def _pairs(self, depth: int) -> list[tuple[TextNode, Node]]:
        first: dict[str, int] = {}
        pairs: list[tuple[TextNode, Node]] = []
        for event in self._events:
            if isinstance(event, yaml.MappingEndEvent):
                break
            key = self._node(event, depth + 1)
            following = next(self._events)
            value = self._node(following, depth + 1)
            if isinstance(value, TextNode) and isinstance(event, yaml.ScalarEvent):
                value = self._after_its_name(value, following, event.end_mark)
            if not isinstance(key, TextNode):
                if not isinstance(key, LostNode):
                    self._report.add(key.place, "no-plain-name")
            elif key.text == "<<":
                self._report.add(key.place, "merge-key")
            elif pairs and self._is_comma_in_number(pairs[-1][1], key, value):
                pairs[-1] = (pairs[-1][0], LostNode(pairs[-1][1].place))
            elif key.text in first:
                name = quoted(key.text)
                self._report.add(key.place, "given-twice", name=name, line=first[key.text])
            else:
                first[key.text] = key.place.line
                pairs.append((key, value))
                self._notice_cut(key, value, following)
        return pairs

    def _is_comma_in_number(self, before: Node, name: TextNode, value: Node) -> bool:
        """Whether a number was torn apart by its comma; if so, it is told."""
        if not (isinstance(before, TextNode) and isinstance(value, TextNode)) or value.text:
            return False
        if not is_comma_in_number(before.text, name.text):
            return False
        whole = f"{before.text},{name.text}"
        point = whole.replace(",", ".")
        self._report.add(before.place, "comma-in-number", whole=whole, point=point)
        return True

    def _notice_cut(self, name: TextNode, value: Node, event: yaml.Event) -> None:
        """A text that goes on behind a number sign, which begins a note."""
        if not isinstance(value, TextNode) or not isinstance(event, yaml.ScalarEvent):
            return
        end = event.end_mark
        if event.style or end is None or end.line >= len(self._lines):
            return
        if is_cut_off(name.text, value.text, self._lines[end.line][end.column :]):
            self._report.add(value.place, "text-cut-off")
