"""Whatever happens to a build, the last good site stays whole and the next build succeeds.

Builds are killed at chosen moments here; `make kill-test` kills many at random ones.
"""

import errno
import os
import shutil
import signal
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from pencilwood import cli
from pencilwood.site import lock as locking
from pencilwood.site import publish as publishing
from pencilwood.site import swap as swapping
from pencilwood.site.lock import BusyError

Snapshot = Callable[[Path], dict[str, bytes]]

linux_only = pytest.mark.skipif(not sys.platform.startswith("linux"), reason="uses Linux signals")

KILLED_AT = """
import os, shutil, signal, subprocess, sys
from pathlib import Path
from pencilwood.site import publish as publishing, swap as swapping

root, site, new, moment = *map(Path, sys.argv[1:4]), sys.argv[4]
clear, rename, rmtree = publishing.clear, Path.rename, shutil.rmtree
done = []

def die(*_, **__):
    os.kill(os.getpid(), signal.SIGKILL)

def built(root, language, lock, command, option, fresh, papers):
    shutil.copytree(new, fresh, dirs_exist_ok=True)
    if moment == "built, not swapped":
        die()
    return subprocess.CompletedProcess((), 0, "", "")

def renamed(path, to):
    rename(path, to)
    if moment == f"{path.name} renamed":
        die()

def rmtree_some(folder, **_):
    if moment == "the old one half cleared" and (folder / "new").is_dir():
        for path in sorted((folder / "new").rglob("*.html"))[:3]:
            path.unlink()
        die()
    rmtree(folder, ignore_errors=True)

publishing.run_mkdocs = built
Path.rename = renamed
swapping.shutil.rmtree = rmtree_some
if moment == "swapped, the old one there":
    swapping.clear = die
if moment.endswith(" renamed"):
    swapping._exchanged = lambda one, other: False
publishing.publish(root, site)
"""


def make_site(folder: Path, words: str) -> Path:
    """A site of a few files, every one different from that of other words."""
    for name in ("index", "vines", "cases/one", "cases/two", "es/index"):
        page = folder / f"{name}.html"
        page.parent.mkdir(parents=True, exist_ok=True)
        page.write_text(f"{words} {name}", "utf-8")
    (folder / "assets" / "pencilwood").mkdir(parents=True)
    (folder / "assets" / "pencilwood" / "vine.css").write_text(words, "utf-8")
    return folder


def instead_of_mkdocs(new: Path) -> Callable[..., subprocess.CompletedProcess[str]]:
    """A build that is done at once: it copies a site that is there already."""

    def build(
        root: Path, language: str, lock: int, *arguments: str, papers: str
    ) -> subprocess.CompletedProcess[str]:
        shutil.copytree(new, arguments[-1], dirs_exist_ok=True)
        return subprocess.CompletedProcess((), 0, "", "")

    return build


@pytest.fixture
def place(tmp_path: Path, project: Path) -> Path:
    """A folder with a handbook of which only the settings are read, and the sites of two builds."""
    (tmp_path / "book").mkdir()
    shutil.copy(project / "mkdocs.yml", tmp_path / "book")
    make_site(tmp_path / "first", "first")
    make_site(tmp_path / "second", "second")
    make_site(tmp_path / "site", "first")
    return tmp_path


def beside(place: Path) -> set[str]:
    return {path.name for path in place.iterdir()} - {"book", "first", "second"}


MOMENTS = {
    "built, not swapped": "first",
    "swapped, the old one there": "second",
    "the old one half cleared": "second",
    # Where a system cannot exchange two names there is a moment without a site.
    "site renamed": None,
    "new renamed": "second",
}


@linux_only
@pytest.mark.parametrize(("moment", "left"), MOMENTS.items())
def test_a_build_killed_at_the_swap_leaves_one_whole_site(
    place: Path, monkeypatch: pytest.MonkeyPatch, snapshot: Snapshot, moment: str, left: str | None
) -> None:
    site = place / "site"
    command = [sys.executable, "-c", KILLED_AT]
    paths = [str(one) for one in (place / "book", site, place / "second")]
    done = subprocess.run([*command, *paths, moment], capture_output=True, check=False)
    assert done.returncode == -signal.SIGKILL, done.stderr.decode()
    assert ".site.building" in beside(place)
    if left is None:
        assert not site.exists()
        publishing.mend(site)
    assert snapshot(site) == snapshot(place / (left or "first"))
    monkeypatch.setattr(publishing, "run_mkdocs", instead_of_mkdocs(place / "first"))
    assert publishing.publish(place / "book", site).succeeded
    assert snapshot(site) == snapshot(place / "first")
    assert beside(place) == {"site"}


@linux_only
def test_linux_has_no_moment_without_a_site(place: Path) -> None:
    """The paths change names in one step; a reader of the old site meets the new one."""
    waiting = swapping.waiting_folder(place / "site")
    make_site(waiting / "new", "new")
    try:
        exchanged = swapping._exchanged(waiting / "new", place / "site")
    except OSError as error:
        pytest.fail(str(error))
    assert exchanged, "the file system under the tests knows no exchange"
    assert (place / "site" / "index.html").read_text("utf-8") == "new index"
    assert (waiting / "new" / "index.html").read_text("utf-8") == "first index"


