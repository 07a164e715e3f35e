"""Finds the case files of a handbook: the trainer's own, and those in folders from others.

A folder from others is put as it is into `content/shared/`. Its name comes before the short names
of its cases (`hillside-school` and `tall-vine` make `hillside-school-tall-vine`), so that they
meet no name of the handbook's own, now or later. Nothing outside the folder is ever read for it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from pencilwood.cases.case_keys import SLUG
from pencilwood.cases.report import quoted
from pencilwood.places import Place
from pencilwood.site.folders import SHARED, is_hidden, shown_name
from pencilwood.site.hints import Notes

CASES = "content/cases"
LONGEST_FOLDER_NAME = 40
_CASE = ".yml"
_LOOKS_LIKE_A_CASE = {_CASE, ".yaml"}
_LEFT_ALONE = {".jpg", ".jpeg", ".png", ".webp", ".txt", ".md"}
_LEFT_ALONE_NAMES = {"LICENSE", "LICENCE"}
_MOST_NAMED = 5


@dataclass(frozen=True)
class CaseFile:
    """Where a case stands and what it is called in this handbook."""

    path: Path
    slug: str
    shared_in: str = ""
    """The folder of `content/shared/`; empty for the trainer's own."""


def case_slugs(root: Path) -> tuple[str, ...]:
    """Short names of the cases in a handbook's folder."""
    return tuple(file.slug for file in find_cases(root, Notes("en")))


def find_cases(root: Path, notes: Notes) -> tuple[CaseFile, ...]:
    """Every case file, the trainer's own first; what is wrong with shared folders is noted."""
    found = [CaseFile(path, path.stem) for path in seen(root / CASES, f"*{_CASE}")]
    names = {file.slug: file for file in found}
    for file in _Shared(root, notes).files():
        other = names.setdefault(file.slug, file)
        if other is file:
            found.append(file)
            continue
        facts = {"slug": file.slug, "other": shown_name(root, other.path)}
        notes.add(Place(shown_name(root, file.path)), "case-name-taken", **facts)
    return tuple(found)


def seen(folder: Path, pattern: str) -> tuple[Path, ...]:
    """What a folder holds, without hidden files.

    Sorted by name, because the order of a folder differs from machine to machine.
    """
    return tuple(sorted(path for path in folder.glob(pattern) if not is_hidden(path.name)))


@dataclass(frozen=True)
class _Shared:
    """All folders from others."""

    root: Path
    notes: Notes

    def files(self) -> Iterator[CaseFile]:
        """The cases in them."""
        top = self.root / SHARED
        if not self._is_there(top):
            return
        loose = []
        for path in seen(top, "*"):
            if path.is_dir() and not path.is_symlink():
                yield from self._of_folder(path)
            else:
                loose.append(path)
        self._look_at_others(top, loose)

    def _is_there(self, top: Path) -> bool:
        if top.is_symlink():
            self._note(top, "shared-link")
        elif top.is_dir():
            return True
        elif top.exists():
            self._note(top, "shared-not-a-folder")
        return False

    def _of_folder(self, folder: Path) -> Iterator[CaseFile]:
        name = folder.name
        if not re.fullmatch(SLUG.pattern, name) or len(name) > LONGEST_FOLDER_NAME:
            found = quoted(shown_name(folder.parent, folder))
            self._note(folder, "shared-folder-name", longest=LONGEST_FOLDER_NAME, found=found)
            return
        others: list[Path] = []
        cases: list[Path] = []
        for path in _all_in(folder):
            is_case = path.suffix == _CASE and path.parent == folder and not path.is_symlink()
            (cases if is_case else others).append(path)
        self._look_at_others(folder, others)
        if not cases:
            self._note(folder, "shared-no-case", example=f"{SHARED}/{name}/tidy-vine.yml")
        for path in cases:
            yield CaseFile(path, f"{name}-{path.stem}", name)

    def _look_at_others(self, folder: Path, others: list[Path]) -> None:
        """Note what is a link, a case in a wrong place, or nothing that we know."""
        unknown = []
        for path in others:
            if path.is_symlink():
                self._note(path, "shared-link")
            elif path.suffix.lower() in _LOOKS_LIKE_A_CASE:
                self._note(path, "shared-case-place")
            elif path.suffix.lower() not in _LEFT_ALONE and path.name not in _LEFT_ALONE_NAMES:
                unknown.append(shown_name(folder, path))
        if unknown:
            more = ["..."] if len(unknown) > _MOST_NAMED else []
            names = ", ".join([*unknown[:_MOST_NAMED], *more])
            place = Place(shown_name(self.root, folder))
            self.notes.warn(place, "shared-not-read", count=len(unknown), names=names)

    def _note(self, path: Path, name: str, /, **facts: str | int) -> None:
        self.notes.add(Place(shown_name(self.root, path)), name, **facts)


def _all_in(folder: Path) -> Iterator[Path]:
    """Every file and every link, however deep; no link is followed."""
    for path in seen(folder, "*"):
        if path.is_dir() and not path.is_symlink():
            yield from _all_in(path)
        else:
            yield path
