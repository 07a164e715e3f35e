"""Python and the browser show the same, word for word, on a thousand random inputs a sum."""

from __future__ import annotations

import json
import random
import subprocess
from collections import Counter
from pathlib import Path
from typing import Any

import pytest

from block_inputs import random_texts, read_texts
from pencilwood.block.answer import as_texts
from pencilwood.block.errors import BlockError
from pencilwood.block.for_browser import page_data
from pencilwood.block.questions import QUESTIONS, Question
from pencilwood.units import UnitSystem
from pencilwood.words import LANGUAGES

INPUTS_PER_SUM = 1000
UNIT_SYSTEMS: tuple[UnitSystem, ...] = ("metric", "us")
# Most random inputs of a sum must give numbers, or the comparison would be an empty one.
LEAST_ANSWERED = 300


def _row(rng: random.Random, question: Question) -> dict[str, Any]:
    units = rng.choice(UNIT_SYSTEMS)
    texts = random_texts(rng, question, units)
    language = rng.choice(LANGUAGES)
    return {"question": question.name, "language": language, "units": units, "texts": texts}


def _python(row: dict[str, Any]) -> dict[str, Any]:
    try:
        given = read_texts(row["question"], row["texts"], row["units"])
        answer = QUESTIONS[row["question"]].answer(**given)
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
