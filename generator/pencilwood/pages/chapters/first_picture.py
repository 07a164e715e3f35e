"""The picture by which a chapter is found again in a list."""

from __future__ import annotations

import jinja2
from jinja2 import nodes

from pencilwood.drawing.plates import PLATES
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
    shown = _shown(chapter.markdown)
    for name in shown["picture"]:
        if name in PLATES:
            return desk.asset(small_plate(name))
    for slug in shown["draw"]:
        if slug in desk.handbook.case_by_slug:
            return desk.asset(small_drawing(slug))
    return ""


def _shown(markdown: str) -> dict[str, list[str]]:
    """What a chapter's calls for pictures name, in the order of its text."""
    found: dict[str, list[str]] = {"picture": [], "draw": []}
    for call in jinja2.Environment(autoescape=True).parse(markdown).find_all(nodes.Call):
        if isinstance(call.node, nodes.Name) and call.node.name in found:
            named = {one.key: one.value for one in call.kwargs}
            first = [*call.args, *(named[key] for key in ("name", "case") if key in named)][:1]
            found[call.node.name] += [one.value for one in first if isinstance(one, nodes.Const)]
    return found
