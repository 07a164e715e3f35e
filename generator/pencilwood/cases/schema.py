"""JSON Schemas of the trainer's files, made from the tables that read them.

Editors complete keys from them. They are published in `schemas/` beside this module; after a
change of the keys, write them anew with `python -m pencilwood.cases.schema`.
"""

from __future__ import annotations

import json
from pathlib import Path

from pencilwood.cases.blocks_file import (
    BLOCKS_NAME,
    FIGURES_NAME,
    any_figures_schema,
    blocks_table,
)
from pencilwood.cases.case_keys import CASE_TABLE
from pencilwood.cases.example_file import EXAMPLE_TABLE
from pencilwood.cases.fields import Schema
from pencilwood.cases.figures_file import FIGURES
from pencilwood.cases.glossary_file import glossary
from pencilwood.cases.profile_file import BANDS_NAME, FORMS_NAME, any_bands_schema, profile_table
from pencilwood.cases.quiz_keys import QUIZ_TABLE
from pencilwood.cases.safety_file import SAFETY_TABLE
from pencilwood.cases.sources_file import SOURCES
from pencilwood.vine.forms import FORM_NAMES

FOLDER = Path(__file__).with_name("schemas")
DIALECT = "https://json-schema.org/draft/2020-12/schema"


def schemas() -> dict[str, Schema]:
    """Each schema by the name of its file."""
    profile = profile_table(()).schema()
    bands = profile["properties"][BANDS_NAME]
    profile["properties"][BANDS_NAME] = {
        "description": bands["description"],
        **any_bands_schema(),
    }
    forms = profile["properties"][FORMS_NAME]
    profile["properties"][FORMS_NAME] = {
        "description": forms["description"],
        "type": "object",
        "propertyNames": {"enum": list(FORM_NAMES)},
        "additionalProperties": any_bands_schema(),
    }
    blocks = blocks_table(()).schema()
    block_row = blocks["properties"][BLOCKS_NAME]["items"]
    block_row["properties"][FIGURES_NAME] = any_figures_schema()
    made = {
        "blocks": blocks,
        "case": CASE_TABLE.schema(),
        "example": EXAMPLE_TABLE.schema(),
        "figures": FIGURES.schema(),
        "glossary": glossary(()).schema(),
        "profile": profile,
        "quiz": QUIZ_TABLE.schema(),
        "safety": SAFETY_TABLE.schema(),
        "sources": SOURCES.schema(),
    }
    return {
        f"{name}.schema.json": {
            "$schema": DIALECT,
            "title": f"Pencilwood {name}",
            **schema,
        }
        for name, schema in made.items()
    }


def as_text(schema: Schema) -> str:
    """A schema as its file holds it."""
    return json.dumps(schema, indent=2, ensure_ascii=False) + "\n"


def write(folder: Path = FOLDER) -> None:
    """Write every schema into a folder."""
    folder.mkdir(exist_ok=True)
    for name, schema in schemas().items():
        (folder / name).write_text(as_text(schema), encoding="utf-8", newline="\n")


if __name__ == "__main__":
    write()
