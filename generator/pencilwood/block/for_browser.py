"""What a page must carry so that the browser can do the same sums: fields, units, bands, words."""

from __future__ import annotations

from dataclasses import asdict
from fractions import Fraction

from pencilwood.block.crop_load import BANDS
from pencilwood.block.field import Field
from pencilwood.block.field_list import FIELDS
from pencilwood.block.measures import MEASURES, UNITS
from pencilwood.block.numbers import Range
from pencilwood.block.questions import QUESTIONS
from pencilwood.units import UnitSystem
from pencilwood.words import catalogue, fitting, say

_OWN = "block."
_UNIT_SYSTEMS: tuple[UnitSystem, ...] = ("metric", "us")
# Said on the trainer's machine only.
_KEPT_BACK = ("block.page.", "block.cli.", "block.status.")


def page_data(language: str, units: UnitSystem) -> dict[str, object]:
    """The data as JSON can hold it; exact numbers are written as fractions."""
    return {
        "language": language,
        "show": units,
        "strings": {
            key.removeprefix(_OWN): sentence
            for key, sentence in catalogue(language).items()
            if key.startswith(_OWN) and not key.startswith(_KEPT_BACK)
        },
        "units": {
            kind: {unit: _fraction(factor) for unit, factor in factors.items()}
            for kind, factors in UNITS.items()
        },
        "measures": {name: asdict(measure) for name, measure in MEASURES.items()},
        "fields": {name: _field(field, language) for name, field in FIELDS.items()},
        "questions": [
            {"name": one.name, "asked": list(one.asked), "optional": list(one.optional)}
            for one in QUESTIONS.values()
        ],
        "bands": {
            name: {key: [_fraction(band.low), _fraction(band.high)] for key, band in bands.items()}
            for name, bands in BANDS.items()
        },
    }


def _fraction(value: Fraction) -> str:
    return f"{value.numerator}/{value.denominator}"


def _field(field: Field, language: str) -> dict[str, object]:
    usual = field.usual()
    low, high = field.bounds() if field.measure else (Fraction(0), Fraction(0))
    three = isinstance(usual, Range) and (usual.low, usual.likely, usual.high)
    return {
        "measure": field.measure,
        "low": _fraction(low),
        "high": _fraction(high),
        "choices": list(field.choices),
        "ranged": field.ranged,
        "standard": "" if field.measure else field.default,
        "usual": [_fraction(one) for one in three] if three else None,
        "digits": usual.digits if isinstance(usual, Range) else None,
        "note": {one: usual_note(field, language, one) for one in _UNIT_SYSTEMS},
    }


def usual_note(field: Field, language: str, units: UnitSystem) -> str:
    """What is usual, how well it is known and from where; empty where nothing is known."""
    source = field.source_in(language)
    if not field.default and not source:
        return ""
    return say(
        language,
        fitting(
            "block.form.usual" if field.default else "block.form.known", "" if source else "bare"
        ),
        usual=usual_words(field, language, units),
        status=say(language, f"block.status.{field.status}"),
        source=source,
    )


def usual_words(field: Field, language: str, units: UnitSystem) -> str:
    """The default in words; empty where there is none."""
    usual = field.usual()
    return "" if usual is None else field.text(usual, units, language)
