"""How a source is cited in a file: as it is printed, or with words of ours in each language."""

from __future__ import annotations

from dataclasses import dataclass

from pencilwood.cases.fields import Schema
from pencilwood.cases.kinds import Text, Words
from pencilwood.cases.reference import Title
from pencilwood.cases.report import Report
from pencilwood.cases.yaml_nodes import MapNode, Node


@dataclass(frozen=True)
class Cited:
    """A title as it is printed, for all readers; or, with words of ours, in each language."""

    longest: int
    """In characters."""

    def read(self, node: Node, key: str, report: Report) -> Title | None:
        """The title by language."""
        if isinstance(node, MapNode):
            spoken = Words(self.longest).read(node, key, report)
            return None if spoken is None else Title(spoken.words, as_printed=False)
        text = Text(longest=self.longest).read(node, key, report)
        if text is None:
            return None
        return Title(dict.fromkeys(report.languages, text), as_printed=True)

    def schema(self) -> Schema:
        """One text, or a text in each language."""
        return {"anyOf": [Text(longest=self.longest).schema(), Words(self.longest).schema()]}
