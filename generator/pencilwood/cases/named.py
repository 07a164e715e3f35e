"""A file of entries that the trainer names: `hand-width: {...}`, one under another."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from pencilwood.cases.case_keys import SLUG
from pencilwood.cases.fields import Row, Schema, Table, found
from pencilwood.cases.report import Report, quoted
from pencilwood.cases.yaml_nodes import LostNode, MapNode, Node


@dataclass(frozen=True)
class Named:
    """Entries of one form, each under a short name that the trainer chose."""

    about: str
    entry: Table

    def read(self, node: Node, report: Report) -> Iterator[tuple[str, Row]]:
        """Every entry that is a block of lines, with its name, in the file's order."""
        if isinstance(node, LostNode):
            return
        if not isinstance(node, MapNode):
            report.add(node.place, "not-named", found=found(node, report))
            return
        for name, inner in node.pairs:
            if SLUG.read(name, quoted(name.text)[1:-1], report) is None:
                continue
            row = self.entry.read(inner, name.text, report)
            if row is not None:
                yield name.text, row

    def schema(self) -> Schema:
        """The file as JSON Schema: short names, and the same form under each."""
        return {
            "type": "object",
            "description": self.about,
            "propertyNames": {"pattern": f"^{SLUG.pattern}$"},
            "additionalProperties": self.entry.schema(),
        }
