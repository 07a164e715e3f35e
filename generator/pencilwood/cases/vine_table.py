"""The block `vine:`: its form tells which table of keys it follows."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from pencilwood.cases import vine_keys as keys
from pencilwood.cases.fields import Key, Row, Schema, Table
from pencilwood.cases.forms import READING_OF, READINGS
from pencilwood.cases.forms.reading import FormReading
from pencilwood.cases.report import Report
from pencilwood.cases.yaml_nodes import MapNode, Node, TextNode


@dataclass(frozen=True)
class TableByForm:
    """A block of keys that are its form's."""

    readings: Sequence[FormReading]

    def read(self, node: Node, key: str, report: Report) -> Row | None:
        """The block, read by the table of the form it names, or by the first one."""
        return self._table(node).read(node, key, report)

    def _table(self, node: Node) -> Table:
        for name, value in node.pairs if isinstance(node, MapNode) else ():
            if name.text == keys.FORM.name and isinstance(value, TextNode):
                told = READING_OF.get(value.text.strip(), self.readings[0])
                return told.table
        return self.readings[0].table

    def schema(self) -> Schema:
        """The tables, each with the names of its own forms."""
        schemas = [_named(one.table.schema(), one.names) for one in self.readings]
        return schemas[0] if len(schemas) == 1 else {"oneOf": schemas}


def _named(schema: Schema, names: Sequence[str]) -> Schema:
    form = {**schema["properties"][keys.FORM.name], "enum": list(names)}
    return {**schema, "properties": {**schema["properties"], keys.FORM.name: form}}


VINE = Key("vine", TableByForm(READINGS), "The vine as you measured it, before any cut.")
