"""Lengths as typed and as shown."""

from __future__ import annotations

import contextlib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pencilwood.units import UnitError, format_length, parse_length


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("8 mm", 8),
        ("12cm", 120),  # no space is a usual slip, and clear
        ("1.5 m", 1500),
        ("2,5 cm", 25),  # decimal comma
        ("5/16 in", 8),  # 7.94 mm
        ("1 1/2 in", 38),  # 38.1 mm
        ("3 ft", 914),  # 914.4 mm
        ("0.5 mm", 1),  # a half goes up
        ("0 cm", 0),
        ("33 inches", 838),
        ('33"', 838),
        ("1 1/2″", 38),
        ("1 inch", 25),
        ("3 feet", 914),
        ("1 foot", 305),
    ],
)
def test_lengths_are_read_to_the_millimetre(text: str, mm: int) -> None:
    assert parse_length(text) == mm


@pytest.mark.parametrize(
    ("text", "problem"),
    [
        ("8", "no-unit"),
        ("8 km", "unknown-unit"),
        ("8 MM", "unknown-unit"),
        ("about 8 mm", "not-a-length"),
        ("-8 mm", "not-a-length"),
        ("1/0 in", "not-a-length"),
        ("nan mm", "not-a-length"),
        ("1e3 mm", "not-a-length"),
        ("", "not-a-length"),
        ("9999999999 mm", "not-a-length"),
    ],
)
def test_anything_else_is_refused_with_its_reason(text: str, problem: str) -> None:
    with pytest.raises(UnitError) as caught:
        parse_length(text)
    assert caught.value.problem == problem


@pytest.mark.parametrize(
    ("mm", "units", "language", "text"),
    [
        (8, "metric", "en", "8 mm"),
        (19, "metric", "en", "19 mm"),
        (20, "metric", "en", "2 cm"),
        (38, "metric", "en", "3.8 cm"),
        (125, "metric", "es", "12,5 cm"),
        (2150, "metric", "en", "215 cm"),
        (12_000, "metric", "en", "12 m"),
        (8, "us", "en", "5/16 in"),
        (13, "us", "en", "1/2 in"),
        (38, "us", "en", "1 1/2 in"),
        (200, "us", "en", "8 in"),
        (2150, "us", "en", "7 ft"),
    ],
)
def test_lengths_are_shown_as_a_tape_reads(mm: int, units: str, language: str, text: str) -> None:
    assert format_length(mm, units, language) == text  # type: ignore[arg-type]


@given(st.integers(0, 9_999))
def test_a_metric_length_shown_is_read_back_the_same(mm: int) -> None:
    assert parse_length(format_length(mm)) == mm


@given(st.text(max_size=30))
def test_any_text_is_read_or_refused(text: str) -> None:
    with contextlib.suppress(UnitError):
        assert parse_length(text) >= 0
