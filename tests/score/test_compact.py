"""The short form of a scoring sheet holds all of it."""

import json
import random
import subprocess
from pathlib import Path
from typing import Any

import pytest

from pencilwood.plan import plan_for
from pencilwood.rules import BANDS
from pencilwood.score.compact import compact
from pencilwood.score.judge import target_for
from pencilwood.score.sheet import as_json, as_text, compile_sheet, dump
from pencilwood.vine.bands import default_limits
from pencilwood.vine.wood import divide
from vines import SAMPLES, random_vine

LIMITS = default_limits(BANDS)
RANDOM_VINES = 150


def sheets() -> list[dict[str, Any]]:
    rng = random.Random(20261126)
    vines = [make() for make in SAMPLES.values()]
    vines += [random_vine(rng, positions=rng.randint(1, 14)) for _ in range(RANDOM_VINES)]
    made = []
    for number, vine in enumerate(vines):
        parts = divide(vine)
        sheet = compile_sheet(parts, LIMITS, target_for(vine, LIMITS))
        made.append(dict(as_json(sheet, f"vine-{number}", plan_for(sheet).lost, 80)))
    return made


@pytest.mark.node
def test_the_browser_makes_the_same_sheet_of_it(node: str, project: Path, tmp_path: Path) -> None:
    whole = sheets()
    source = tmp_path / "short.jsonl"
    source.write_text("\n".join(dump(compact(one)) for one in whole) + "\n", encoding="utf-8")
    answer = subprocess.run(
        [node, str(project / "tests/js/unpack_many.mjs"), str(source)],
        capture_output=True,
        text=True,
        check=True,
    )
    unpacked = [json.loads(line) for line in answer.stdout.splitlines()]
    assert len(unpacked) == len(whole)
    for one, wanted in zip(unpacked, whole, strict=True):
        assert one == json.loads(dump(wanted)), wanted["case"]


def test_it_takes_half_the_room_at_most() -> None:
    whole = sheets()
    short = [dump(compact(one)) for one in whole]
    assert 2 * sum(map(len, short)) < sum(len(dump(one)) for one in whole)


@pytest.mark.parametrize("name", SAMPLES)
def test_the_text_of_a_sheet_is_all_of_it(name: str) -> None:
    parts = divide(SAMPLES[name]())
    sheet = compile_sheet(parts, LIMITS, target_for(parts.vine, LIMITS))
    whole = as_json(sheet, "a-vine", 5, 80)
    assert as_text(sheet, "a-vine", 5, 80) == dump(whole)
    assert (whole["case"], whole["planLost"], whole["passMark"]) == ("a-vine", 5, 80)
