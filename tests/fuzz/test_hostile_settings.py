"""Wrong settings in `mkdocs.yml`: one clear line each, and nothing of the trainer's is touched."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from fuzz.settings_rows import GOOD, ROWS, SLOW_ROWS, Setting
from pencilwood.cli import main
from pencilwood.site.publish import publish
from small_handbook import check, make_small

Kept = dict[str, tuple[bytes, int]]


def kept(folder: Path) -> Kept:
    """Every file below a folder and when it was last written; what we keep of our work apart."""
    return {
        path.relative_to(folder).as_posix(): (path.read_bytes(), path.stat().st_mtime_ns)
        for path in sorted(folder.rglob("*"))
        if path.is_file() and ".pencilwood-cache" not in path.parts
    }


@pytest.fixture
def handbook(tmp_path: Path) -> Path:
    """A handbook with a quiz, a last good site, and something of the trainer's beside it."""
    root = make_small(tmp_path / "home" / "handbook", "tidy-vine")
    for name in ("quizzes/notes.txt", "site/assets/pencilwood/a.css", "site/index.html"):
        (root / name).parent.mkdir(parents=True, exist_ok=True)
        (root / name).write_text("mine", "utf-8")
    for name in ("photo.jpg", "other/letter.txt"):
        (root.parent / name).parent.mkdir(exist_ok=True)
        (root.parent / name).write_text("mine", "utf-8")
    return root


def build(root: Path, row: Setting, language: str) -> str:
    (root / "mkdocs.yml").write_text(row.text, "utf-8")
    before = kept(root.parent)
    published = publish(root, root / "site", language)
    assert not published.succeeded
    assert kept(root.parent) == before
    return published.told


@pytest.mark.parametrize("row", ROWS, ids=[row.reason for row in ROWS])
def test_each_wrong_setting_is_told_in_one_line(row: Setting, handbook: Path) -> None:
    assert build(handbook, row, "en") == f"mkdocs.yml:{row.said}"
    if row.said_es:
        assert build(handbook, row, "es") == f"mkdocs.yml:{row.said_es}"


@pytest.mark.slow
@pytest.mark.parametrize("row", SLOW_ROWS, ids=[row.reason for row in SLOW_ROWS])
def test_what_the_site_generator_says_is_told_in_our_words(row: Setting, handbook: Path) -> None:
    assert build(handbook, row, "en") == f"mkdocs.yml:{row.said}"
    if row.said_es:
        assert build(handbook, row, "es") == f"mkdocs.yml:{row.said_es}"


def test_the_check_tells_them_too(handbook: Path) -> None:
    assert check(handbook) == []
    (handbook / "mkdocs.yml").write_text(GOOD.replace("- offline", "- offlin"), "utf-8")
    assert [one.rpartition("(")[2] for one in check(handbook)] == ["no-such-plugin)"]


def test_so_does_the_preview(handbook: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (handbook / "mkdocs.yml").write_text(GOOD.replace("docs_dir: content", "docs_dir: /"), "utf-8")
    assert main(["preview", "--root", str(handbook)]) == 1
    assert "(not-a-choice)" in capsys.readouterr().out


def test_settings_that_are_a_link_out(handbook: Path) -> None:
    (handbook.parent / "mkdocs.yml").write_text(GOOD, "utf-8")
    (handbook / "mkdocs.yml").unlink()
    (handbook / "mkdocs.yml").symlink_to("../mkdocs.yml")
    told = publish(handbook, handbook / "site").told
    assert told.startswith("mkdocs.yml:1:1: this is a link out of the handbook's folder")


def test_settings_that_are_a_folder(handbook: Path) -> None:
    (handbook / "mkdocs.yml").unlink()
    (handbook / "mkdocs.yml").mkdir()
    told = publish(handbook, handbook / "site").told
    assert told == "mkdocs.yml:1:1: this is a folder; expected a file (is-a-folder)"


@pytest.mark.slow
@pytest.mark.parametrize("folder", ["quizzes", "..", "../other", "content/cases", "new/../quizzes"])
def test_who_runs_the_site_generator_alone_loses_nothing_either(
    handbook: Path, folder: str
) -> None:
    """It clears the folder that it is told to write into, whatever stands there."""
    before = kept(handbook.parent)
    done = subprocess.run(
        [sys.executable, "-m", "mkdocs", "build", "--site-dir", folder],
        cwd=handbook,
        env={**os.environ, "NO_MKDOCS_2_WARNING": "1"},
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 1
    assert "Traceback" not in done.stderr
    assert "holds something else than a built handbook" in done.stderr or "docs_dir" in done.stderr
    assert kept(handbook.parent) == before
