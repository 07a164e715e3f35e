"""What is shown in place of a page that is not on the device while there is no signal."""

from __future__ import annotations

from pencilwood.pages.desk import Desk
from pencilwood.pages.handbook import Handbook

PATH = "offline"


def offline_page(handbook: Handbook, language: str) -> str:
    """The whole page in one language, from doctype to the closing tag."""
    desk = Desk(handbook, PATH, language)
    return desk.alone(desk.render("offline.html"))
