"""The demo's own chapters: nothing to put right, pictures first, the same in both languages."""

import re
from collections.abc import Mapping
from pathlib import Path

import pytest

from pencilwood.cases.chapter_head import read_head
from pencilwood.drawing.signs import has_sign
from pencilwood.pages.chapters.checks import Reading
from pencilwood.site.handbook import Opened, open_handbook

CALL = re.compile(r"\{\{\s*(\w+)\(([^)]*)\)")
DRAWINGS = ("picture", "draw", "right_and_wrong")


@pytest.fixture(scope="session")
def opened(project: Path) -> Opened:
    return open_handbook(project)


def texts(project: Path, language: str) -> Mapping[str, str]:
    folder = project / "content" / "chapters" / language
    return {path.stem: path.read_text("utf-8") for path in sorted(folder.glob("*.md"))}


def drawings(text: str) -> list[tuple[str, str]]:
    """Every drawing of a chapter without its caption."""
    return [
        (name, re.sub(r",?\s*caption=.*", "", arguments, flags=re.DOTALL))
        for name, arguments in CALL.findall(text)
        if name in DRAWINGS
    ]


def signs(text: str) -> list[str]:
    """Every safety note of a chapter that shows a drawn sign."""
    notes = [note.strip('"') for name, note in CALL.findall(text) if name == "safety"]
    return [note for note in notes if has_sign(note)]


def for_workers(project: Path, language: str) -> Mapping[str, str]:
    return {
        name: text
        for name, text in texts(project, language).items()
        if text.startswith("---")
        and (head := read_head(text, name)[0]) is not None
        and head.audience == "worker"
    }


@pytest.mark.slow
def test_there_is_nothing_to_put_right(opened: Opened) -> None:
    assert [finding.render() for finding in opened.findings] == []


@pytest.mark.slow
def test_workers_chapters_are_well_within_the_gate(opened: Opened) -> None:
    hard: list[Reading] = []
    for one in opened.readings:
        if one.audience == "worker":
            aim = one.score >= 80 if one.language == "es" else one.score <= 5
            hard.extend([] if aim and one.size.words_per_sentence <= 12 else [one])
    assert hard == []
    assert sum(one.audience == "worker" for one in opened.readings) >= 30


@pytest.mark.parametrize("language", ["en", "es"])
def test_every_chapter_for_workers_has_a_drawing(project: Path, language: str) -> None:
    chapters = for_workers(project, language)
    assert len(chapters) >= 15
    assert [name for name, text in chapters.items() if not (drawings(text) or signs(text))] == []


def test_both_languages_show_the_same_drawings(project: Path) -> None:
    english, spanish = texts(project, "en"), texts(project, "es")
    assert english.keys() == spanish.keys()
    assert {name: drawings(text) for name, text in english.items()} == {
        name: drawings(text) for name, text in spanish.items()
    }


def test_both_languages_warn_of_the_same_dangers(project: Path) -> None:
    def notes(text: str) -> list[str]:
        return [arguments for name, arguments in CALL.findall(text) if name == "safety"]

    english, spanish = texts(project, "en"), texts(project, "es")
    assert {name: notes(text) for name, text in english.items()} == {
        name: notes(text) for name, text in spanish.items()
    }
