"""Sums with round numbers, worked by hand, and what is said beside them.

The numbers are chosen so that a head can check them; the published examples stand in their own
files. Each row says which slip it would show.
"""

from __future__ import annotations

import re
from fractions import Fraction

import pytest

from block_asking import ask
from pencilwood.block.answer import as_json, as_texts
from pencilwood.block.errors import BlockError
from pencilwood.block.field_list import FIELD_BY_KEY
from pencilwood.block.renovation import groups
from pencilwood.words import LANGUAGES

VINES = {"row_spacing": "2 m", "vine_spacing": "1 m", "missing_vines": "0 %"}
DAY = {"vines": "1000", "time_per_vine": "72 s", "working_day": "4 h"}  # 20 hours of work
SPRING = {
    "buds": "20",
    "shoots_per_bud": "1",
    "large_wounds": "2",
    "shoots_per_wound": "2",  # 24 shoots are expected
    "canopy_length": "1 m",
}

SUMS = [
    # 10 t/ha on 5,000 vines is 2 kg each; a bud gives 2 clusters of 100 g: multiplied, not divided
    (
        "buds-for-crop",
        {
            **VINES,
            "target_crop": "10 t/ha",
            "shoots_per_bud": "1",
            "clusters_per_shoot": "2",
            "cluster_weight": "100 g",
        },
        {"buds": 10, "vine-crop": 2000},
    ),
    # 20 h / (2 people x 4 h) = 2.5: days are rounded up, and people and hours share the work
    ("crew", {**DAY, "people": "2"}, {"work": 72000, "days": 3}),
    # 20 h / (5 people x 4 h) = 1: a whole day needs no further one
    ("crew", {**DAY, "people": "5"}, {"days": 1}),
    # 20 h / (2 days x 4 h) = 2.5: the same the other way round
    ("crew", {**DAY, "days": "2"}, {"people": 3}),
    # 24 expected, 15 wanted
    ("thinning", {**SPRING, "target_shoots": "15 /m"}, {"take-off": 9, "expected-shoots": 24}),
    # 24 expected, 25 wanted: never less than nothing, and not one either
    ("thinning", {**SPRING, "target_shoots": "25 /m"}, {"take-off": 0, "target-shoots": 25}),
    # a spur every 20 cm on 20 cm: one fits, which is no fault
    (
        "room",
        {"arms": "1", "arm_length": "20 cm", "spur_spacing": "20 cm", "buds_per_spur": "2"},
        {"spurs": 1},
    ),
]


@pytest.mark.parametrize(("question", "texts", "figures"), SUMS)
def test_a_sum_by_hand(question: str, texts: dict[str, str], figures: dict[str, int]) -> None:
    answer = ask(question, **texts)
    assert {name: answer.figure(name).likely for name in figures} == figures


WINTERS = [
    ("10 %", "purdue", ["winter-same", "winter-alive"]),  # few are dead: as many as ever
    ("20 %", "purdue", ["winter-more", "winter-alive"]),
    ("20 %", "full", ["winter-full", "winter-alive"]),
    ("0 %", "full", ["winter-same", "winter-alive"]),  # none is dead: nothing to make up
]


@pytest.mark.parametrize(("dead", "rule", "steps"), WINTERS)
def test_the_winter_sum_says_what_it_did(dead: str, rule: str, steps: list[str]) -> None:
    answer = ask("winter", buds_wanted="40", dead_buds=dead, winter_rule=rule)
    assert [one.name for one in answer.steps] == steps


def test_more_buds_after_winter_are_named_as_a_share() -> None:
    """Purdue at 20 % dead: 35 % more, 54 for 40."""
    answer = ask("winter", buds_wanted="40", dead_buds="20 %", winter_rule="purdue")
    assert re.search(r"\b35\s?%.*\b54\b", as_texts(answer, "metric", "en")["steps"][0][0])


@pytest.mark.parametrize(("shoots", "said"), [("15 /m", []), ("25 /m", ["nothing-to-take-off"])])
def test_nothing_to_take_off_is_said_only_then(shoots: str, said: list[str]) -> None:
    answer = ask("thinning", **SPRING, target_shoots=shoots)
    assert [one.name for one in answer.remarks] == said


