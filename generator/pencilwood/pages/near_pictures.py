"""A vine seen from near on a page: one picture, or one for each view with its words below."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from markupsafe import Markup

from pencilwood.drawing.views.near_views import NearView
from pencilwood.pages.desk import Desk
from pencilwood.words import say


def near_pictures(
    desk: Desk, views: Sequence[NearView], prefix: str, draw: Callable[[NearView, str], str]
) -> str:
    """HTML of all views; `draw` makes the SVG of one, whose ids begin with the text given."""
    if len(views) == 1:
        return draw(views[0], prefix)
    return desk.render(
        "views.html",
        views=[
            {"drawing": Markup(draw(one, _own(prefix, number, one))), "words": _words(desk, one)}  # noqa: S704 - our own drawing
            for number, one in enumerate(views)
        ],
    )


def _own(prefix: str, number: int, one: NearView) -> str:
    return f"{prefix}-{one.view}" if number else prefix


def _words(desk: Desk, one: NearView) -> list[str]:
    return [say(desk.language, f"drawing.{key}") for key in one.says]
