"""The fonts of the pages: they have all letters, weigh little, and are what their makers drew."""

import json
import unicodedata
from pathlib import Path

import pytest
from fontTools.ttLib import TTFont

from fonts.subset import (
    FACES,
    FONTS,
    LETTERS,
    PAPER_FONTS,
    PROJECT,
    STYLE,
    Face,
    average_width,
    written,
)

MOST_BYTES = 60_000
"""All of them together: a fifth of a second on a line of 1.6 Mbit/s, and less than a third."""
MOST_BYTES_FOR_PAPERS = 100_000
"""In the package; a paper takes only the letters that it has."""
TEXTS = ("content/**/*.md", "content/**/*.yml", "quizzes/*.yml", "generator/**/words/*.json")


def letters_of(face: Face) -> set[str]:
    return {chr(code) for code in TTFont(FONTS / face.file).getBestCmap()}


@pytest.fixture(scope="module")
def written_letters() -> set[str]:
    """Every letter, digit and mark of punctuation in our texts; signs and arrows are no letters."""
    found: set[str] = set()
    for pattern in TEXTS:
        for path in PROJECT.glob(pattern):
            text = path.read_text(encoding="utf-8")
            # In JSON a letter may be written as its number.
            found |= set(str(json.loads(text))) if path.suffix == ".json" else set(text)
    return {one for one in found if unicodedata.category(one)[0] in "LNP"}


@pytest.mark.parametrize("face", FACES, ids=lambda face: face.file)
def test_every_letter_of_our_texts_is_in_the_font(face: Face, written_letters: set[str]) -> None:
    assert len(written_letters) > 80
    assert sorted(written_letters - letters_of(face)) == []
    assert set("ñáéíóúü¿¡«»×÷±½¼°ºª€").issubset(letters_of(face))
    assert letters_of(face) == set(LETTERS)


def test_all_fonts_together_weigh_little() -> None:
    sizes = {path.name: path.stat().st_size for path in FONTS.glob("*.woff2")}
    assert set(sizes) == {face.file for face in FACES}
    assert 20_000 < sum(sizes.values()) <= MOST_BYTES, sizes


@pytest.mark.parametrize("face", FACES, ids=lambda face: face.paper_file)
def test_papers_have_the_same_letters(face: Face) -> None:
    for_pages, for_papers = TTFont(FONTS / face.file), TTFont(PAPER_FONTS / face.paper_file)
    assert for_papers.getBestCmap() == for_pages.getBestCmap()
    assert for_papers["name"].getDebugName(1) == face.family
    for name in ("a", "R", "eight"):
        assert for_papers["hmtx"][name] == for_pages["hmtx"][name]
        assert outline(for_papers, name) == outline(for_pages, name)


def test_no_font_of_papers_is_left_over_and_all_weigh_little() -> None:
    sizes = {path.name: path.stat().st_size for path in PAPER_FONTS.iterdir()}
    assert set(sizes) == {face.paper_file for face in FACES}
    assert 40_000 < sum(sizes.values()) <= MOST_BYTES_FOR_PAPERS, sizes


def test_the_style_is_what_the_command_writes() -> None:
    assert STYLE.read_text(encoding="utf-8") == written(), "run `make fonts`"


@pytest.mark.parametrize("face", FACES, ids=lambda face: face.file)
def test_letters_are_as_their_makers_drew_them(face: Face, npm: str) -> None:
    """The package's own font is the reference; only the rest of its letters is left out."""
    ours, theirs = TTFont(FONTS / face.file), TTFont(face.source)
    for letter in "aRñ¿8":
        name, source_name = (font.getBestCmap()[ord(letter)] for font in (ours, theirs))
        assert ours["hmtx"][name] == theirs["hmtx"][source_name], letter
        assert outline(ours, name) == outline(theirs, source_name), letter


def outline(font: TTFont, name: str) -> list[tuple[int, int]]:
    points, _, _ = font["glyf"][name].getCoordinates(font["glyf"])
    return list(points)


def test_a_stand_in_is_as_wide_as_the_font() -> None:
    """On a machine that has a font of Arial's widths, by that font itself."""
    here = Path("/usr/share/fonts/truetype/liberation/LiberationSans-Regular.ttf")
    # Elsewhere: Arial's average on the same chapters, as measured on that font.
    arial = average_width(here) if here.is_file() else 0.441
    face = FACES[0]
    assert average_width(FONTS / face.file) / arial == pytest.approx(
        face.stand_ins[0].adjust, abs=0.01
    )
