"""The published schemas know just the keys that the readers know."""

import json
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import jsonschema
import pytest
import yaml

from case_files import read, sample, with_slip
from pencilwood.cases import case_keys, example_file, profile_file, quiz_keys
from pencilwood.cases.fields import ListOf, OneOrMore, OneTableOf, Table
from pencilwood.cases.schema import FOLDER, as_text, schemas
from pencilwood.cases.vine_table import TableByForm

SAMPLES = {
    "tidy-vine.yml": "case",
    "rule/good.yml": "example",
    "rule/bad.yml": "example",
    "profile.yml": "profile",
    "first-day.yml": "quiz",
    "all-kinds.yml": "quiz",
}

TABLES = {
    "case": case_keys.CASE_TABLE,
    "example": example_file.EXAMPLE_TABLE,
    "profile": profile_file.profile_table(()),
    "quiz": quiz_keys.QUIZ_TABLE,
}


def published(name: str) -> dict[str, Any]:
    text = (FOLDER / f"{name}.schema.json").read_text(encoding="utf-8")
    schema: dict[str, Any] = json.loads(text)
    return schema


def complaints(name: str, text: str) -> list[str]:
    checker = jsonschema.Draft202012Validator(published(name))
    return [error.message for error in checker.iter_errors(yaml.safe_load(text))]


def table_keys(kind: object, path: str = "") -> Iterator[str]:
    """Every key that a reader knows, by its path."""
    if isinstance(kind, Table):
        for key in kind.keys:
            yield f"{path}/{key.name}{'' if key.required else '?'}"
            yield from table_keys(key.kind, f"{path}/{key.name}")
    elif isinstance(kind, OneTableOf):
        for table in kind.tables.values():
            yield from table_keys(table, path)
    elif isinstance(kind, TableByForm):
        for reading in kind.readings:
            yield from table_keys(reading.table, path)
    elif isinstance(kind, ListOf | OneOrMore):
        yield from table_keys(kind.kind, path)


def schema_keys(schema: dict[str, Any], path: str = "") -> Iterator[str]:
    """Every key that a schema knows, by its path."""
    for name, inner in schema.get("properties", {}).items():
        yield f"{path}/{name}{'' if name in schema.get('required', ()) else '?'}"
        yield from schema_keys(inner, f"{path}/{name}")
    for inner in (*schema.get("oneOf", ()), *schema.get("anyOf", ())):
        yield from schema_keys(inner, path)
    if "items" in schema:
        yield from schema_keys(schema["items"], path)


@pytest.mark.parametrize("name", sorted(schemas()))
def test_the_published_schema_is_current(name: str) -> None:
    text = (FOLDER / name).read_text(encoding="utf-8")
    assert text == as_text(schemas()[name]), "run python -m pencilwood.cases.schema"


def test_nothing_else_is_published() -> None:
    assert sorted(path.name for path in FOLDER.iterdir()) == sorted(schemas())


@pytest.mark.parametrize("name", TABLES)
def test_schema_and_reader_know_the_same_keys(name: str) -> None:
    jsonschema.Draft202012Validator.check_schema(published(name))
    known = sorted(table_keys(TABLES[name]))
    assert len(known) >= 5
    assert sorted(schema_keys(published(name))) == known


@pytest.mark.parametrize("name", TABLES)
def test_every_key_is_described(name: str) -> None:
    def undescribed(schema: dict[str, Any]) -> Iterator[str]:
        for key, inner in schema.get("properties", {}).items():
            if not inner.get("description", "").endswith((".", "?")):
                yield key
            yield from undescribed(inner)
        rows = [schema["items"]] if "items" in schema else []
        for inner in (*schema.get("oneOf", ()), *rows):
            yield from undescribed(inner)

    assert list(undescribed(published(name))) == []


@pytest.mark.parametrize(("name", "schema"), SAMPLES.items())
def test_good_files_pass_their_schema(name: str, schema: str) -> None:
    assert complaints(schema, sample(name)) == []


@pytest.mark.parametrize("name", [name for name in SAMPLES if not name.startswith("rule/good")])
def test_samples_name_their_schema(name: str) -> None:
    match = re.match(r"# yaml-language-server: \$schema=(\S+)\n", sample(name))
    assert match is not None
    folder = (Path(__file__).parent / "samples" / name).parent
    assert (folder / match[1]).resolve() == FOLDER / f"{SAMPLES[name]}.schema.json"


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("level: easy", "level: easy\nweather: cold"),
        ("level: easy\n", ""),
        ("level: easy", "level: simple"),
        ("trunk thickness: 55 mm", "trunk thickness: 55"),
        ("buds: 9, internode", "buds: many, internode"),
        ("buds: 9, internode", "buds: 0, internode"),
        ("age: 2 years", "age: 2"),
        ("{cane: a, from: m,", "{shoot: a, from: m,"),
        ("lean: out", "lean: sideways"),
        ("R1a], to: 2 buds", "R1a], to: 2"),
        ("target: {buds: 6 to 8}", "target: {buds: 7}"),
        ("title: {en: A tidy vine, es: Una cepa ordenada}", "title: A tidy vine"),
    ],
)
def test_editors_and_reader_refuse_the_same_slips(tmp_path: Path, old: str, new: str) -> None:
    text = with_slip(old, new)
    assert complaints("case", text)
    assert read(text, tmp_path)[0] is None


def test_lengths_of_the_reader_fit_the_schema() -> None:
    pattern = profile_file.any_bands_schema()["additionalProperties"]["anyOf"][0]["pattern"]
    for length in ("8 mm", "8mm", "1.5 m", "1,5 cm", "5/16 in", "1 1/2 in", "3 ft"):
        assert re.search(pattern, length), length
    for length in ("8", "mm", "8 km", "-8 mm", "8 mm or so"):
        assert not re.search(pattern, length), length
