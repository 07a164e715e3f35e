"""A new form joins without touching the others: no form's module knows another form's."""

import ast
from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path

import pytest

from pencilwood.cases.forms import READING_OF
from pencilwood.drawing.forms import LOOKS_OF
from pencilwood.rules import FORM_BANDS
from pencilwood.vine.forms import FORM_NAMES

GENERATOR = Path(__file__).resolve().parents[2] / "generator"
FOLDERS = ("forms", "of_forms")
SHARED = {"__init__", "reading", "looks", "arms"}
"""What all forms of a folder are made of or listed in; it speaks of none of them."""


def modules_of_forms() -> list[Path]:
    found = (path for folder in FOLDERS for path in GENERATOR.rglob(f"{folder}/*.py"))
    return sorted(path for path in found if path.stem not in SHARED)


def imported(path: Path) -> Iterator[str]:
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            yield from (f"{node.module}.{alias.name}" for alias in node.names)


def form_named(module: str) -> str | None:
    """The form whose module this is, or from which something is taken."""
    names = module.split(".")
    for folder, name in pairwise(names):
        if folder in FOLDERS and name not in SHARED and name.islower():
            return name
    return None


@pytest.mark.parametrize("path", modules_of_forms(), ids=lambda p: f"{p.parts[-3]}/{p.stem}")
def test_no_form_knows_another(path: Path) -> None:
    assert {form_named(name) for name in imported(path)} <= {None, path.stem}


def test_the_search_for_other_forms_finds_them() -> None:
    assert form_named("pencilwood.vine.forms.cordon.CORDONS") == "cordon"
    assert form_named("pencilwood.rules.of_forms.cordon") == "cordon"
    assert form_named("pencilwood.cases.forms.reading.FormReading") is None
    assert form_named("pencilwood.vine.model.Form") is None
    assert len(modules_of_forms()) >= 4


def test_every_form_has_all_its_parts() -> None:
    assert set(READING_OF) == set(LOOKS_OF) == set(FORM_BANDS) == set(FORM_NAMES)
