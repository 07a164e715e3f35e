"""What stands in a refusal, which field it is about, and how single numbers are shown.

Each row holds a slip that a change of the code by one letter once passed unnoticed.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from block_asking import ask
from pencilwood.block.answer import Answer
from pencilwood.block.errors import BlockError
from pencilwood.block.field_list import FIELD_BY_KEY
from pencilwood.block.numbers import as_range, spread
from pencilwood.block.shown import read_number, shown_number
from pencilwood.block.vines_per_area import living_vines
from pencilwood.block.whole_block import work_block

REFUSALS = [
    # an empty text is missing, and its field is named
    ("prunings", "", "missing", {}),
    # spaces alone are nothing
    ("prunings", "   ", "missing", {}),
    # an unknown unit is quoted, with the units there are
    ("row spacing", "2 furlongs", "unknown-unit", {"found": "furlongs"}),
    # a number without a unit: the units there are
    ("row spacing", "2", "no-unit", {}),
    # the first figure of a formula is at least one bud
    ("formula", "0+10", "not-a-formula", {"found": "0+10"}),
    # people are counted
    ("people", "2.5", "not-whole", {}),
]


@pytest.mark.parametrize(("key", "text", "problem", "facts"), REFUSALS)
def test_a_refusal_names_its_field_and_its_facts(
    key: str, text: str, problem: str, facts: dict[str, str]
) -> None:
    field = FIELD_BY_KEY[key]
    with pytest.raises(BlockError) as told:
        field.read(text)
    assert told.value.problem == problem
    assert told.value.field == field.name
    assert facts.items() <= told.value.facts.items()
    if problem in ("unknown-unit", "no-unit"):
        assert "ft" in str(told.value.facts["units"])


def test_a_value_beyond_the_bounds_is_told_with_both_bounds_and_units() -> None:
    field = FIELD_BY_KEY["row spacing"]
    with pytest.raises(BlockError) as told:
        field.read("900 m")
    assert told.value.problem == "out-of-bounds"
    for bound in ("low", "high"):
        assert str(told.value.facts[bound]).endswith(" m")
    us = field.out_of_bounds("us", "es")
    assert set(us.facts) == {"low", "high"}
    assert all(str(fact).endswith((" ft", " pies", " pie")) for fact in us.facts.values())


def test_a_block_without_vines_is_refused_at_the_share_that_is_missing() -> None:
    with pytest.raises(BlockError) as told:
        living_vines(as_range(2000), as_range(1000), as_range(1))
    assert (told.value.problem, told.value.field) == ("no-vines", "missing_share")


def test_a_spread_keeps_the_digits_it_deserves() -> None:
    three = (Fraction(3), Fraction(2), Fraction(1))
    assert spread(three, 2).digits == 2
    assert (spread(three, 2).low, spread(three, 2).likely, spread(three, 2).high) == three[::-1]


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (Fraction(1), "1 vine"),  # one is told as one
        (Fraction(2), "2 vines"),
        (Fraction(7, 3), "2 vines"),  # what is counted is whole
    ],
)
def test_what_is_counted_is_whole_and_one_is_one(value: Fraction, text: str) -> None:
    assert shown_number(value, "vines", "metric", "en") == text
    assert shown_number(value, "vines", "us", "en") == text


def test_a_single_value_is_shown_to_the_digits_asked_for() -> None:
    assert shown_number(Fraction(2345), "vine-weight", "metric", "en", 2) == "2.3 kg"
    assert shown_number(Fraction(2345), "vine-weight", "metric", "en") == "2.345 kg"


def test_what_is_no_number_is_quoted_without_its_spaces() -> None:
    with pytest.raises(BlockError) as told:
        read_number(" 1.2.3 ")
    assert told.value.facts == {"found": "1.2.3"}


def test_leaves_grow_along_all_arms_together() -> None:
    """Two arms of 70 cm are 1.4 m of canopy; 40 shoots on it, 10 to the metre stay: 14."""
    texts = {"buds": "40", "arms": "2", "arm length": "70 cm"}
    texts |= {"shoots per bud": "1", "target shoots": "10 /m"}
    given = {FIELD_BY_KEY[key].name: FIELD_BY_KEY[key].read(text) for key, text in texts.items()}
    together = {"canopy_mm": FIELD_BY_KEY["canopy length"].read("1.4 m")}
    thinned, expected = (
        next(one for one in work_block(values) if one.question == "thinning")
        for values in (given, {**given, **together})
    )
    assert isinstance(thinned, Answer)
    assert thinned == expected


def test_pay_after_a_machine_counts_the_machine_too() -> None:
    """1000 vines: by hand 72 s, after the machine 36 s: 10 h at 20, and 2 h of machine at 100."""
    answer = ask(
        "crew",
        vines="1000",
        time_per_vine="72 s",
        working_day="4 h",
        people="2",
        pay="20 /h",
        time_after_machine="36 s",
        machine_time="2 h",
        machine_pay="100 /h",
    )
    assert answer.figure("pay-after").likely == 10 * 20 + 2 * 100


def test_a_vigour_says_its_sum_and_its_verdict() -> None:
    """15 shoots of 30 g on a metre are 450 g: inside 300 to 600 g."""
    answer = ask("vigour", shoots="15 /m", cane_weight="30 g", vigour_band="smart-robinson")
    assert [one.name for one in answer.steps] == ["vigour"]
    assert [one.name for one in answer.remarks] == ["vigour-inside"]
