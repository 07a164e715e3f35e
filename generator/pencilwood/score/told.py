"""What a charge says, in the reader's language and units."""

from __future__ import annotations

from pencilwood.rules import RULE_BY_NAME
from pencilwood.score.judge import Charge
from pencilwood.units import UnitSystem, format_length


def message_text(charge: Charge, language: str, units: UnitSystem) -> str:
    """The rule's sentence for a charge; facts that end in `_mm` are shown as lengths."""
    facts = {
        name.removesuffix("_mm"): format_length(value, units, language)
        if name.endswith("_mm")
        else str(value)
        for name, value in charge.facts.items()
    }
    return RULE_BY_NAME[charge.rule].messages[charge.message][language].format_map(facts)
