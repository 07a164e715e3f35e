"""The safety page: tools, ladders, and the worker."""

from __future__ import annotations

from pencilwood.pages.desk import Desk
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.page import Page

GROUPS = ("tools", "ladders", "you")


def safety_page(handbook: Handbook, language: str) -> Page:
    """Every safety note, with the status of each piece of advice."""
    desk = Desk(handbook, "safety", language)
    groups = tuple(
        (group, tuple(note for note in handbook.notes if note.about == group)) for group in GROUPS
    )
    return desk.write(
        "safety.html", desk.say("safety"), menu_title=desk.say("safety"), groups=groups
    )
