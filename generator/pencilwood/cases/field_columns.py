"""The columns of the vine-measuring sheet, which are those of its CSV file.

A heading may carry a unit, `at (cm)`; then bare numbers below it are taken in that unit, so
that nobody writes the unit on every line of a clipboard in the cold. Headings and words are
understood in every language that the program speaks.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from pencilwood.units import UnitSystem
from pencilwood.vine.forms.cordon import CORDONS
from pencilwood.vine.model import Condition, Lean
from pencilwood.words import LANGUAGES, say

YEARS = "years"


@dataclass(frozen=True)
class Column:
    """One column of the sheet."""

    name: str
    metric: str = ""
    """Unit of its bare numbers where lengths are metric; empty for a column without a unit."""
    us: str = ""

    def heading(self, units: UnitSystem, language: str) -> str:
        """What stands above it: `at (cm)`."""
        unit = self.us if units == "us" else self.metric
        name = say(language, f"field.column.{self.name}")
        word = say(language, "field.years") if unit == YEARS else unit
        return f"{name} ({word})" if unit else name


COLUMNS: tuple[Column, ...] = (
    Column("position"),
    Column("at", "cm", "in"),
    Column("wood"),
    Column("letter"),
    Column("from"),
    Column("up", "cm", "in"),
    Column("age", YEARS, YEARS),
    Column("length", "cm", "in"),
    Column("thickness", "mm", "in"),
    Column("buds"),
    Column("internode", "cm", "in"),
    Column("condition"),
    Column("lean"),
)

FRAME = (
    "form",
    "trunk thickness",
    "cordon height",
    "fruiting wire",
    "catch wires",
    "top wire",
    "trimmed at",
    "left arm length",
    "left arm thickness",
    "right arm length",
    "right arm thickness",
)
"""Lines above the wood, each a name and a value: what the vine hangs on."""

SHEET_FORMS = tuple(dict.fromkeys(form.name for form in CORDONS))
"""Names of the forms that these lines can hold; vines of others are typed as a case file."""

WOOD_WORDS = ("cane", "old")
CONDITION_WORDS = tuple(str(one.value) for one in Condition)
LEAN_WORDS = tuple(str(one.value) for one in Lean)
WORDS: Mapping[str, tuple[str, ...]] = {
    "form": SHEET_FORMS,
    "wood": WOOD_WORDS,
    "condition": CONDITION_WORDS,
    "lean": LEAN_WORDS,
}
"""Cells that hold one of a few words."""

FORMER_WORDS: Mapping[str, str] = {"dañada": "injured"}
"""Words of earlier sheets that no sheet is printed with any more; they are still read."""


def spellings(prefix: str, names: Iterable[str]) -> dict[str, str]:
    """Every spelling of some names in any language the program speaks, in small letters."""
    return {
        say(language, f"{prefix}.{name}").lower(): name for name in names for language in LANGUAGES
    }
