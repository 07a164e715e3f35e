"""How a source is cited in a file: as it is printed, or with words of ours in each language."""

from __future__ import annotations

from dataclasses import dataclass

from pencilwood.cases.fields import Schema
from pencilwood.cases.one_or_each import OneOrEach
from pencilwood.cases.reference import Title
from pencilwood.cases.report import Report
from pencilwood.cases.yaml_nodes import Node


@dataclass(frozen=True)
class Cited:
    """A title as it is printed, for all readers; or, with words of ours, in each language."""

    longest: int
    """In characters."""

    def read(self, node: Node, key: str, report: Report) -> Title | None:
        """The title by language."""
        said = OneOrEach(self.longest).read(node, key, report)
        return None if said is None else Title(said.words, as_printed=said.is_plain)

    def schema(self) -> Schema:
        """One text, or a text in each language."""
        return OneOrEach(self.longest).schema()
