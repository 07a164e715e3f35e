"""What a program is told of a sum is in the unit named; what stands by a field names its source."""

from __future__ import annotations

import re
from fractions import Fraction
from typing import Any

import pytest

from block_asking import ask
from pencilwood.block.answer import as_json, as_texts
from pencilwood.block.field_list import FIELDS
from pencilwood.block.for_browser import usual_note
from pencilwood.units import UnitSystem
from pencilwood.words import LANGUAGES

SHORT_TON_KG = Fraction("907.18474")
"""NIST Special Publication 811, 2008 edition, appendix B.8: 2000 lb (from memory)."""


@pytest.mark.parametrize(
    ("units", "unit", "weight"),
    [("metric", "t", Fraction(3)), ("us", "ton", Fraction(3000) / SHORT_TON_KG)],
)
def test_a_program_is_told_figures_in_the_unit_named(
    units: UnitSystem, unit: str, weight: Fraction
) -> None:
    """A thousand vines of 3 kg lose one crop and then bear in full: 3,000 kg."""
    shares = {"first_year": "0 %", "second_year": "100 %", "third_year": "100 %"}
    given = {"vines": "1000", "crop": "3 kg", "way": "every-vine", "renewal_time": "6 min"}
    told: Any = as_json(ask("renovation", **given, **shares), units)["figures"]
    assert told["lost-crop"]["unit"] == unit
    assert told["lost-crop"]["likely"] == pytest.approx(float(weight), rel=0.05)
    assert (told["work"]["likely"], told["work"]["unit"]) == (100, "h")


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("units", ["metric", "us"])
def test_what_is_usual_is_told_with_its_source(units: UnitSystem, language: str) -> None:
    sources = {name: field.source_in(language) for name, field in FIELDS.items()}
    assert len([one for one in sources.values() if one]) > len(FIELDS) / 3
    for name, field in FIELDS.items():
        note = usual_note(field, language, units)
        assert bool(note) == bool(field.default or sources[name]), name
        assert sources[name].rstrip(".") in note, name


@pytest.mark.parametrize(
    ("buds", "shoots_per_bud", "why"),
    [
        ("18", "0.75", "13.5 + 2 come and 14.3 are wanted: in whole shoots 16 - 14 would be 1"),
        ("19", "0.9", "whole shoots would be right here by chance"),
        ("31", "0.83", "three digits behind the point"),
    ],
)
def test_shoots_to_take_off_add_up_as_they_are_printed(
    buds: str, shoots_per_bud: str, why: str
) -> None:
    given = {"large_wounds": "1", "shoots_per_wound": "2"}
    wanted = {"canopy_length": "1.1 m", "target_shoots": "13 /m"}
    answer = ask("thinning", buds=buds, shoots_per_bud=shoots_per_bud, **given, **wanted)
    *_, step = as_texts(answer, "metric", "en")["steps"]
    come, keep, off = (Fraction(one) for one in re.findall(r"[0-9.]*[0-9]", step[0]))
    assert come - keep == off, why
