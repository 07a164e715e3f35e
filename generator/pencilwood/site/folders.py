"""Looks over a handbook's folders before anything in them is read.

A link may lead anywhere. What stands elsewhere is not the handbook's: a page made of it could
publish any file of the machine, and the handbook would be another one on the next machine. So a
link is followed to what is in the handbook's own folder, and nowhere else. A folder that cannot be
opened is told too, since it would otherwise read as an empty one.
"""

from __future__ import annotations

import os
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass, field
from pathlib import Path

from pencilwood.cases.report import Report
from pencilwood.findings import Finding
from pencilwood.places import Place

CONFIG = "mkdocs.yml"
SHARED = "content/shared"
_READ = ("content", "quizzes")
_FOLDERS = (*_READ, "content/cases", "content/chapters", "content/rules", "content/safety")


def look_over(root: Path, language: str) -> list[Finding]:
    """Everything for which a handbook cannot be read as it stands; empty when it can."""
    looking = _Looking(root, Report(language))
    looking.all()
    return looking.report.findings()


def shown_name(root: Path, path: Path) -> str:
    """A file's name in findings; signs that a terminal would obey are left out."""
    name = path.relative_to(root).as_posix()
    return "".join(sign if sign.isprintable() else "?" for sign in name)


def is_hidden(name: str) -> bool:
    """Whether a file or folder is none of the trainer's: editors and systems keep theirs so."""
    return name.startswith(".")


@dataclass(frozen=True)
class _Looking:
    root: Path
    report: Report
    walked: list[Path] = field(default_factory=list)
    """Where every link has been seen already, without links in their names."""

    def all(self) -> None:
        """Look at every folder, and at every link in it."""
        for name in _FOLDERS:
            # Below a folder that cannot be opened; that folder is told of.
            with suppress(OSError):
                path = self.root / name
                if path.exists() and not path.is_dir():
                    self._note(path, "not-a-folder")
        for name in (*_READ, CONFIG):
            path = self.root / name
            if path.is_symlink():
                self._follow(path)
            else:
                self._walk(path)

    def _walk(self, top: Path) -> None:
        """Look at each link below a folder, or below a link to one."""
        here = top.resolve()
        if any(here.is_relative_to(one) for one in self.walked):
            return
        self.walked.append(here)
        for link in self._links_below(top):
            self._follow(link)

    def _links_below(self, top: Path) -> Iterator[Path]:
        # Folders from others have their own rule: no link in them is followed at all.
        shared = self.root / SHARED
        for held, folders, files in os.walk(top, onerror=self._locked):
            here = Path(held)
            folders[:] = sorted(name for name in folders if not is_hidden(name))
            if here != shared and shared not in here.parents:
                seen = (here / name for name in (*folders, *sorted(files)) if not is_hidden(name))
                yield from (path for path in seen if path.is_symlink() and path != shared)

    def _locked(self, error: OSError) -> None:
        if not isinstance(error, FileNotFoundError | NotADirectoryError):
            self._note(Path(error.filename), "unreadable-folder")

    def _follow(self, link: Path) -> None:
        try:
            target = link.resolve(strict=True)
        except (OSError, RuntimeError):
            self._note(link, "leads-nowhere")
            return
        home = self.root.resolve()
        inside = target.is_relative_to(home)
        if not inside or any(map(is_hidden, target.relative_to(home).parts)):
            self._note(link, "leads-outside")
        elif target.is_dir():
            self._walk(link)

    def _note(self, path: Path, name: str) -> None:
        self.report.add(Place(shown_name(self.root, path)), name)
