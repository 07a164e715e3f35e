"""Publishes a handbook: a new site takes the old one's place only when all of it is right."""

from __future__ import annotations

import os
import subprocess
import sys
from dataclasses import dataclass
from pathlib import Path

from pencilwood.cases.settings_file import CHAPTERS
from pencilwood.site.folders import CONFIG as CONFIG
from pencilwood.site.lock import BusyError, only_builder
from pencilwood.site.settings import in_our_words, look_at_settings
from pencilwood.site.swap import clear, put_back, swap, waiting_folder

LANGUAGE = "PENCILWOOD_LANGUAGE"
"""The environment variable by which our own command tells MkDocs what language to speak."""
PAPERS_SIZE = "PENCILWOOD_PAPERS"
"""The one by which it says that the site carries papers, and of which size."""
_MARK = "assets/pencilwood"
"""A folder that every site of ours has; without it a folder is not ours to replace."""


class NotOursError(Exception):
    """The folder that was named holds something else than a built handbook."""


@dataclass(frozen=True)
class Published:
    """How a build went."""

    site: Path
    succeeded: bool
    told: str
    """What the build said: findings, one a line, and troubles."""


def publish(root: Path, site: Path, language: str = "en", papers: str = "") -> Published:
    """Build into a folder beside `site` and put it in its place, or leave all as it was.

    Raises NotOursError, BusyError when another build writes this site, and OSError when nothing
    can be written beside it. However a build ends, be it killed, `site` is the old or the new one,
    whole; what a killed build left is cleared by the next.
    """
    site = site.resolve()
    root = root.resolve()
    mend(site)
    check_replaceable(root, site)
    settings, findings = look_at_settings(root, language)
    if settings is None:
        return Published(site, False, "\n".join(one.render(language) for one in findings))
    site.parent.mkdir(parents=True, exist_ok=True)
    with only_builder(site) as lock:
        put_back(site)
        clear(site)
        try:
            fresh = waiting_folder(site) / "new"
            fresh.mkdir(parents=True)
            make_room_for_chapters(root)
            done = run_mkdocs(
                root, language, lock, "build", "--site-dir", str(fresh), papers=papers
            )
            if done.returncode == 0:
                swap(site)
        finally:
            clear(site)
    told = _without_progress(done.stderr)
    if done.returncode != 0:
        told = in_our_words(told, settings, language)
    return Published(site, done.returncode == 0, told)


def mend(site: Path) -> None:
    """Bring back a site that a killed build moved away; a build that runs knows what it does."""
    if not site.exists() and waiting_folder(site).is_dir():
        try:
            with only_builder(site):
                put_back(site)
        except BusyError:
            return


def check_replaceable(root: Path, site: Path) -> None:
    """Raise NotOursError when putting a site here would destroy something else."""
    if not site.exists() and not site.is_symlink():
        inside = site
        kept = [root / name for name in ("content", "quizzes", "generator", "site_assets")]
        if any(inside.is_relative_to(folder) for folder in kept):
            raise NotOursError(str(site))
        return
    empty = site.is_dir() and not any(site.iterdir())
    if not empty and not (site / _MARK).is_dir():
        raise NotOursError(str(site))
    if root == site or root.is_relative_to(site):
        raise NotOursError(str(site))


def run_mkdocs(
    root: Path, language: str, lock: int, *arguments: str, papers: str = ""
) -> subprocess.CompletedProcess[str]:
    """Run MkDocs on a handbook's folder and keep what it says.

    It holds the lock too: when we are killed and it is not, it goes on writing.
    """
    return subprocess.run(  # noqa: S603 - our own interpreter, and no shell
        mkdocs_command(root, *arguments),
        env={**mkdocs_environment(language), PAPERS_SIZE: papers},
        capture_output=True,
        text=True,
        encoding="utf-8",
        check=False,
        # Windows hands no open files on; there a killed build's MkDocs ends by itself.
        pass_fds=() if sys.platform == "win32" else (lock,),
    )


def make_room_for_chapters(root: Path) -> None:
    """Give MkDocs the folder that it asks for.

    A handbook needs no chapter, and git keeps no empty folder.
    """
    (root / CHAPTERS).mkdir(parents=True, exist_ok=True)


def mkdocs_command(root: Path, command: str, *arguments: str) -> list[str]:
    """The command that runs MkDocs with a handbook's own settings."""
    config = str(root / CONFIG)
    return [sys.executable, "-m", "mkdocs", command, "--config-file", config, *arguments]


def mkdocs_environment(language: str) -> dict[str, str]:
    """The environment for it: the theme's banner off, UTF-8, and the language of its findings."""
    own = {"NO_MKDOCS_2_WARNING": "1", "PYTHONUTF8": "1", LANGUAGE: language}
    return {**os.environ, **own}


def _without_progress(told: str) -> str:
    """What MkDocs said, without the lines that only tell how far it is."""
    lines = [line for line in told.splitlines() if line and not line.startswith("INFO ")]
    return "\n".join(lines)
