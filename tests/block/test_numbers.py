"""Ranges and rounding: what holds for every number."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pencilwood.block.errors import BlockError
from pencilwood.block.field_list import FIELDS
from pencilwood.block.measures import MEASURES, UNITS
from pencilwood.block.numbers import Range, as_range, rounded, significant
from pencilwood.block.shown import decimal, read_range, shown
from pencilwood.words import LANGUAGES

amounts = st.fractions(min_value=0, max_value=10**6, max_denominator=1000)
positive = st.fractions(min_value=Fraction(1, 1000), max_value=10**6, max_denominator=1000)


@st.composite
def ranges(draw: st.DrawFn, values: st.SearchStrategy[Fraction] = amounts) -> Range:
    low, likely, high = sorted(draw(st.tuples(values, values, values)))
    return Range(low, likely, high, draw(st.one_of(st.none(), st.integers(1, 6))))


@given(ranges(), ranges(positive))
def test_every_pair_of_values_lies_inside_the_result(one: Range, other: Range) -> None:
    for a in (one.low, one.likely, one.high):
        for b in (other.low, other.likely, other.high):
            for result, value in (
                (one + other, a + b),
                (one - other, a - b),
                (one * other, a * b),
                (one / other, a / b),
            ):
                assert result.low <= value <= result.high


@given(ranges(), ranges())
def test_adding_and_multiplying_may_be_turned(one: Range, other: Range) -> None:
    assert one + other == other + one
    assert one * other == other * one


@given(st.fractions(min_value=-(10**9), max_value=10**9), st.integers(1, 6))
def test_rounding_is_close_and_stays(value: Fraction, digits: int) -> None:
    near = significant(value, digits)
    assert significant(near, digits) == near
    assert abs(near - value) <= abs(value) * Fraction(1, 2 * 10 ** (digits - 1))
    assert significant(-value, digits) == -near


ROUNDED = [
    # value, digits, whole, shown
    ("61.5", None, True, "62"),
    ("1724", 2, True, "1720"),
    ("12345.6", None, True, "12,346"),
    ("0.88185", None, False, "0.8819"),
    ("7.5385", 2, False, "7.5"),
    ("7.5385", 1, False, "7.5"),
    ("7.5385", 6, False, "7.539"),
    ("0", 2, False, "0"),
]


@pytest.mark.parametrize(("value", "digits", "whole", "text"), ROUNDED)
def test_shown_digits(value: str, digits: int | None, whole: bool, text: str) -> None:
    assert decimal(rounded(Fraction(value), digits, whole=whole), "en") == text


def test_numbers_in_spanish() -> None:
    assert decimal(Fraction("12345.5"), "es") == "12\u00a0345,5"
    assert decimal(Fraction("-0.5"), "es") == "-0,5"


@pytest.mark.parametrize("kind", UNITS)
@given(value=positive)
def test_units_there_and_back(kind: str, value: Fraction) -> None:
    for factor in UNITS[kind].values():
        assert value * factor / factor == value


def test_units_are_what_they_are() -> None:
    assert UNITS["length"]["ft"] == 12 * UNITS["length"]["in"] == Fraction("304.8")
    assert UNITS["area"]["ac"] == 43_560 * (UNITS["length"]["ft"] / 1000) ** 2
    assert UNITS["weight"]["ton"] == 2000 * UNITS["weight"]["lb"]
    assert UNITS["weight on area"]["t/ha"] == 100


READ = [
    # text, measure, three values in our own units, digits
    ("2.5 lb", "vine-weight", ["1133.980925"] * 3, 2),
    ("0.9 to 1.3 kg", "vine-weight", ["900", "1100", "1300"], 1),
    ("0,9 a 1,0 a 1,3 kg", "vine-weight", ["900", "1000", "1300"], 1),
    ("54-63 s", "seconds", ["54", "58.5", "63"], 2),
    ("54 – 63 s", "seconds", ["54", "58.5", "63"], 2),
    ("8 ft", "spacing", ["2438.4"] * 3, None),
    ("8 feet", "spacing", ["2438.4"] * 3, None),
    ('96"', "spacing", ["2438.4"] * 3, None),
    ("96 inches", "spacing", ["2438.4"] * 3, None),
    ("4 acres", "area", ["16187.4256896"] * 3, None),
    ("1 acre", "area", ["4046.8564224"] * 3, None),
    ("5 %", "share", ["0.05"] * 3, 1),
    ("0 %", "share", ["0"] * 3, None),
    ("24 buds", "buds", ["24"] * 3, None),
    ("16 EUR/h", "pay", ["0.00444444"] * 3, 2),
    ("95 cm²", "leaf-size", ["9500"] * 3, 2),
]


@pytest.mark.parametrize(("text", "measure", "values", "digits"), READ)
def test_reading(text: str, measure: str, values: list[str], digits: int | None) -> None:
    found = read_range(text, MEASURES[measure])
    three = [float(one) for one in (found.low, found.likely, found.high)]
    assert three == pytest.approx([float(value) for value in values], rel=1e-5)
    assert found.digits == digits


REFUSED = [
    ("", "not-a-number"),
    ("many", "not-a-number"),
    ("-3 kg", "not-a-number"),
    ("1e3 kg", "unknown-unit"),
    ("1.2.3 kg", "not-a-number"),
    ("1 to 2 to 3 to 4 kg", "not-a-number"),
    ("2.5", "no-unit"),
    ("2.5 stone", "unknown-unit"),
    ("3 to 2 kg", "turned-round"),
]


@pytest.mark.parametrize(("text", "problem"), REFUSED)
def test_refusing(text: str, problem: str) -> None:
    with pytest.raises(BlockError, match=f"^{problem}$"):
        read_range(text, MEASURES["vine-weight"])


@given(st.text(max_size=40))
def test_any_text_is_read_or_refused(text: str) -> None:
    prunings = FIELDS["prunings_g"]
    for language in LANGUAGES:
        trouble = prunings.trouble(text, language)
        assert trouble or isinstance(prunings.read(text), Range)


def test_a_range_is_shown_as_one_number_when_its_ends_look_alike() -> None:
    near = Range(Fraction(2501), Fraction(2502), Fraction(2503), 2)
    assert shown(near, "vine-weight", "metric", "en") == "2.5 kg"
    assert shown(as_range(1), "buds", "metric", "en") == "1 bud"
    far = Range(Fraction(2300), Fraction(2500), Fraction(2800), 2)
    assert shown(far, "vine-weight", "metric", "es") == "2,3 a 2,8 kg (lo más probable: 2,5)"


@pytest.mark.parametrize(
    ("grams", "text"),
    [
        ((4000, 5000, 6400), "4,0 a 6,4 kg (lo más probable: 5,0)"),
        ((400, 500, 640), "0,40 a 0,64 kg (lo más probable: 0,50)"),
        # Twelve was rounded to whole kilograms, and half a kilogram to less than the other two.
        ((9500, 11000, 12000), "9,5 a 12 kg (lo más probable: 11)"),
        ((500, 1000, 2000), "0,5 a 2 kg (lo más probable: 1)"),
        ((3000, 4000, 5000), "3 a 5 kg (lo más probable: 4)"),
    ],
)
def test_a_range_has_the_same_decimals_where_its_numbers_are_of_one_size(
    grams: tuple[int, int, int], text: str
) -> None:
    low, likely, high = map(Fraction, grams)
    assert shown(Range(low, likely, high, 2), "vine-weight", "metric", "es") == text


def test_dividing_by_nothing_is_refused() -> None:
    with pytest.raises(BlockError, match="divided-by-nothing"):
        as_range(1) / Range(Fraction(0), Fraction(1), Fraction(2))
