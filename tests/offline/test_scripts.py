"""The scripts for reading offline are built from their sources."""

import subprocess
from pathlib import Path

import pytest


@pytest.mark.node
def test_they_are_up_to_date(project: Path, npm: str, tmp_path: Path) -> None:
    command = [npm, "run", "--silent", "bundle:offline", "--", f"--outdir={tmp_path}"]
    done = subprocess.run(command, cwd=project, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    fresh = {path.name: path.read_text("utf-8") for path in tmp_path.iterdir()}
    assert fresh.keys() == {"offline.js", "offline-worker.js", "iframe-worker.js"}
    for name, text in fresh.items():
        committed = (project / "site_assets" / name).read_text("utf-8")
        assert text == committed, f"run `make bundle` and commit site_assets/{name}"
