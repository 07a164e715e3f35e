"""How much unfinished work a SCORM 1.2 record keeps: our figure against the fullest record."""

import json
import random
import subprocess
from collections.abc import Mapping
from pathlib import Path

import pytest

from pencilwood.packages.scorm.notes import case_notes
from pencilwood.packages.scorm.room import ROOM, most_for_quiz, most_for_vines, sure_cuts
from pencilwood.quiz.compiled import compile_quiz
from pencilwood.rules import BANDS
from pencilwood.score.judge import target_for
from pencilwood.score.sheet import as_json, compile_sheet, dump
from pencilwood.vine.bands import default_limits
from pencilwood.vine.wood import Parts, divide
from scorm_sample import VINE, sample
from vines import random_vine

LIMITS = default_limits(BANDS)
VINES = 60
SPARE = 100
"""What the figure may promise too little, for one vine with its brackets and versions."""


def sheet_of(parts: Parts) -> Mapping[str, object]:
    target = target_for(parts.vine, LIMITS)
    return as_json(compile_sheet(parts, LIMITS, target), "vine", 0, 80)


def fullest(node: str, project: Path, folder: Path, pages: list[dict[str, object]]) -> list[str]:
    """What the browser part makes of these pages when nothing more can be done on them."""
    file = folder / "pages.jsonl"
    file.write_text("\n".join(dump(page) for page in pages), encoding="utf-8")
    command = [node, str(project / "tests/js/pack_most.mjs"), str(file)]
    done = subprocess.run(command, capture_output=True, text=True, check=True)
    return [json.loads(line) for line in done.stdout.splitlines()]


@pytest.mark.node
def test_no_work_on_a_vine_is_longer_than_we_say(node: str, project: Path, tmp_path: Path) -> None:
    rng = random.Random(20261127)
    vines = [divide(random_vine(rng, positions=rng.randint(1, 14))) for _ in range(VINES)]
    pages: list[dict[str, object]] = [{"sheets": [sheet_of(one)], "quiz": None} for one in vines]
    for parts, text in zip(vines, fullest(node, project, tmp_path, pages), strict=True):
        most = most_for_vines([parts])
        assert most - SPARE <= len(text) <= most
        assert text.isascii()


@pytest.mark.node
@pytest.mark.parametrize("language", ["en", "es"])
def test_no_quiz_is_longer_than_we_say(
    node: str, project: Path, tmp_path: Path, language: str
) -> None:
    made = sample().quizzes[0].made
    parts = sample().case_by_slug[VINE].parts
    sheet = {**sheet_of(parts), "case": VINE}
    pages: list[dict[str, object]] = [{"sheets": [sheet], "quiz": compile_quiz(made, language)}]
    (text,) = fullest(node, project, tmp_path, pages)
    most = most_for_vines([parts]) + most_for_quiz(made.questions[language])
    assert most - 2 * SPARE <= len(text) <= most


def test_a_vine_of_more_wood_gives_a_warning_with_the_cuts_that_fit() -> None:
    proof = sample().case_by_slug[VINE]
    assert most_for_vines([proof.parts]) <= ROOM
    assert any("always fits" in note for note in case_notes(proof, "en"))
    # Three such vines on one page are too much for the record, and then some cuts still fit.
    three = [proof.parts] * 3
    assert most_for_vines(three) > ROOM
    cuts = sure_cuts(three, ROOM)
    assert 100 < cuts < sum(part.most for part in proof.parts.parts) * 3
