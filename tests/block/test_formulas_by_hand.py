"""The formula that paper prints under a sum gives what the engine gives.

Each formula is read as it is printed, in each language: its words are looked up in a table, its
signs are worked, and every result that it names is compared. So neither can change alone.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from fractions import Fraction

import pytest

from block_asking import ask, given_by
from formulas_by_hand import NAMES, results
from pencilwood.block.answer import Answer, Figure
from pencilwood.block.bud_load import Formula
from pencilwood.block.errors import BlockError
from pencilwood.block.measures import ACRE_M2, FOOT_MM, HECTARE_M2
from pencilwood.block.numbers import Range
from pencilwood.block.questions import QUESTIONS
from pencilwood.words import LANGUAGES, say
from sums_on_paper import printed_numbers

MM2_PER_M2 = 1_000_000
AREA_M2 = 8_000
NEAR = 0.0002
"""The printed pound has four digits, and so has a square foot of an acre."""

LAYOUT = {"row_spacing": "2.5 m", "vine_spacing": "1.2 m", "missing_vines": "4 %"}
PARTS = {"shoots_per_bud": "0.8", "clusters_per_shoot": "1.7", "cluster_weight": "95 g"}
ARMS = {"arms": "2", "arm_length": "55 cm", "spur_spacing": "9 cm", "buds_per_spur": "2"}
DAY = {"vines": "1000", "time_per_vine": "72 s", "working_day": "7 h"}
AREA = {"area": Fraction(AREA_M2 * MM2_PER_M2)}

# Sum, what is given, numbers that the formula names and the sum does not ask for, and where its
# results stand in the answer: under their own names, but for those that are told here.
FORMULAS = [
    pytest.param(
        "buds", {"prunings": "0.8 kg", "formula": "30+10"}, {}, {}, id="a pound is taken off once"
    ),
    pytest.param("buds-by-weight", {"prunings": "0.6 kg", "buds_for_weight": "35 /kg"}, {}, {}),
    pytest.param(
        "buds-for-crop",
        {**LAYOUT, **PARTS, "target_crop": "8 t/ha"},
        {**AREA, "wanted crop": Fraction(AREA_M2 * 800)},
        {},
        id="the crop of the area is shared among living vines",
    ),
    pytest.param(
        "winter",
        {"buds_wanted": "27", "dead_buds": "25 %", "winter_rule": "full"},
        {},
        {},
        id="27 by three fourths are 36, with nothing to round",
    ),
    pytest.param("room", ARMS, {}, {"buds": "room"}, id="6.1 spurs on an arm are 6, on two 12"),
    pytest.param("fit", {**ARMS, "buds_wanted": "30"}, {}, {}, id="the same room in one line"),
    pytest.param(
        "crop",
        {**LAYOUT, **PARTS, "buds": "18", "area": "0.8 ha"},
        {**AREA, "living-buds": Fraction(18)},
        {"crop": "block-crop"},
        id="the whole block, without what is missing",
    ),
    pytest.param("crop-load", {"crop": "2.4 kg", "prunings": "0.6 kg"}, {}, {}),
    pytest.param("vigour", {"shoots": "15 /m", "cane_weight": "40 g"}, {}, {}),
    pytest.param(
        "vines", {**LAYOUT, "area": "0.8 ha"}, AREA, {"living": "vines"}, id="missing ones go last"
    ),
    pytest.param(
        "leaves",
        {
            "trimming_height": "215 cm",
            "arm_height": "90 cm",
            "climb": "7 cm",
            "shoot_length": "120 cm",
            "nodes": "17",
        },
        {},
        {},
        id="16.7 leaves are 16",
    ),
    pytest.param(
        "leaf-fruit",
        {
            "leaves": "17",
            "leaf_size": "95 cm2",
            "leaf_for_fruit": "1 m2/kg",
            "shoots": "13 /m",
            "fruit": "180 g",
        },
        {},
        {},
        id="of a shoot, and of all on a length",
    ),
    pytest.param(
        "crew",
        {
            **DAY,
            "people": "2",
            "days": "3",
            "pay": "16 /h",
            "time_after_machine": "30 s",
            "machine_time": "5 h",
            "machine_pay": "90 /h",
        },
        {},
        {},
        id="20 h are 1.4 days for two and 0.95 people for three days, rounded up",
    ),
    pytest.param(
        "thinning",
        {
            "buds": "20",
            "shoots_per_bud": "0.9",
            "large_wounds": "2",
            "shoots_per_wound": "2",
            "canopy_length": "1.1 m",
            "target_shoots": "13 /m",
        },
        {},
        {},
        id="22 come and 14.3 are wanted",
    ),
]

# Figures that no formula names: they are the same on another area, or have a test of their own.
NOT_IN_FORMULAS = {
    "crop": {"crop-on-area", "clusters"},
    "crew": {"work-after", "saved", "pay-after"},
    "fit": {"buds", "spurs", "density"},
    "room": {"density"},
    "vines": {"vines-per-hectare", "vines-per-acre"},
}


def numbers_of(given: Mapping[str, str]) -> dict[str, Fraction]:
    """Everything that was given, by the name of its field."""
    values: dict[str, Fraction] = {}
    for name, value in given_by(**given).items():
        if isinstance(value, Range):
            values[name] = value.likely
        elif isinstance(value, Formula):
            values |= {"first": Fraction(value.first_buds), "further": Fraction(value.further_buds)}
    values.setdefault("vine-crop", values.pop("crop_g", Fraction(0)))
    return {name: value for name, value in values.items() if value}


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize(("question", "given", "more", "stands"), FORMULAS)
def test_a_formula_gives_what_the_sum_gives(
    question: str,
    given: dict[str, str],
    more: dict[str, Fraction],
    stands: dict[str, str],
    language: str,
) -> None:
    answer = ask(question, **given)
    text = say(language, f"pages.sums.by-hand.{question}")
    compared = set()
    for name, value in results(text, language, numbers_of(given) | more):
        figure = stands.get(name, name)
        if answer.has(figure):
            assert float(value) == pytest.approx(float(answer.figure(figure).likely), rel=NEAR), (
                name
            )
            compared.add(figure)
    missing = {one.name for one in answer.figures} - compared
    assert missing == NOT_IN_FORMULAS.get(question, set())


def formula(question: str, language: str) -> str:
    return say(language, f"pages.sums.by-hand.{question}")


def sentence_with(question: str, language: str, words: str) -> str:
    """The one sentence of a formula that says this."""
    sentences = re.split(r"\.(?:\s+|$)", formula(question, language))
    (found,) = (one for one in sentences if words in one)
    return found


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_sum_has_a_formula_that_is_compared(language: str) -> None:
    told = {str(row.values[0]) for row in FORMULAS} | {"renovation"}
    assert told == set(QUESTIONS)
    # No words of the table are left over from a formula that is gone.
    every = " ".join(formula(question, language) for question in QUESTIONS).lower()
    assert [words for words in NAMES[language] if words not in every] == []


@pytest.mark.parametrize(("language", "words"), [("en", "Below one"), ("es", "Con menos")])
def test_less_than_a_pound_leaves_what_was_chosen(language: str, words: str) -> None:
    """300 g are two thirds of a pound: 30 buds held, or 20 by its share."""
    given = {"prunings": "300 g", "formula": "30+10"}
    pounds = Fraction(300) / Fraction("453.59237")
    ((_, share),) = results(
        sentence_with("buds", language, words), language, {"first": Fraction(30), "pounds": pounds}
    )
    assert ask("buds", **given, below_one_pound="scale").main.likely == share
    assert ask("buds", **given, below_one_pound="hold").main.likely == 30


@pytest.mark.parametrize("language", LANGUAGES)
def test_published_winter_rules_change_where_the_formula_says(language: str) -> None:
    def buds(dead: Fraction, rule: str) -> Fraction | None:
        given = {"buds_wanted": "100", "winter_rule": rule}
        try:
            return ask("winter", **given, dead_buds=f"{int(dead * 100)} %").main.likely
        except BlockError:
            return None

    def numbers(name: str) -> list[Fraction]:
        text = sentence_with("winter", language, name)
        return [one.value for one in printed_numbers(text, language)]

    step = Fraction(1, 100)
    fewest, most, whole = numbers("Cornell")
    fewest /= 100  # one sign stands behind both
    cornell = [buds(one, "cornell") for one in (fewest - step, fewest, most, most + step)]
    assert cornell == [100, 100 * (whole + fewest), 100 * (whole + most), None]
    same, some, by_some, half, by_half = numbers("Purdue")
    at = (same, same + step, some, some + step, half, half + step)
    purdue = [100, 100 * by_some, 100 * by_some, 100 * by_half, 100 * by_half, None]
    assert [buds(one, "purdue") for one in at] == purdue


@pytest.mark.parametrize("language", LANGUAGES)
def test_areas_in_the_formula_are_those_of_the_engine(language: str) -> None:
    hectare, acre = printed_numbers(formula("vines", language), language)[-2:]
    assert hectare.value == HECTARE_M2 * MM2_PER_M2
    assert float(acre.value) == pytest.approx(float(ACRE_M2 * MM2_PER_M2), rel=NEAR)
    assert acre.value == 43_560 * FOOT_MM**2


@pytest.mark.parametrize("wanted", [20, 30])
@pytest.mark.parametrize("language", LANGUAGES)
def test_the_smaller_number_is_left(language: str, wanted: int) -> None:
    """The arms hold 24."""
    last = formula("fit", language).lower().rstrip(".").rpartition(": ")[2]
    names = [NAMES[language][one] for one in re.split(r",\s*(?:or|o)\s+", last)]
    answer = ask("fit", **ARMS, buds_wanted=str(wanted))
    values = {"room": answer.figure("room").likely, "wanted_buds": Fraction(wanted)}
    assert answer.main.likely == min(values[name] for name in names)


@pytest.mark.parametrize(("language", "words"), [("en", "With a machine"), ("es", "Con máquina")])
def test_a_machine_leaves_work_by_hand_and_has_its_cost(language: str, words: str) -> None:
    given = {
        **DAY,
        "people": "2",
        "pay": "16 /h",
        "time_after_machine": "30 s",
        "machine_time": "5 h",
        "machine_pay": "90 /h",
    }
    answer = ask("crew", **given)
    sentence = sentence_with("crew", language, words)
    (_, by_hand), (_, machine) = results(sentence, language, numbers_of(given))
    assert by_hand == answer.figure("work-after").likely
    assert by_hand * Fraction(16, 3600) + machine == answer.figure("pay-after").likely


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize(("year", "share"), [(1, "10 %"), (2, "60 %")])
def test_a_year_of_a_renovation(language: str, year: int, share: str) -> None:
    """Ten vines of 3 kg; half of them were cut, the others wait for two years."""
    given = {
        "vines": "10",
        "crop": "3 kg",
        "way": "every-other-vine",
        "years_between": "2",
        "first_year": "10 %",
        "second_year": "60 %",
        "renewal_time": "6 min",
    }
    answer = ask("renovation", **given)
    cut, recovery = Fraction(5), Fraction(share.removesuffix(" %")) / 100
    more = {"cut": cut, "not cut": 10 - cut, "recovery": recovery}
    found = dict(results(formula("renovation", language), language, numbers_of(given) | more))
    row = {one.name: one.value.likely for one in answer.rows[year - 1]}
    assert found["crop"] == row["year-crop"]
    assert found["full crop"] == 30_000
    first_work = next(one.value.likely for one in answer.rows[0] if one.name == "work")
    assert found["extra work"] == first_work == answer.figure("work").likely / 2
    lost = sum(found["full crop"] - crop.value.likely for crop in crops(answer))
    assert lost == answer.figure("lost-crop").likely


def crops(answer: Answer) -> list[Figure]:
    return [one for row in answer.rows for one in row if one.name == "year-crop"]
