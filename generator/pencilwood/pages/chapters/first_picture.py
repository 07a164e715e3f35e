"""The picture by which a chapter is found again in a list."""

from __future__ import annotations

from pencilwood.drawing.plates import PLATES
from pencilwood.pages.chapters.template import named_by_calls
from pencilwood.pages.desk import Desk
from pencilwood.pages.handbook import Chapter
from pencilwood.pages.vine_cards import small_drawing


def small_plate(name: str) -> str:
    """Where the small picture of a plate stands among our own files."""
    return f"plates/{name}.svg"


def first_picture(desk: Desk, chapter: Chapter) -> str:
    """The address of the small picture of a chapter: its first plate, else its first vine, else "".

    A plate says more of what a chapter is about; one vine is in many of them.
    """
    for name in named_by_calls(chapter.markdown, "picture", "name"):
        if name in PLATES:
            return desk.asset(small_plate(name))
    for slug in named_by_calls(chapter.markdown, "draw", "case"):
        if slug in desk.handbook.case_by_slug:
            return desk.asset(small_drawing(slug))
    return ""
