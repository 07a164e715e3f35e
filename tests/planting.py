"""Plants hostile text in every text of a handbook's files.

Which values are text is read from the schemas, which are made of the tables that read the files:
a field that is added tomorrow is planted too. Names, which must be those of something else, are
found by `check` itself: what it refuses there is put back.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import dataclass, field
from itertools import takewhile
from pathlib import Path
from typing import Any

import yaml

from pencilwood.cases.schema import schemas
from pencilwood.findings import Finding
from pencilwood.site.handbook import Opened, open_handbook

MARK = "PWNED"
LIST = "[]"
ANYTHING = "^.+$"
# Ends a text, a comment, an attribute, a script and a style; Markdown; Typst. The technique is that
# of https://cheatsheetseries.owasp.org/cheatsheets/XSS_Filter_Evasion_Cheat_Sheet.html, the texts
# are our own. No digits and no braces: in most texts `check` refuses both.
SHORT = f"'\"><script>{MARK}()</script><img src=x onerror={MARK}()>--></script><!--"
MARKDOWN = f"[x](javascript:{MARK}()) ![x](//spy.example/x) `x` *x* #{MARK} $x$ \\#panic()"
LONG = f"{SHORT} </style></svg></title><svg onload={MARK}()> {MARKDOWN}"
HOSTILE = (LONG, SHORT, f"<b onclick={MARK}()>", f"<b>{MARK}")
MOST_TURNS = 12


@dataclass
class Value:
    """One value in a file: where it stands, as it was, and what is planted."""

    keys: tuple[str, ...]
    start: int
    end: int
    own: str
    """As it stands in the file, with quotes."""
    planted: int = 0
    """Which of the hostile texts; as many as there are: none of them."""

    tag: str = ""
    """Letters that no other value has, since many texts must differ from their neighbours."""
    is_name: bool = False
    """Whether it may have to be the name of something."""

    def text(self) -> str:
        if self.planted >= len(HOSTILE):
            return self.own
        return json.dumps(f"{HOSTILE[self.planted]} {self.tag}", ensure_ascii=False)


@dataclass
class PlantedFile:
    """A file whose values can be replaced one by one."""

    path: Path
    text: str
    values: list[Value] = field(default_factory=list)
    placed: list[tuple[int, int, Value]] = field(default_factory=list)
    """Line and column of each planted value, as the file was written last."""

    def write(self) -> None:
        parts, at = [], 0
        for value in self.values:
            parts += [self.text[at : value.start], value.text()]
            at = value.end
        self.path.write_text("".join([*parts, self.text[at:]]), "utf-8")
        self.placed = list(self._placed("".join([*parts, self.text[at:]])))

    def refuse(self, finding: Finding) -> bool:
        """Plant something milder where a finding points; False when nothing stands there."""
        line, column = finding.place.line, finding.place.column
        here = [one for one in self.placed if one[:2] == (line, column)]
        # Or it points at the key before a value.
        here = here or [
            one for one in self.placed if one[:2] == (line, column + len(f"{one[2].keys[-1]}: "))
        ]
        here = here or [one for one in self.placed if one[0] == line]
        names = [one for one in self._block(line, column) if one[2].is_name]
        for _, _, value in here or names or self._block(line, column):
            too_long = finding.name == "text-too-long"
            value.planted = value.planted + 1 if too_long else len(HOSTILE)
        return bool(here or self._block(line, column))

    def _block(self, line: int, column: int) -> list[tuple[int, int, Value]]:
        """The values below a place that stand further to the right than it."""
        after = [one for one in self.placed if one[0] >= line]
        return list(takewhile(lambda one: one[1] > column, after))

    def _placed(self, now: str) -> Iterator[tuple[int, int, Value]]:
        """Line and column of each planted value in the file as it is now."""
        moved = 0
        for value in self.values:
            start = value.start + moved
            if value.planted < len(HOSTILE):
                yield now.count("\n", 0, start) + 1, start - now.rfind("\n", 0, start), value
            moved += len(value.text()) - (value.end - value.start)


def planted_file(path: Path, schema: Any) -> PlantedFile:
    text = path.read_text("utf-8")
    made = PlantedFile(path, text)
    for keys, node in _scalars(yaml.compose(text, Loader=yaml.SafeLoader), ()):
        start, end = node.start_mark.index, node.end_mark.index
        kinds = set(_patterns(schema, keys))
        if kinds & {None, ANYTHING}:
            own = text[start:end].rstrip()
            tag = _letters(len(made.values))
            is_name = None not in kinds
            made.values.append(Value(keys, start, start + len(own), own, 0, tag, is_name))
    return made


def _scalars(node: Any, keys: tuple[str, ...]) -> Iterator[tuple[tuple[str, ...], Any]]:
    if isinstance(node, yaml.MappingNode):
        for name, value in node.value:
            yield from _scalars(value, (*keys, name.value))
    elif isinstance(node, yaml.SequenceNode):
        for value in node.value:
            yield from _scalars(value, (*keys, LIST))
    elif isinstance(node, yaml.ScalarNode):
        yield keys, node


def _patterns(schema: Any, keys: tuple[str, ...]) -> Iterator[str | None]:
    """What a schema wants of the text at a place; None for anything, also if it does not know."""
    for way in ("anyOf", "oneOf"):
        for one in schema.get(way, ()):
            yield from _patterns(one, keys)
    if not keys:
        if not {"enum", "const", "anyOf", "oneOf"} & schema.keys():
            yield schema.get("pattern")
        return
    name, *rest = keys
    inner = schema.get("items") if name == LIST else schema.get("properties", {}).get(name)
    if inner is None:
        inner = schema.get("additionalProperties")
    if isinstance(inner, dict):
        yield from _patterns(inner, tuple(rest))


def _letters(number: int) -> str:
    more, last = divmod(number, 26)
    return (_letters(more - 1) if more else "") + chr(ord("a") + last)


def schema_of(name: str) -> Any:
    """The schema of a file by its path in the handbook."""
    folders = {"content/cases": "case", "content/rules": "example", "quizzes": "quiz"}
    kind = next((one for folder, one in folders.items() if name.startswith(folder)), "")
    kind = kind or ("safety" if "safety" in name else Path(name).stem)
    return schemas()[f"{kind}.schema.json"]


def plant(root: Path) -> tuple[dict[str, PlantedFile], Opened]:
    """Plant all files below a handbook's folder until `check` has no more to say."""
    files = {
        name: planted_file(path, schema_of(name))
        for folder in ("content", "quizzes")
        for path in sorted((root / folder).rglob("*.yml"))
        if (name := path.relative_to(root).as_posix())
    }
    for _ in range(MOST_TURNS):
        for one in files.values():
            one.write()
        opened = open_handbook(root)
        errors = [one for one in opened.findings if one.level == "error"]
        if not errors:
            return files, opened
        moved = [files[one.place.file].refuse(one) for one in errors if one.place.file in files]
        assert any(moved), [one.render() for one in errors][:5]
    raise AssertionError([one.render() for one in errors][:5])
