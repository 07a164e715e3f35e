"""The rules of the house that no other tool watches."""

import json
import re
import subprocess
import sys
from pathlib import Path

import pytest

LONGEST_MODULE = 300
# A module may be longer only with a reason, for example a table that must stay in one place.
LONGER_WITH_REASON: dict[str, int] = {}


def run(*command: str, cwd: Path) -> subprocess.CompletedProcess[str]:
    return subprocess.run(command, cwd=cwd, capture_output=True, text=True, check=False)


def source_files(project: Path) -> list[Path]:
    folders = ("generator/pencilwood", "tests", "site_assets/js", "site_assets/css")
    found = [
        path
        for folder in folders
        for pattern in ("*.py", "*.mjs", "*.css")
        for path in sorted((project / folder).rglob(pattern))
    ]
    assert found, "no source files found: the folders have moved"
    return found


def test_no_module_is_too_long(project: Path) -> None:
    too_long = []
    for path in source_files(project):
        name = path.relative_to(project).as_posix()
        lines = len(path.read_text(encoding="utf-8").splitlines())
        if lines > LONGER_WITH_REASON.get(name, LONGEST_MODULE):
            too_long.append(f"{name}: {lines} lines")
    assert not too_long, "\n".join(too_long)


def test_no_exception_for_a_long_module_is_stale(project: Path) -> None:
    stale = [
        name
        for name in LONGER_WITH_REASON
        if not (project / name).is_file()
        or len((project / name).read_text(encoding="utf-8").splitlines()) <= LONGEST_MODULE
    ]
    assert not stale


def test_browser_tools_are_pinned_and_name_no_private_registry(project: Path) -> None:
    wanted = json.loads((project / "package.json").read_text("utf-8"))["devDependencies"]
    assert all(re.fullmatch(r"\d+\.\d+\.\d+", version) for version in wanted.values())
    lock = json.loads((project / "package-lock.json").read_text("utf-8"))["packages"]
    sources = {entry["resolved"] for entry in lock.values() if "resolved" in entry}
    assert {url for url in sources if not url.startswith("https://registry.npmjs.org/")} == set()
    assert all("integrity" in entry for name, entry in lock.items() if name)


def test_layers(project: Path) -> None:
    tool = Path(sys.executable).with_name("lint-imports")
    done = run(str(tool), "--no-logo", "--no-cache", cwd=project)
    assert done.returncode == 0, done.stdout + done.stderr


@pytest.mark.node
def test_browser_modules(project: Path, npm: str) -> None:
    done = run(npm, "test", cwd=project)
    assert done.returncode == 0, done.stdout + done.stderr
    ran = re.search(r"^\S tests (\d+)$", done.stdout, re.MULTILINE)
    assert ran is not None, done.stdout
    assert int(ran[1]) > 0, "node --test found no test"


@pytest.mark.node
def test_browser_types(project: Path, npm: str) -> None:
    done = run(npm, "run", "--silent", "types", cwd=project)
    assert done.returncode == 0, done.stdout + done.stderr


@pytest.mark.node
def test_the_built_scripts_are_up_to_date(project: Path, npm: str, tmp_path: Path) -> None:
    done = run(npm, "run", "--silent", "bundle", "--", f"--outdir={tmp_path}", cwd=project)
    assert done.returncode == 0, done.stderr
    fresh = [path.relative_to(tmp_path) for path in tmp_path.rglob("*.js")]
    assert len(fresh) == 6
    for name in fresh:
        committed = (project / "site_assets" / name).read_text("utf-8")
        built = (tmp_path / name).read_text("utf-8")
        assert built == committed, f"run `make bundle` and commit site_assets/{name.as_posix()}"
