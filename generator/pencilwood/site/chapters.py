"""Reads the chapters that a trainer writes in Markdown, one folder for each language."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path

from pencilwood.cases.chapter_head import has_head, read_head
from pencilwood.pages.front_pages import HOME_TEXT
from pencilwood.pages.handbook import Chapter
from pencilwood.pages.page import Addresses
from pencilwood.places import Place
from pencilwood.site.hints import Notes

CHAPTERS = "content/chapters"
_TITLE = re.compile(r"\s*# [^\n]*")
OUR_PAGES = (
    "index", "vines", "cases", "rules", "scores", "quizzes", "safety", "assets", "search",
    "workers", "trainers", "words", "sources", "blocks", "sums", "practice", "crew", "offline",
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
        for path in sorted(path for path in folder.rglob("*") if path.is_file()):
            if path.suffix == ".md":
                chapters.extend(_chapter(root, path, language, notes))
            elif not path.name.startswith("."):
                address = addresses.folder(language) + path.relative_to(folder).as_posix()
                pictures[address] = path.read_bytes()
    _check_languages(root, chapters, languages, notes)
    return tuple(chapters), pictures


def _chapter(root: Path, path: Path, language: str, notes: Notes) -> Iterator[Chapter]:
    place = Place(path.relative_to(root).as_posix())
    name = path.relative_to(root / CHAPTERS / language).with_suffix("").as_posix()
    try:
        text = path.read_text(encoding="utf-8-sig")
    except UnicodeDecodeError:
        notes.add(place, "not-utf-8")
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
        if name not in languages and not name.startswith("."):
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
