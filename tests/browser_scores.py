"""Prunings scored as the browser scores them, by its own modules under Node.js."""

from __future__ import annotations

import json
import subprocess
from collections.abc import Iterable
from pathlib import Path
from typing import Any

from pencilwood.score.sheet import dump


def scored_by_browser(
    node: str, project: Path, folder: Path, rows: Iterable[object]
) -> list[dict[str, Any]]:
    """One result for each row of `sheet`, `states` and `cuts`; see `tests/js/score_many.mjs`."""
    source = folder / "vines.jsonl"
    source.write_text("".join(f"{dump(row)}\n" for row in rows), encoding="utf-8")
    answer = subprocess.run(
        [node, str(project / "tests/js/score_many.mjs"), str(source)],
        capture_output=True,
        text=True,
        check=True,
    )
    return [json.loads(line) for line in answer.stdout.splitlines()]
