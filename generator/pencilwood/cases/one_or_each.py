"""A short text that serves all readers as it is, or stands there in each language."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from pencilwood.cases.fields import Schema
from pencilwood.cases.kinds import Text, Words
from pencilwood.cases.report import Report
from pencilwood.cases.yaml_nodes import MapNode, Node


@dataclass(frozen=True)
class Said:
    """What somebody reads of it."""

    words: Mapping[str, str]
    """In each language."""
    is_plain: bool
    """Whether one text serves all, as a person's name or a printed title does."""


@dataclass(frozen=True)
class OneOrEach:
    """`Ana Torres`, or `{en: The training crew, es: La cuadrilla}`."""

    longest: int = 200

    def read(self, node: Node, key: str, report: Report) -> Said | None:
        """The text by language."""
        if isinstance(node, MapNode):
            spoken = Words(self.longest).read(node, key, report)
            return None if spoken is None else Said(spoken.words, is_plain=False)
        text = Text(longest=self.longest).read(node, key, report)
        return None if text is None else Said(dict.fromkeys(report.languages, text), is_plain=True)

    def schema(self) -> Schema:
        """One text, or a text in each language."""
        return {"anyOf": [Text(longest=self.longest).schema(), Words(self.longest).schema()]}
