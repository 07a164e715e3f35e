"""Keeps a number and its unit on one line of a page."""

from __future__ import annotations

import re

_UNITS = ("mm", "cm", "kg", "%")
_NO_BREAK_SPACE = "\u00a0"
_AS_TYPED = re.compile(r"(<(pre|code|script|style|textarea|option)\b.*?</\2>)", re.DOTALL)
"""What is copied or read by a program: no other space may stand in it."""


def keep_units_together(html: str) -> str:
    """The page with a space before a unit that ends no line.

    Also where no number stands before the unit: that does no harm, and a page holds a quarter of a
    megabyte of drawing to look through.
    """
    pieces = _AS_TYPED.split(html)
    # Text, what is left as it is, and its tag, in turn.
    for at in range(0, len(pieces), 3):
        for unit in _UNITS:
            pieces[at] = pieces[at].replace(f" {unit}", _NO_BREAK_SPACE + unit)
    return "".join(piece for at, piece in enumerate(pieces) if at % 3 != 2)
