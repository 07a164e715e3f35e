"""Reads the chapters that a trainer writes in Markdown, one folder for each language."""

from __future__ import annotations

import os
import re
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path

from pencilwood.cases.chapter_head import has_head, read_head
from pencilwood.cases.report import Report
from pencilwood.cases.settings_file import CHAPTERS
from pencilwood.cases.source import read_text
from pencilwood.pages.handbook import HOME_TEXT, Chapter
from pencilwood.pages.page import Addresses
from pencilwood.places import Place
from pencilwood.site.beside import beside
from pencilwood.site.folders import is_hidden
from pencilwood.site.hints import Notes

LARGEST_CHAPTER_BYTES = 100_000
"""Thirty pages of print; nobody reads that on a phone, and checking it would take long."""
# What a USB stick or another system cannot store, or an address would take for something else.
_ODD_NAME = re.compile(r"[\x00-\x1f\x7f-\x9f<>:\"|?*\\#%\u2028\u2029\ud800-\udfff]")
_TITLE = re.compile(r"\s*# [^\n]*")
OUR_PAGES = (
    "index", "vines", "cases", "rules", "scores", "quizzes", "safety", "assets", "search",
    "workers", "trainers", "teachers", "words", "sources", "blocks", "sums", "practice", "crew",
    "offline",
)  # fmt: skip
"""Names that a chapter cannot have, because pages of ours stand there."""


def read_chapters(
    root: Path, languages: Sequence[str], notes: Notes
) -> tuple[tuple[Chapter, ...], Mapping[str, bytes]]:
    """All chapters in order of their file names, and the pictures beside them."""
    _check_folders(root, languages, notes)
    chapters: list[Chapter] = []
    pictures: dict[str, bytes] = {}
    addresses = Addresses(tuple(languages))
    for language in languages:
        folder = root / CHAPTERS / language
        for path in _files(root, folder, notes):
            if path.suffix == ".md":
                chapters.extend(_chapter(root, path, language, notes))
            else:
                address = addresses.folder(language) + path.relative_to(folder).as_posix()
                data = beside(root, path, notes)
                pictures.update({} if data is None else {address: data})
    _check_languages(root, chapters, languages, notes)
    return tuple(chapters), pictures


def _files(root: Path, folder: Path, notes: Notes) -> Iterator[Path]:
    """All that is no folder, also what then turns out to be unreadable."""
    report = Report(notes.language)

    def place(path: str | Path) -> Place:
        return Place(Path(path).relative_to(root).as_posix())

    def locked(error: OSError) -> None:
        if not isinstance(error, FileNotFoundError):
            report.add(place(error.filename), "unreadable-folder")

    found: dict[str, Path] = {}
    for held, folders, files in os.walk(folder, onerror=locked):
        folders[:] = [name for name in folders if not is_hidden(name)]
        for link in (Path(held, name) for name in folders if Path(held, name).is_symlink()):
            # Whoever follows it may go round for ever.
            report.add(place(link), "linked-folder")
        for path in (Path(held, name) for name in sorted(files) if not is_hidden(name)):
            if _ODD_NAME.search(path.name):
                report.add(place(path), "odd-file-name")
            elif (small := str(path).casefold()) in found:
                report.add(place(path), "names-alike", other=found[small].name)
            else:
                found[small] = path
    notes.findings.extend(report.findings())
    yield from sorted(found.values())


def _chapter(root: Path, path: Path, language: str, notes: Notes) -> Iterator[Chapter]:
    place = Place(path.relative_to(root).as_posix())
    name = path.relative_to(root / CHAPTERS / language).with_suffix("").as_posix()
    text = _text(path, place, notes)
    if text is None:
        return
    if name.split("/")[0] in (*OUR_PAGES, *_folders(root)):
        notes.add(place, "chapter-name-taken")
    elif has_head(text):
        yield from _with_head(name, language, text, place, notes)
    elif _TITLE.match(text) is None and name != HOME_TEXT:
        notes.add(place, "chapter-without-title")
    else:
        found = _TITLE.match(text)
        title = found[0].strip().removeprefix("# ").strip() if found else ""
        body = _TITLE.sub(_empty_lines, text, count=1) if found else text
        yield Chapter(name, language, title, body.rstrip(), place)


def _text(path: Path, place: Place, notes: Notes) -> str | None:
    """The text of a chapter with plain ends of lines; None when a finding says why not."""
    report = Report(notes.language)
    text = read_text(path, place.file, report, LARGEST_CHAPTER_BYTES)
    notes.findings.extend(report.findings())
    return None if text is None else text.replace("\r\n", "\n").replace("\r", "\n")


def _with_head(
    name: str, language: str, text: str, place: Place, notes: Notes
) -> Iterator[Chapter]:
    head, findings = read_head(text, place.file, language=notes.language)
    notes.findings.extend(findings)
    if head is not None:
        above = "\n" * text[: head.body_from].count("\n")
        yield Chapter(
            name,
            language,
            head.title,
            (above + text[head.body_from :]).rstrip(),
            place,
            head.audience,
            head.order,
            head.order_place,
            head.audience_place,
        )


def _empty_lines(match: re.Match[str]) -> str:
    return "\n" * match[0].count("\n")


def _folders(root: Path) -> list[str]:
    return sorted(path.name for path in (root / CHAPTERS).glob("*") if path.is_dir())


def _check_folders(root: Path, languages: Sequence[str], notes: Notes) -> None:
    for name in _folders(root):
        if name not in languages and not is_hidden(name):
            place = Place(f"{CHAPTERS}/{name}")
            notes.add(place, "unknown-language-folder", languages=", ".join(languages))


def _check_languages(
    root: Path, chapters: Sequence[Chapter], languages: Sequence[str], notes: Notes
) -> None:
    written = {(chapter.name, chapter.language) for chapter in chapters}
    for chapter in chapters:
        for language in languages:
            missing = f"{CHAPTERS}/{language}/{chapter.name}.md"
            if (chapter.name, language) not in written and not (root / missing).exists():
                place = Place(f"{CHAPTERS}/{chapter.language}/{chapter.name}.md")
                notes.add(place, "chapter-untranslated", language=language, file=missing)