def test_a_renovation_begins_with_its_first_year() -> None:
    """Ten vines of 3 kg, every other one cut in the first year: half of the crop is left."""
    answer = ask(
        "renovation",
        vines="10",
        crop="3 kg",
        way="every-other-vine",
        first_year="0 %",
        renewal_time="10 min",
    )
    first_year = as_texts(answer, "metric", "en")["steps"][1][0]
    assert re.search(r"\b5\b", first_year)
    assert re.search(r"\b50\s?%", first_year)
    share = next(one for one in answer.rows[0] if one.name == "crop-share")
    assert share.value.likely == Fraction(1, 2)


@pytest.mark.parametrize(
    ("way", "recovery", "en", "es"),
    [
        pytest.param(
            "every-vine", (0, 50, 100), "over 2 years", "en 2 años", id="the third is a full crop"
        ),
        pytest.param("every-vine", (0, 100, 100), "in 1 year", "en 1 año", id="one year is one"),
        pytest.param(
            "every-other-vine",
            (0, 50, 80),
            "over 5 years",
            "en 5 años",
            id="the second half is cut two years later, and takes three to bear in full",
        ),
        pytest.param("every-vine", (100, 100, 100), "", "", id="nothing is lost in no year"),
    ],
)
def test_an_answer_says_over_how_many_years_crop_is_lost(
    way: str, recovery: tuple[int, int, int], en: str, es: str
) -> None:
    first, second, third = (f"{share} %" for share in recovery)
    shares = {"first_year": first, "second_year": second, "third_year": third}
    answer = ask("renovation", vines="10", crop="3 kg", way=way, years_between="2", **shares)
    for language, plain, said in (
        ("en", "Crop lost in all", en),
        ("es", "Cosecha perdida en total", es),
    ):
        label = as_texts(answer, "metric", language)["figures"][0][0]
        assert label == ", ".join(filter(None, (plain, said)))


@pytest.mark.parametrize(
    ("prices", "cost"),
    [
        ({}, None),
        ({"pay": "20 /h"}, 20),
        ({"price": "2 /kg"}, 60),
        ({"pay": "20 /h", "price": "2 /kg"}, 80),
    ],
)
def test_a_renovation_costs_work_and_lost_crop(prices: dict[str, str], cost: int | None) -> None:
    """Ten vines of 3 kg, all cut in one year with 6 minutes each: one hour, and 30 kg lost."""
    shares = {"first_year": "0 %", "second_year": "100 %", "third_year": "100 %"}
    given = {"vines": "10", "crop": "3 kg", "way": "every-vine", "renewal_time": "6 min"}
    answer = ask("renovation", **given, **shares, **prices)
    told = [one.value.likely for one in answer.figures if one.name == "cost"]
    first_year = [one.value.likely for one in answer.rows[0] if one.name == "cost"]
    assert told == first_year == ([] if cost is None else [cost])


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_table_is_shown_and_told_in_the_units_asked_for(language: str) -> None:
    answer = ask("renovation", vines="1000", crop="3 kg", way="every-vine")
    metric, us = (as_texts(answer, units, language) for units in ("metric", "us"))
    assert len(metric["columns"]) == len(metric["rows"][0]) == len(answer.rows[0])
    assert metric["rows"] != us["rows"]
    told = [as_json(answer, units)["rows"] for units in ("metric", "us")]
    assert told[0] != told[1]


def test_a_whole_number_is_told_as_one() -> None:
    told = as_json(ask("crew", **DAY, people="2"), "metric")["figures"]
    assert isinstance(told, dict)
    assert repr(told["days"]["likely"]) == "3"


def test_an_answer_knows_which_figures_it_has() -> None:
    answer = ask("crew", **DAY, people="2")
    assert answer.has("days")
    assert not answer.has("people")
    assert answer.has("work")


@pytest.mark.parametrize("key", ["winter rule", "way", "below one pound", "vigour band"])
def test_a_wrong_choice_is_told_with_the_right_ones(key: str) -> None:
    field = FIELD_BY_KEY[key]
    with pytest.raises(BlockError, match=r"^not-a-choice$") as refused:
        field.read("perhaps")
    for language in LANGUAGES:
        told = refused.value.told(language)
        assert "perhaps" in told
        assert all(name in told for name in field.choices)


def test_a_share_a_year_needs_its_share() -> None:
    with pytest.raises(BlockError, match=r"^share-needed$") as refused:
        groups("share-a-year", 10, None, 1, None)
    assert refused.value.field == "share_a_year"
