"""A form and a page ask and tell in the reader's own units, in whole sentences."""

import re

import pytest

from block_asking import ask
from pencilwood.block.field_list import FIELDS
from pencilwood.block.for_browser import usual_note
from pencilwood.units import UnitSystem
from pencilwood.words import LANGUAGES


@pytest.mark.parametrize("language", LANGUAGES)
def test_what_is_usual_is_told_in_whole_sentences(language: str) -> None:
    notes = [usual_note(field, language, "metric") for field in FIELDS.values()]
    assert any(notes)
    assert all(re.fullmatch(r"[^.].*[^.:;, ]\.", note) for note in notes if note)


@pytest.mark.parametrize(
    ("units", "language", "said"),
    [
        (
            "metric",
            "en",
            "The formula counts by 0.4536 kg (1 lb) of prunings: 0.6 kg ÷ 0.4536 kg = 1.323.",
        ),
        ("us", "en", "Prunings in pounds: 1.323 lb (0.6 kg)."),
        ("us", "es", "Madera de poda en libras: 1,323 lb (0,6 kg)."),
    ],
)
def test_the_pound_of_the_formula_stands_in_the_readers_unit(
    units: UnitSystem, language: str, said: str
) -> None:
    answer = ask("buds", prunings="0.6 kg", formula="20+20")
    first, _ = answer.steps
    assert first.text("step", units, language).replace("\u00a0", " ") == said
    asked = FIELDS["formula"].label(units, language).replace("\u00a0", " ")
    assert re.search(r"0[.,]4536 kg", asked)
    assert re.search(r"\b(?:1 lb|pound|libra)\b", asked)
