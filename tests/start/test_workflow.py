"""The publishing workflow of a new handbook: what it runs, what it may do, what it rests on."""

import re
from importlib.metadata import version
from pathlib import Path
from typing import Any

import pytest
import yaml


@pytest.fixture
def workflow(started: Path) -> dict[str, Any]:
    text = (started / ".github" / "workflows" / "publish.yml").read_text("utf-8")
    # BaseLoader: the key `on` is a word, not a yes.
    told: dict[str, Any] = yaml.load(text, Loader=yaml.BaseLoader)  # noqa: S506
    return told


def test_it_checks_before_it_builds_and_builds_before_it_publishes(
    workflow: dict[str, Any],
) -> None:
    build, deploy = workflow["jobs"]["build"], workflow["jobs"]["deploy"]
    ran = [step["run"] for step in build["steps"] if "run" in step]
    assert ran[-2:] == ["pencilwood check", "pencilwood build"]
    assert build["steps"][-1]["with"]["path"] == "site"
    assert deploy["needs"] == "build"
    assert "pull_request" not in workflow["on"], "nobody else's change is published"


def test_it_may_do_no_more_than_it_needs(workflow: dict[str, Any]) -> None:
    assert workflow["permissions"] == {}
    assert workflow["jobs"]["build"]["permissions"] == {"contents": "read"}
    assert workflow["jobs"]["deploy"]["permissions"] == {"pages": "write", "id-token": "write"}


def test_everything_it_uses_has_a_version(workflow: dict[str, Any], started: Path) -> None:
    used = [
        step["uses"] for job in workflow["jobs"].values() for step in job["steps"] if "uses" in step
    ]
    assert used
    assert [one for one in used if not re.fullmatch(r"[\w-]+/[\w-]+@v\d+\.\d+\.\d+", one)] == []
    pins = (started / "requirements.txt").read_text("utf-8").splitlines()
    assert pins[-1] == f"pencilwood=={version('pencilwood')}"
