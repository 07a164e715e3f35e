"""The languages that the program speaks, and how each of them writes a number.

A language is one line here; everything else that it needs is words, in files named after its code.
The pages' scripts have the same marks in `site_assets/js/languages.mjs`; a test compares them.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True)
class NumberMarks:
    """What stands between the digits of a number, and behind one that is a share of a hundred."""

    decimal: str
    thousands: str
    percent: str


NUMBER_MARKS: Mapping[str, NumberMarks] = {
    "en": NumberMarks(".", ",", "%"),
    "es": NumberMarks(",", "\u00a0", " %"),
}
"""By the language's code (ISO 639-1), the first language first."""

LANGUAGES = tuple(NUMBER_MARKS)
