"""Real builds that are killed, starved of room, and started twice: the site stays whole."""

import os
import signal
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

import pytest

from pencilwood.site import publish as publishing
from pencilwood.site.lock import BusyError

Snapshot = Callable[[Path], dict[str, bytes]]

linux_only = pytest.mark.skipif(not sys.platform.startswith("linux"), reason="uses Linux signals")


def build_command(root: Path, *arguments: str) -> list[str]:
    return [sys.executable, "-m", "pencilwood.cli", "build", "--root", str(root), *arguments]


def wait_for(there: Callable[[], bool], process: "subprocess.Popen[bytes]") -> None:
    until = time.monotonic() + 60
    while not there():
        assert process.poll() is None, "the build ended before its moment came"
        assert time.monotonic() < until, "the moment never came"
        time.sleep(0.005)


@linux_only
@pytest.mark.slow
def test_real_builds_killed_starved_and_two_at_once(sample: Path, snapshot: Snapshot) -> None:
    site, waiting = sample / "site", sample / ".site.building"
    assert publishing.publish(sample, site).succeeded
    good = snapshot(site)
    _killed(sample, waiting.is_dir)
    assert snapshot(site) == good
    _killed(sample, lambda: any((waiting / "new").rglob("cases/*.html")))
    assert snapshot(site) == good
    assert waiting.is_dir()
    _starved(sample)
    assert snapshot(site) == good
    assert not waiting.exists()
    _two_at_once(sample, waiting)
    assert snapshot(site) == good
    assert {path.name for path in sample.iterdir()} == {"content", "mkdocs.yml", "quizzes", "site"}


def _killed(sample: Path, moment: Callable[[], bool]) -> None:
    """The build with all that it started, at once and without a word."""
    with subprocess.Popen(build_command(sample), start_new_session=True) as process:
        wait_for(moment, process)
        os.killpg(process.pid, signal.SIGKILL)


def _starved(sample: Path) -> None:
    """The system lets no file grow beyond 60 kB; the theme's own are larger."""
    limited = f"ulimit -f 60; exec {' '.join(build_command(sample, '--language', 'es'))}"
    done = subprocess.run(["bash", "-c", limited], capture_output=True, text=True, check=False)
    assert done.returncode == 1
    assert done.stderr.splitlines() == [
        f"{sample}/.site.building/new: no cabe en el disco; libere espacio e intente de nuevo",
        f"El manual no se construyó. {sample}/site está como estaba.",
    ]


def _two_at_once(sample: Path, waiting: Path) -> None:
    """Even when the first is killed and only its MkDocs goes on, the second keeps out."""
    first = subprocess.Popen(build_command(sample), start_new_session=True)
    wait_for((waiting / "new").is_dir, first)
    second = subprocess.run(build_command(sample), capture_output=True, text=True, check=False)
    assert second.returncode == 1
    assert second.stderr == (
        f"Another build is writing {sample}/site just now, so this one did nothing. "
        "Wait until it is done, then build again.\n"
    )
    os.kill(first.pid, signal.SIGKILL)
    first.wait()
    with pytest.raises(BusyError):
        publishing.publish(sample, sample / "site")
    until = time.monotonic() + 60
    while time.monotonic() < until:
        try:
            assert publishing.publish(sample, sample / "site").succeeded
        except BusyError:
            time.sleep(0.1)
        else:
            return
    pytest.fail("the lock of a build that ended was never free")
