"""Puts a new handbook into its folder: whole or not at all."""

from __future__ import annotations

import tempfile
from collections.abc import Mapping
from pathlib import Path

_HANDBOOK_HAS = ("content/profile.yml", "mkdocs.yml")


class CannotStartError(Exception):
    """A new handbook cannot be put there; `reason` names why, for the catalogue of words."""

    def __init__(self, reason: str, folder: Path) -> None:
        super().__init__(f"{reason}: {folder}")
        self.reason = reason
        self.folder = folder


def check_startable(folder: Path) -> None:
    """Raise CannotStartError unless `folder` (resolved) is new or empty."""
    if not folder.exists():
        return
    if not folder.is_dir():
        raise CannotStartError("is-a-file", folder)
    if any((folder / name).exists() for name in _HANDBOOK_HAS):
        raise CannotStartError("is-a-handbook", folder)
    if any(folder.iterdir()):
        raise CannotStartError("not-empty", folder)
    if Path.cwd().is_relative_to(folder):
        # The folder is replaced, and whoever stands in it would see nothing of the new one.
        raise CannotStartError("standing-in-it", folder)


def put_in_place(files: Mapping[str, str], folder: Path) -> None:
    """Write all files beside `folder` (resolved), then give them its name in one go.

    Raises CannotStartError when the folder is not empty, OSError when nothing can be written.
    Until the last step there is nothing at `folder`, however this ends.
    """
    check_startable(folder)
    folder.parent.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory(prefix=f".{folder.name}-", dir=folder.parent) as waiting:
        # A folder of its own inside: the waiting one is closed to everybody else.
        fresh = Path(waiting) / "new"
        for name, text in files.items():
            path = fresh / name
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(text, encoding="utf-8", newline="\n")
        if folder.is_dir():
            # Fails if anybody has put something in; on Windows nothing may be there at all.
            folder.rmdir()
        fresh.rename(folder)
