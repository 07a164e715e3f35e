"""The style sheets of pages, put together of the files written by hand, one for each subject.

On a phone's line each file costs the way there and back, and nothing is painted until all are here.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from pencilwood.assets import asset_root

STYLE_SHEET = "css/pencilwood.css"
"""Beside its parts, so that what they lead to lies where they say."""


def _of(folder: str, *subjects: str) -> tuple[str, ...]:
    return tuple(f"css/{folder}/{subject}.css" for subject in subjects)


LETTERS_AND_COLOURS = ("css/fonts.css", "css/tokens.css")
DARK = "css/dark.css"
HANDBOOK = _of(
    "handbook", "page", "lists", "case", "rules", "chapters", "words", "margin", "narrow", "print"
)
EXERCISE = (
    "css/vine.css",
    *_of(
        "exercise",
        "controls",
        "bench",
        "drawing",
        "marks",
        "hand",
        "folds",
        "result",
        "widths",
        "print",
    ),
)
QUIZ = _of("quiz", "controls", "question", "told", "slip")
WINTERS = "css/winters.css"
PACKAGE = "package/package.css"

_PARTS = (
    *LETTERS_AND_COLOURS,
    DARK,
    "css/masthead.css",
    *HANDBOOK,
    *EXERCISE,
    WINTERS,
    "css/block.css",
    *QUIZ,
)
_PACKAGE_PARTS = (*LETTERS_AND_COLOURS, *HANDBOOK, *EXERCISE, *QUIZ, PACKAGE)
_ALONE_TOO = {*LETTERS_AND_COLOURS, DARK, "css/vine.css"}
"""Parts that other pages ask for by themselves."""
ONLY_PARTS = frozenset(_PARTS) - _ALONE_TOO
_COMMENT = re.compile(rb"/\*.*?\*/\n*", re.DOTALL)


def style_sheet() -> bytes:
    """What all pages of the handbook ask for."""
    return _joined(_PARTS)


def package_style_sheet() -> bytes:
    """What pages ask for that stand alone in a package for a learning system."""
    return _joined(_PACKAGE_PARTS)


def _joined(parts: Iterable[str]) -> bytes:
    """One sheet; later parts win. Comments are for those who change the parts."""
    root = asset_root()
    return b"\n".join(_COMMENT.sub(b"", (root / name).read_bytes()) for name in parts)
