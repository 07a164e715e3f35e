"""The one style sheet of the handbook's pages, put together of the files written by hand.

On a phone's line each file costs the way there and back, and nothing is painted until all are here.
"""

from __future__ import annotations

from pencilwood.assets import asset_root

STYLE_SHEET = "css/pencilwood.css"
"""Beside its parts, so that what they lead to lies where they say."""
_PARTS = (
    "css/fonts.css",
    "css/tokens.css",
    "css/masthead.css",
    "css/handbook.css",
    "css/vine.css",
    "css/exercise.css",
    "css/block.css",
    "css/quiz.css",
)
_ALONE_TOO = {"css/fonts.css", "css/tokens.css", "css/vine.css"}
"""Parts that other pages ask for by themselves."""
ONLY_PARTS = frozenset(_PARTS) - _ALONE_TOO


def style_sheet() -> bytes:
    """The whole of it; later parts win."""
    return b"\n".join((asset_root() / name).read_bytes() for name in _PARTS)
