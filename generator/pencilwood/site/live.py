"""Shows a site that is built again and again while it is written.

Each build goes into a folder of its own; what is new is put in its place at the end. So nobody
sees half a build, and what has not changed need not be written.
"""

from __future__ import annotations

import shutil
from collections.abc import Collection
from pathlib import Path

_FRESH = ".fresh"


class LiveSite:
    """The folder that a preview shows."""

    def __init__(self, shown: Path) -> None:
        self._shown = shown

    def fresh(self) -> Path:
        """An empty folder for the next build."""
        folder = self._shown / _FRESH
        shutil.rmtree(folder, ignore_errors=True)
        folder.mkdir(parents=True)
        return folder

    def show(self, still_there: Collection[str]) -> None:
        """Put what was built in place, and take away what is neither new nor `still_there`."""
        fresh = self._shown / _FRESH
        built = {path.relative_to(fresh).as_posix() for path in _files(fresh)}
        for name in built:
            place = self._shown / name
            place.parent.mkdir(parents=True, exist_ok=True)
            (fresh / name).replace(place)
        shutil.rmtree(fresh)
        kept = {*built, *still_there}
        for path in _files(self._shown):
            if path.relative_to(self._shown).as_posix() not in kept:
                path.unlink()


def _files(folder: Path) -> list[Path]:
    return [path for path in folder.rglob("*") if path.is_file()]