@pytest.mark.parametrize("can_exchange", [True, False])
@pytest.mark.parametrize("there", [True, False])
def test_a_new_site_is_put_in_place(
    place: Path,
    monkeypatch: pytest.MonkeyPatch,
    snapshot: Snapshot,
    there: bool,
    can_exchange: bool,
) -> None:
    if not there:
        shutil.rmtree(place / "site")
    if not can_exchange:
        monkeypatch.setattr(swapping, "_exchanged", cannot_exchange)
    monkeypatch.setattr(publishing, "run_mkdocs", instead_of_mkdocs(place / "second"))
    assert publishing.publish(place / "book", place / "site").succeeded
    assert snapshot(place / "site") == snapshot(place / "second")
    assert beside(place) == {"site"}


def cannot_exchange(*_: object) -> bool:
    return False


def no_room(*_: object, **__: object) -> None:
    raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC), "somewhere")


WRITES: dict[str, Callable[[pytest.MonkeyPatch], None]] = {
    "the lock": lambda patch: patch.setattr(os, "open", no_room),
    "the folder": lambda patch: patch.setattr(Path, "mkdir", no_room),
    "the new site": lambda patch: patch.setattr(publishing, "run_mkdocs", no_room),
    "the exchange": lambda patch: patch.setattr(swapping, "_exchanged", no_room),
    "the renames": lambda patch: (
        patch.setattr(swapping, "_exchanged", cannot_exchange),
        patch.setattr(Path, "rename", no_room),
    )[0],
}


@pytest.mark.parametrize("write", WRITES)
def test_no_room_at_any_write_leaves_the_site(
    place: Path, monkeypatch: pytest.MonkeyPatch, snapshot: Snapshot, write: str
) -> None:
    before = snapshot(place / "site")
    with monkeypatch.context() as patch:
        patch.setattr(publishing, "run_mkdocs", instead_of_mkdocs(place / "second"))
        WRITES[write](patch)
        with pytest.raises(OSError, match="No space left"):
            publishing.publish(place / "book", place / "site")
    assert snapshot(place / "site") == before
    assert beside(place) == {"site"}


def test_moving_in_fails_and_the_old_site_comes_back(
    place: Path, monkeypatch: pytest.MonkeyPatch, snapshot: Snapshot
) -> None:
    real = Path.rename

    def rename(path: Path, to: Path) -> Path:
        if path.name == "new":
            no_room()
        return real(path, to)

    before = snapshot(place / "site")
    monkeypatch.setattr(publishing, "run_mkdocs", instead_of_mkdocs(place / "second"))
    monkeypatch.setattr(swapping, "_exchanged", cannot_exchange)
    monkeypatch.setattr(Path, "rename", rename)
    with pytest.raises(OSError, match="No space left"):
        publishing.publish(place / "book", place / "site")
    assert snapshot(place / "site") == before
    assert beside(place) == {"site"}


def test_a_lock_file_of_a_dead_build_stops_nobody_and_a_live_one_does(place: Path) -> None:
    site = place / "site"
    (place / ".site.lock").write_text("left behind", "utf-8")
    with locking.only_builder(site):
        with pytest.raises(BusyError), locking.only_builder(site):
            pytest.fail("two builds hold one lock")
        # Another site beside it is another matter.
        with locking.only_builder(place / "site-two"):
            pass
    with locking.only_builder(site):
        pass
    assert beside(place) == {"site"}


def test_a_site_whose_build_runs_is_left_to_it(place: Path) -> None:
    """Between the two renames of a system without exchange."""
    site = place / "site"
    with locking.only_builder(site):
        swapping.waiting_folder(site).mkdir()
        site.rename(swapping.waiting_folder(site) / "old")
        publishing.mend(site)
        assert not site.exists()
    publishing.mend(site)
    assert (site / "index.html").read_text("utf-8") == "first index"


REFUSED = {
    "en": "pencilwood: {file}: this disk can only be read; take another folder, or another disk\n",
    "es": "pencilwood: {file}: este disco solo se puede leer; use otra carpeta u otro disco\n",
}


@pytest.mark.parametrize("language", REFUSED)
def test_a_disk_that_can_only_be_read_is_told_once(
    sample: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
    language: str,
) -> None:
    file = sample / ".site.lock"

    def read_only(*_: object) -> None:
        raise OSError(errno.EROFS, os.strerror(errno.EROFS), str(file))

    monkeypatch.setattr(os, "open", read_only)
    assert cli.main(["build", "--root", str(sample), "--language", language]) == 2
    told = capsys.readouterr()
    assert told.out == ""
    assert told.err == REFUSED[language].format(file=file)


@linux_only
def test_a_folder_that_nobody_may_write_to(
    sample: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    # Even for the administrator: the kernel's own folder takes no files.
    assert cli.main(["build", "--root", str(sample), "--site", "/sys/a-site"]) == 2
    told = capsys.readouterr().err
    assert told.startswith("pencilwood: /sys/.a-site.lock: ")
    assert told.count("\n") == 1
