"""Python and the browser show the same, word for word, on a thousand random inputs a sum."""

from __future__ import annotations

import json
import random
import subprocess
from collections import Counter
from pathlib import Path
from typing import Any

import pytest

from pencilwood.block.answer import as_texts
from pencilwood.block.errors import BlockError
from pencilwood.block.field import Field, Value
from pencilwood.block.for_browser import page_data
from pencilwood.block.measures import MEASURES
from pencilwood.block.questions import QUESTIONS, Question
from pencilwood.units import UnitSystem
from pencilwood.words import LANGUAGES

INPUTS_PER_SUM = 1000
UNIT_SYSTEMS: tuple[UnitSystem, ...] = ("metric", "us")
# Most random inputs of a sum must give numbers, or the comparison would be an empty one.
LEAST_ANSWERED = 300


def _number(rng: random.Random, field: Field, units: UnitSystem) -> str:
    measure = MEASURES[field.measure]
    low, high = (float(bound / measure.factor(units)) for bound in field.bounds())
    # Small values are as likely as large ones, and a few lie beyond the bounds.
    least = low or high / 1000
    value = least * (high * 1.01 / least) ** rng.random()
    if measure.whole:
        return str(int(value))
    return f"{value:.{rng.randint(0, 4)}f}".replace(".", rng.choice(".,"))


def _texts(rng: random.Random, field: Field, units: UnitSystem) -> list[str]:
    """What somebody may write into a field: one number, three, or a choice."""
    if field.choices:
        return [rng.choice(field.choices)]
    if not field.measure:
        return [f"{rng.randint(0, 99)}+{rng.randint(0, 30)}"]
    if not field.ranged or rng.random() < 0.6:
        return [_number(rng, field, units)]
    three = [_number(rng, field, units) for _ in range(3)]
    if rng.random() < 0.95:
        three.sort(key=lambda text: float(text.replace(",", ".")))
    return three


def _row(rng: random.Random, question: Question) -> dict[str, Any]:
    units = rng.choice(UNIT_SYSTEMS)
    optional = [name for name in question.optional if rng.random() < 0.6]
    texts = {
        field.name: _texts(rng, field, units)
        for field in question.fields
        if field.name in (*question.asked, *optional)
    }
    language = rng.choice(LANGUAGES)
    return {"question": question.name, "language": language, "units": units, "texts": texts}


def _python(row: dict[str, Any]) -> dict[str, Any]:
    question = QUESTIONS[row["question"]]
    by_name = {field.name: field for field in question.fields}
    given: dict[str, Value] = {}
    try:
        for name, texts in row["texts"].items():
            measure = by_name[name].measure
            unit = MEASURES[measure].unit(row["units"]) if measure else ""
            given[name] = by_name[name].read(f"{' to '.join(texts)} {unit}".strip())
        answer = question.answer(**given)
    except BlockError as error:
        return {"problem": error.problem, "field": error.field}
    return as_texts(answer, row["units"], row["language"])


@pytest.mark.node
@pytest.mark.slow
def test_the_browser_shows_the_same(node: str, project: Path, tmp_path: Path) -> None:
    rng = random.Random(20261125)
    rows = [_row(rng, one) for one in QUESTIONS.values() for _ in range(INPUTS_PER_SUM)]
    pages = {language: page_data(language, "metric") for language in LANGUAGES}
    source = tmp_path / "sums.jsonl"
    source.write_text("\n".join(json.dumps(row) for row in [pages, *rows]), encoding="utf-8")
    done = subprocess.run(
        [node, str(project / "tests/js/block_many.mjs"), str(source)],
        capture_output=True,
        text=True,
        check=True,
    )
    found = [json.loads(line) for line in done.stdout.splitlines()]
    assert len(found) == INPUTS_PER_SUM * len(QUESTIONS)
    answered: Counter[str] = Counter()
    for row, told in zip(rows, found, strict=True):
        assert told == _python(row), row
        answered[row["question"]] += "problem" not in told
    assert {name: n for name, n in answered.items() if n < LEAST_ANSWERED} == {}
