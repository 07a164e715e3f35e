"""A drawn sign on a page, beside a safety note or a quiz."""

from __future__ import annotations

from markupsafe import Markup

from pencilwood.drawing.signs import draw_sign, has_sign
from pencilwood.pages.desk import Desk


def sign(desk: Desk, name: str) -> Markup:
    """A sign that goes in late, as other drawings do; nothing where nobody has drawn one."""
    return desk.late(draw_sign(name)) if has_sign(name) else Markup()
