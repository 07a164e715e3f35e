"""The bytes of a site are the same however, wherever and whenever it is built."""

import os
import subprocess
import sys
from collections.abc import Callable, Iterator
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from pencilwood import kept
from pencilwood.site import workers
from pencilwood.site.assemble import Site, assemble
from pencilwood.site.handbook import open_handbook

ANOTHER_DAY = """
import datetime
import time

LATER_S = 400 * 86_400 + 12_345
real = time.time
time.time = lambda: real() + LATER_S
time.time_ns = lambda: int(time.time() * 10**9)


class Later(datetime.datetime):
    @classmethod
    def now(cls, tz=None):
        return cls.fromtimestamp(time.time(), tz)

    @classmethod
    def utcnow(cls):
        return cls.fromtimestamp(time.time(), datetime.timezone.utc).replace(tzinfo=None)

    today = now


class LaterDay(datetime.date):
    @classmethod
    def today(cls):
        return cls.fromtimestamp(time.time())


datetime.datetime, datetime.date = Later, LaterDay
"""
"""Read by Python before anything else, so that a whole build takes place on another day."""


@pytest.fixture
def as_before() -> Iterator[None]:
    before = kept.folder()
    yield
    kept.keep_in_folder(before)


def made(root: Path) -> tuple[object, ...]:
    handbook = open_handbook(root).handbook
    assert handbook is not None
    site: Site = assemble(handbook)
    late = {path: make() for path, make in site.waiting.items()}
    whole = (replace(site.whole(page), waits="") for page in site.pages)
    return tuple(map(repr, whole)), {**site.files, **late}


@pytest.mark.slow
def test_nothing_kept_all_kept_and_two_cores(
    sample: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, as_before: None
) -> None:
    profile = sample / "content" / "profile.yml"
    profile.write_text(
        "".join(
            "practice vines: 6\n" if line.startswith("practice vines:") else line
            for line in profile.read_text("utf-8").splitlines(keepends=True)
        ),
        "utf-8",
    )
    monkeypatch.setenv(workers.CORES, "1")
    monkeypatch.setenv(kept.WHERE, "off")
    plain = made(sample)
    monkeypatch.setenv(kept.WHERE, str(tmp_path / "kept"))
    monkeypatch.setenv(workers.CORES, "2")
    monkeypatch.setattr(workers, "PATIENCE", 0)
    assert made(sample) == plain
    assert list((tmp_path / "kept").glob("drawing/*"))
    monkeypatch.setenv(workers.CORES, "1")
    # All is there now, and what is damaged is made anew.
    for entry in sorted((tmp_path / "kept").glob("*/*"))[::5]:
        entry.write_bytes(b"damaged")
    assert made(sample) == plain
    # One case is edited: what is kept of the others is used, and nothing of the old wording stays.
    case = sample / "content" / "cases" / "tidy-vine.yml"
    text = case.read_text("utf-8")
    assert "A tidy vine" in text
    case.write_text(text.replace("A tidy vine", "A well-kept vine"), "utf-8")
    edited = made(sample)
    monkeypatch.setenv(kept.WHERE, "off")
    assert made(sample) == edited
    assert edited != plain


def files_of(folder: Path) -> dict[str, tuple[bytes, int]]:
    return {
        path.relative_to(folder).as_posix(): (path.read_bytes(), path.stat().st_mtime_ns)
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    }


@pytest.mark.slow
def test_another_day_folder_clock_language_and_order_of_hashes(
    sample: Path, tmp_path: Path, built: Path, snapshot: Callable[[Path], dict[str, bytes]]
) -> None:
    root = sample.rename(tmp_path / "Viñedo de José (copia)")
    (tmp_path / "sitecustomize.py").write_text(ANOTHER_DAY, "utf-8")
    today = "import datetime; print(datetime.date.today().toordinal())"
    elsewhere = {
        **os.environ,
        "TZ": "Pacific/Kiritimati",
        "PYTHONHASHSEED": "4242",
        "LC_ALL": "C",
        "LANG": "tr_TR.UTF-8",
        "PYTHONPATH": os.pathsep.join([str(tmp_path), os.environ.get("PYTHONPATH", "")]),
        kept.WHERE: "off",
        workers.CORES: "2",
    }
    told = subprocess.run([sys.executable, "-c", today], env=elsewhere, capture_output=True)
    assert int(told.stdout) > date.today().toordinal() + 390
    before = files_of(root)
    build = [str(Path(sys.executable).with_name("pencilwood")), "build", "--root", str(root)]
    done = subprocess.run(
        [*build, "--site", str(tmp_path / "site")], env=elsewhere, capture_output=True, umask=0o077
    )
    assert done.returncode == 0, done.stdout + done.stderr
    assert snapshot(tmp_path / "site") == snapshot(built)
    # Neither what a file holds nor when it was written has changed, and nothing is new.
    assert files_of(root) == before
