"""Publishes a handbook: a new site takes the old one's place only when all of it is right."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import tempfile
from dataclasses import dataclass
from pathlib import Path

CONFIG = "mkdocs.yml"
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


def publish(root: Path, site: Path) -> Published:
    """Build into a folder beside `site` and put it in its place, or leave all as it was."""
    site = site.resolve()
    check_replaceable(root.resolve(), site)
    site.parent.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory(prefix=f".{site.name}-", dir=site.parent) as waiting:
        fresh = Path(waiting) / "new"
        done = run_mkdocs(root, "build", "--site-dir", str(fresh))
        if done.returncode == 0:
            _swap(fresh, site, Path(waiting) / "old")
        return Published(site, done.returncode == 0, _without_progress(done.stderr))


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


def run_mkdocs(root: Path, *arguments: str) -> subprocess.CompletedProcess[str]:
    """Run MkDocs on a handbook's folder and keep what it says."""
    return subprocess.run(  # noqa: S603 - our own interpreter, and no shell
        mkdocs_command(root, *arguments),
        env=mkdocs_environment(),
        capture_output=True,
        text=True,
        encoding="utf-8",
        check=False,
    )


def mkdocs_command(root: Path, command: str, *arguments: str) -> list[str]:
    """The command that runs MkDocs with a handbook's own settings."""
    config = str(root / CONFIG)
    return [sys.executable, "-m", "mkdocs", command, "--config-file", config, *arguments]


def mkdocs_environment() -> dict[str, str]:
    """The environment for it: the theme's banner off, and UTF-8 on every machine."""
    return {**os.environ, "NO_MKDOCS_2_WARNING": "1", "PYTHONUTF8": "1"}


def _swap(fresh: Path, site: Path, old: Path) -> None:
    """Put the new site in place of the old one; if that fails, the old one comes back."""
    if site.exists():
        site.rename(old)
    try:
        fresh.rename(site)
    except OSError:
        if old.exists():
            old.rename(site)
        raise
    shutil.rmtree(old, ignore_errors=True)


def _without_progress(told: str) -> str:
    """What MkDocs said, without the lines that only tell how far it is."""
    lines = [line for line in told.splitlines() if line and not line.startswith("INFO ")]
    return "\n".join(lines)
