"""Names and figures that only a later step can check: `{prunings: 2.5 lb, formula: 30+10}`."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from pencilwood.cases.fields import Schema, found, one_value
from pencilwood.cases.kinds import Choice
from pencilwood.cases.report import Report
from pencilwood.cases.yaml_nodes import LostNode, MapNode, Node
from pencilwood.places import Place


@dataclass(frozen=True)
class PairsRead:
    """The values by name, and where each stands."""

    values: Mapping[str, str]
    places: Mapping[str, Place]


@dataclass(frozen=True)
class Pairs:
    """Lines of any names, each with one value."""

    def read(self, node: Node, key: str, report: Report) -> PairsRead | None:
        """All values as text."""
        if isinstance(node, LostNode):
            return None
        if not isinstance(node, MapNode):
            report.add(node.place, "not-pairs", key=key, found=found(node, report))
            return None
        values: dict[str, str] = {}
        places: dict[str, Place] = {}
        for name, value in node.pairs:
            text = one_value(value, name.text, report)
            if text is not None:
                values[name.text] = text
                places[name.text] = name.place
        return PairsRead(values, places)

    def schema(self) -> Schema:
        """Any names with plain values."""
        return {"type": "object", "additionalProperties": {"type": ["string", "number"]}}


@dataclass(frozen=True)
class YesNo:
    """`true` or `false`."""

    def read(self, node: Node, key: str, report: Report) -> bool | None:
        """The answer."""
        return Choice({"true": True, "false": False}).read(node, key, report)

    def schema(self) -> Schema:
        """A boolean: that is what an editor takes the bare word for."""
        return {"type": "boolean"}
