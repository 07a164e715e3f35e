"""The pictures by which chapters are found again in a list."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from pencilwood.drawing.plates import PLATES
from pencilwood.drawing.signs import has_sign
from pencilwood.pages.chapters.template import named_by_calls
from pencilwood.pages.desk import Desk
from pencilwood.pages.handbook import Chapter
from pencilwood.pages.vine_cards import small_drawing


@dataclass(frozen=True)
class ListPicture:
    """A picture with a file of its own, or a sign; neither where a chapter has none to itself."""

    address: str = ""
    sign: str = ""
    """The safety note that it stands for."""


def small_plate(name: str) -> str:
    """Where the small picture of a plate stands among our own files."""
    return f"plates/{name}.svg"


def list_pictures(desk: Desk, chapters: Iterable[Chapter]) -> tuple[ListPicture, ...]:
    """A picture for each chapter of one list, no two alike.

    It is the first that the chapter shows and no chapter before it has. Two rows with one picture
    could be taken for each other.
    """
    found: list[ListPicture] = []
    for chapter in chapters:
        left = (one for one in _shown(desk, chapter) if one not in found)
        found.append(next(left, ListPicture()))
    return tuple(found)


def _shown(desk: Desk, chapter: Chapter) -> Iterator[ListPicture]:
    """Plates first, for a plate says more of what a chapter is about than one vine of many."""
    for name in named_by_calls(chapter.markdown, "picture", "name"):
        if name in PLATES:
            yield ListPicture(desk.asset(small_plate(name)))
    yield from _vines(desk, named_by_calls(chapter.markdown, "draw", "case"))
    for note in named_by_calls(chapter.markdown, "safety", "name"):
        if has_sign(note):
            yield ListPicture(sign=note)
    # Last, the vines that it only leads to.
    yield from _vines(desk, named_by_calls(chapter.markdown, "vine", "case"))


def _vines(desk: Desk, slugs: Iterable[str]) -> Iterator[ListPicture]:
    for slug in slugs:
        if slug in desk.handbook.case_by_slug:
            yield ListPicture(desk.asset(small_drawing(slug)))
