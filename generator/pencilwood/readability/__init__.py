"""How hard a text is to read, by published formulas."""

from __future__ import annotations

from pencilwood.readability.formulas import (
    TextSize,
    fernandez_huerta,
    flesch_kincaid_grade,
    flesch_reading_ease,
    inflesz_band,
    szigriszt_pazos,
)
from pencilwood.readability.scales import SCALES, Scale
from pencilwood.readability.text import Sentence, measure, sentences, syllables

__all__ = [
    "SCALES",
    "Scale",
    "Sentence",
    "TextSize",
    "fernandez_huerta",
    "flesch_kincaid_grade",
    "flesch_reading_ease",
    "inflesz_band",
    "measure",
    "sentences",
    "syllables",
    "szigriszt_pazos",
]
