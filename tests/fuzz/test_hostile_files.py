"""Files that no trainer writes on purpose: each gets a plain message and harms nothing."""

from __future__ import annotations

import errno
import io
import os
import time
from collections.abc import Callable
from pathlib import Path
from typing import NoReturn

import pytest

from case_files import LANGUAGES, RULES, SAFETY, lines, usual_tool
from fuzz.hostile_rows import CASE, CHAPTERS, GOOD, HEAD, ROWS, SHEET, Row
from pencilwood.cases.case_file import CaseSurroundings, read_case
from pencilwood.cases.field_sheet import read_field_sheet
from pencilwood.cases.figures_file import read_figures
from pencilwood.cases.report import MOST_FINDINGS
from pencilwood.cases.sources_file import read_sources
from pencilwood.findings import Finding, shown
from pencilwood.site.chapters import read_chapters
from pencilwood.site.folders import look_over
from pencilwood.site.hints import Notes


def read(root: Path, file: str, language: str) -> list[Finding]:
    """Look over the handbook, then read a file by the reader that its place calls for."""
    barred = look_over(root, language)
    if barred:
        return barred
    if file.startswith("content/cases/"):
        case, found = read_case(
            root / file,
            CaseSurroundings(LANGUAGES, RULES, SAFETY, usual_tool),
            file,
            language=language,
        )
        assert case is None
    elif file == SHEET:
        vine, found = read_field_sheet(root / file, SHEET, language=language)
        assert vine is None
    elif file.endswith("sources.yml"):
        found = read_sources(root / file, LANGUAGES, file, language=language)[1]
    elif file.endswith("figures.yml"):
        found = read_figures(root / file, (), LANGUAGES, file, language=language)[1]
    else:
        notes = Notes(language)
        chapters, pictures = read_chapters(root, ("en",), notes)
        assert chapters == ()
        assert pictures == {}
        found = notes.findings
    return found


def made(row: Row, root: Path) -> Path:
    """The file of a row in a folder."""
    path = root / row.file
    path.parent.mkdir(parents=True, exist_ok=True)
    if isinstance(row.made, bytes):
        path.write_bytes(row.made)
    else:
        row.made(path)
    return path


@pytest.mark.parametrize("row", ROWS, ids=[row.reason for row in ROWS])
def test_each_file_is_refused_in_plain_words(row: Row, tmp_path: Path) -> None:
    root = tmp_path / "handbook"
    made(row, root)
    before = time.process_time()
    said = lines(read(root, row.file, "en"))
    assert f"{shown(row.file)}:{row.said}" in said
    # The same file gives the same findings, and never so many that nobody reads them.
    assert lines(read(root, row.file, "en")) == said
    assert len(said) <= MOST_FINDINGS
    if row.said_es:
        assert f"{shown(row.file)}:{row.said_es}" in lines(read(root, row.file, "es"))
    assert time.process_time() - before < 5


def chapters_said(root: Path) -> list[str]:
    notes = Notes("en")
    read_chapters(root, ("en",), notes)
    return lines(notes.findings)


@pytest.fixture
def tools(tmp_path: Path) -> Path:
    """A chapter in which nothing is wrong."""
    path = tmp_path / CHAPTERS / "tools.md"
    path.parent.mkdir(parents=True)
    path.write_text(f"{HEAD}Sharp.\n", "utf-8")
    assert chapters_said(tmp_path) == []
    return path


def refusing(code: int) -> Callable[..., NoReturn]:
    """In place of the system: root may read what others may not, and disks seldom fail."""

    def refuse(path: object, *_: object, **__: object) -> NoReturn:
        raise OSError(code, os.strerror(code), str(path))

    return refuse


class _FailingFile(io.BytesIO):
    def read(self, *_: object) -> NoReturn:
        raise OSError(errno.EIO, os.strerror(errno.EIO))


@pytest.mark.parametrize("code", [errno.EACCES, errno.EIO, errno.EMFILE, errno.ESTALE])
def test_a_file_that_cannot_be_opened(
    tools: Path, monkeypatch: pytest.MonkeyPatch, code: int
) -> None:
    monkeypatch.setattr(Path, "open", refusing(code))
    assert chapters_said(tools.parents[3]) == [
        f"{CHAPTERS}/tools.md:1:1: this file cannot be opened; expected a plain file that you may "
        "read (unreadable-file)"
    ]


def test_a_disk_that_fails_in_the_middle(tools: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(Path, "open", lambda *_, **__: _FailingFile())
    (said,) = chapters_said(tools.parents[3])
    assert said.endswith("(unreadable-file)")


def test_a_file_that_goes_while_its_folder_is_read(
    tools: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(Path, "open", refusing(errno.ENOENT))
    assert chapters_said(tools.parents[3]) == [
        f"{CHAPTERS}/tools.md:1:1: there is no such file (missing-file)"
    ]


def test_a_folder_that_nobody_may_read(tools: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    with monkeypatch.context() as patch:
        patch.setattr(os, "scandir", refusing(errno.EACCES))
        said = chapters_said(tools.parents[3])
    assert said == [
        f"{CHAPTERS}:1:1: this folder cannot be opened; expected a folder that you may read "
        "(unreadable-folder)"
    ]


def test_marks_that_some_editors_leave_change_nothing(tmp_path: Path) -> None:
    """A mark of byte order, and the ends of lines of another system."""
    path = tmp_path / "tidy-vine.yml"
    read_as = []
    for text in (GOOD, f"\ufeff{GOOD}", GOOD.replace("\n", "\r\n"), GOOD.replace("\n", "\r")):
        path.write_bytes(text.encode("utf-8"))
        case, found = read_case(path, CaseSurroundings(LANGUAGES, RULES, SAFETY, usual_tool), CASE)
        assert found == []
        assert case is not None
        read_as.append((case.vine, case.answer, case.story, case.places))
    assert read_as[1:] == read_as[:1] * 3


def test_reading_changes_no_file(tools: Path) -> None:
    before = (tools.read_bytes(), tools.stat().st_mtime_ns)
    chapters_said(tools.parents[3])
    assert (tools.read_bytes(), tools.stat().st_mtime_ns) == before
