"""Numbers that README.md tells are those of the demo handbook."""

import json
import re
from pathlib import Path

import pytest

from pencilwood.site.starter.selection import VINES

NUMBERS = {"three": 3, "six": 6, "two hundred": 200}


def told(project: Path, pattern: str) -> str:
    """What README says at the one place that is like `pattern`."""
    (found,) = re.findall(pattern, (project / "README.md").read_text("utf-8"))
    return str(found)


def test_quizzes_and_practice_vines_are_counted(project: Path) -> None:
    quizzes = NUMBERS[told(project, r"(\w+) quizzes and")]
    assert quizzes == len(list((project / "quizzes").glob("*.yml")))
    practice = NUMBERS[told(project, r"quizzes and ([\w ]+) practice vines")]
    assert f"practice vines: {practice}\n" in (project / "content/profile.yml").read_text("utf-8")


def test_a_new_handbook_has_as_many_vines_as_it_says(project: Path) -> None:
    assert NUMBERS[told(project, r"(\w+) vines to begin with")] == len(VINES)


@pytest.mark.slow
def test_a_phone_loads_about_as_much_as_it_says(project: Path, built_site: Path) -> None:
    worker = (built_site / "offline-worker.js").read_text("utf-8")
    described, _ = json.JSONDecoder().raw_decode(worker.split("self.PENCILWOOD_BUILD=", 1)[1])
    megabytes = int(told(project, r"about (\d+) MB to load"))
    assert described["download"] == pytest.approx(megabytes * 1_000_000, rel=0.2)
