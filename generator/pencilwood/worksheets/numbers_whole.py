"""Keeps each number of a paper on the line of what it counts: `13 mm`, `2 buds`."""

from __future__ import annotations

import re
from functools import cache

from pencilwood.words import LANGUAGES, say

_NO_BREAK_SPACE = "\u00a0"
_UNITS = ("mm", "cm", "m", "kg", "%", "in", "ft")
_FOR_PROGRAMS = ("svg", "code")
"""Drawings: in their curves every space stays as it is."""


def with_whole_numbers(told: object) -> object:
    """The same texts, however deep in lists and tables, with spaces at which no line ends."""
    if isinstance(told, str):
        return _before_counted().sub(_NO_BREAK_SPACE, told)
    if isinstance(told, dict):
        return {
            name: one if name in _FOR_PROGRAMS else with_whole_numbers(one)
            for name, one in told.items()
        }
    if isinstance(told, list | tuple):
        return [with_whole_numbers(one) for one in told]
    return told


@cache
def _before_counted() -> re.Pattern[str]:
    words = {word for one in LANGUAGES for word in say(one, "pages.counted").split()}
    named = "|".join(re.escape(word) for word in sorted(words.union(_UNITS)))
    return re.compile(rf"(?<=\d) (?=(?:{named})(?![\w²/])|\d/\d)")
