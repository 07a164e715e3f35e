"""On which scale a text of each language is measured, and how hard it may be.

A language that has no scale here is not measured; its chapters are checked for all else.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from pencilwood.readability.formulas import (
    TextSize,
    flesch_kincaid_grade,
    inflesz_band,
    szigriszt_pazos,
)


@dataclass(frozen=True)
class Scale:
    """A published scale for one language, and the limit for pages that workers read."""

    name: str
    """As the report for machines has it."""
    score: Callable[[TextSize], float]
    limit: float
    """Of a page for workers."""
    high_is_easy: bool
    too_hard: str
    """The finding about a chapter past the limit."""
    band: Callable[[float], str] = lambda _score: ""
    """What the scale's authors call a score; empty where they give it no name."""

    def past_limit(self, size: TextSize) -> float:
        """How far a text is past the limit, in points of the scale; below 0 for an easy one."""
        over = self.score(size) - self.limit
        return -over if self.high_is_easy else over


SCALES: Mapping[str, Scale] = {
    # Flesch-Kincaid; the aim is grade 5.
    "en": Scale("flesch_kincaid_grade", flesch_kincaid_grade, 6, False, "hard-english"),
    # Szigriszt-Pazos; the aim is 80.
    "es": Scale("inflesz", szigriszt_pazos, 70, True, "hard-spanish", inflesz_band),
}
"""By the language's code."""
