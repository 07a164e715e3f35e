"""What every sum must keep to, beside the published examples."""

from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from block_asking import ask, given_by
from pencilwood.block.answer import Answer, as_json, as_texts
from pencilwood.block.bud_load import Formula, balanced_buds
from pencilwood.block.errors import BlockError
from pencilwood.block.field import Value
from pencilwood.block.field_list import FIELD_BY_KEY, FIELDS
from pencilwood.block.for_browser import page_data, usual_note
from pencilwood.block.measures import MEASURES, POUND_G
from pencilwood.block.numbers import Range, as_range
from pencilwood.block.questions import QUESTIONS
from pencilwood.block.renovation import groups
from pencilwood.block.spacing import smaller_of
from pencilwood.block.whole_block import Refusal, work_block
from pencilwood.words import LANGUAGES, knows, say

weights = st.fractions(min_value=Fraction(1, 10), max_value=20, max_denominator=100)
formulas = st.builds(Formula, st.integers(1, 99), st.integers(0, 30))


def balanced(pounds: Fraction, formula: Formula, below: str = "hold", **limits: Any) -> Fraction:
    weight = as_range(pounds * POUND_G)
    answer = balanced_buds(prunings_g=weight, formula=formula, below_one_lb=below, **limits)
    return answer.main.likely


@given(weights, weights, formulas, st.sampled_from(["hold", "scale"]))
def test_more_prunings_never_ask_for_fewer_buds(
    one: Fraction, other: Fraction, formula: Formula, below: str
) -> None:
    low, high = sorted((one, other))
    assert balanced(low, formula, below) <= balanced(high, formula, below)


@given(st.fractions(min_value=1, max_value=20, max_denominator=100), weights, formulas)
def test_a_further_pound_adds_the_same_everywhere(
    pounds: Fraction, more: Fraction, formula: Formula
) -> None:
    step = balanced(pounds + more, formula) - balanced(pounds, formula)
    assert step == more * formula.further_buds


@pytest.mark.parametrize(
    ("below", "pounds", "buds"),
    [("hold", "0.5", 30), ("scale", "0.5", 15), ("hold", "1", 30), ("scale", "1", 30)],
)
def test_below_one_pound_is_a_setting(below: str, pounds: str, buds: int) -> None:
    assert balanced(Fraction(pounds), Formula(30, 10), below) == buds


@given(st.integers(1, 2000), st.integers(1, 60), st.integers(1, 5))
def test_a_renovation_cuts_every_vine_once(vines: int, rows: int, wait: int) -> None:
    rows = min(rows, vines)
    for way in ("every-vine", "every-other-vine", "every-other-row", "share-a-year"):
        cut = groups(way, vines, rows, wait, Fraction(1, 4))
        assert sum(cut.values()) == vines
        assert all(count > 0 for count in cut.values())


def test_a_renovation_loses_the_same_vines_sooner_or_later() -> None:
    given = {"vines": "1000", "crop": "3 kg"}
    lost = [
        ask("renovation", **given, way=way, rows="10").main.likely
        for way in ("every-vine", "every-other-vine", "every-other-row", "share-a-year")
    ]
    assert len(set(lost)) == 1
    # Crops of 0, 50 and 80 % leave 1.7 full crops of 3 t unpicked.
    assert lost[0] == 1_700_000 * 3


def test_every_other_row_takes_the_larger_half_first() -> None:
    assert groups("every-other-row", 110, 11, 2, None) == {1: 60, 3: 50}
    assert groups("every-other-vine", 5, None, 3, None) == {1: 3, 4: 2}
    assert groups("every-other-vine", 1, None, 3, None) == {1: 1}


REFUSED = [
    ("buds", {"prunings": "1 kg", "fewest_buds": "50", "most_buds": "40"}, "floor-above-cap"),
    (
        "winter",
        {"buds_wanted": "40", "dead_buds": "81 %", "winter_rule": "cornell"},
        "beyond-cornell",
    ),
    (
        "winter",
        {"buds_wanted": "40", "dead_buds": "45 to 51 %", "winter_rule": "purdue"},
        "prune-little",
    ),
    ("winter", {"buds_wanted": "40", "dead_buds": "100 %"}, "all-dead"),
    ("room", {"arm_length": "20 cm", "spur_spacing": "21 cm"}, "no-room"),
    (
        "leaves",
        {
            "trimming_height": "90 cm",
            "arm_height": "90 cm",
            "shoot_length": "1 m",
            "nodes": "12",
        },
        "arm-above-trimming",
    ),
    ("renovation", {"vines": "10", "crop": "3 kg", "way": "every-other-row"}, "rows-needed"),
    (
        "renovation",
        {"vines": "1000", "crop": "3 kg", "way": "share-a-year", "share_a_year": "2 %"},
        "too-many-years",
    ),
    ("crew", {"vines": "10"}, "people-or-days"),
    ("crew", {"vines": "10", "people": "2", "machine_time": "3 h"}, "machine-without-hand"),
    ("buds", {}, "missing"),
]


@pytest.mark.parametrize(("question", "texts", "problem"), REFUSED)
def test_refusals(question: str, texts: dict[str, str], problem: str) -> None:
    with pytest.raises(BlockError, match=f"^{problem}$") as refused:
        ask(question, **texts)
    assert refused.value.field in FIELDS
    assert all(refused.value.told(language) for language in LANGUAGES)


PURDUE_EDGES = [("15 %", 40), ("16 %", 54), ("35 %", 54), ("36 %", 60), ("50 %", 60)]


@pytest.mark.parametrize(("dead", "buds"), PURDUE_EDGES)
def test_edges_of_the_purdue_rule(dead: str, buds: int) -> None:
    answer = ask("winter", buds_wanted="40", dead_buds=dead, winter_rule="purdue")
    assert answer.main.likely == buds


def test_the_smaller_of_two_and_why() -> None:
    def three(low: int, likely: int, high: int) -> Range:
        return Range(Fraction(low), Fraction(likely), Fraction(high))

    assert smaller_of(three(20, 40, 60), as_range(28)) == (three(20, 28, 28), "arms")
    assert smaller_of(three(20, 24, 60), as_range(28)) == (three(20, 24, 28), "formula")
    assert smaller_of(three(20, 28, 60), as_range(28))[1] == "same"


def test_the_reason_is_said() -> None:
    answer = ask("fit", buds_wanted="40", arm_length="70 cm", spur_spacing="10 cm")
    told = as_texts(answer, "metric", "en")["remarks"]
    assert told == [["Your arms hold 28 buds, 40 buds are asked for: leave 28 buds."]]


def test_a_range_goes_in_and_a_range_comes_out() -> None:
    answer = ask("buds", prunings="2.3 to 2.8 lb", formula="30+10")
    assert [answer.main.low, answer.main.likely, answer.main.high] == [43, Fraction("45.5"), 48]
    assert answer.figures[0].text("us", "en") == "43 to 48 buds (most likely 46)"


def test_one_digit_in_gives_no_four_digits_out() -> None:
    answer = ask("crew", vines="1234", time_per_vine="57 s", people="3")
    assert answer.figures[0].text("metric", "en") == "20 h"
    assert answer.figures[0].value.likely == Fraction(1234 * 57)


def _example(name: str) -> Answer:
    given: dict[str, Value] = {}
    for field in QUESTIONS[name].fields:
        usual = field.usual()
        if usual is not None:
            given[field.name] = usual
        elif field.measure:
            unit = MEASURES[field.measure].metric
            low = field.bounds()[0] / MEASURES[field.measure].factor("metric")
            given[field.name] = field.read(f"{max(1, -(-low // 1))} {unit}".strip())
    heights: dict[str, Value] = {"trimming_mm": as_range(2150), "arm_height_mm": as_range(900)}
    return QUESTIONS[name].work({**given, **(heights if name == "leaves" else {})})


@pytest.mark.parametrize("name", QUESTIONS)
def test_every_sum_speaks_both_languages_and_both_units(name: str) -> None:
    answer = _example(name)
    assert answer.question == name
    for language in LANGUAGES:
        assert say(language, f"block.question.{name}")
        assert say(language, f"block.limits.{name}")
        for units in ("metric", "us"):
            texts = as_texts(answer, units, language)
            assert texts["figures"]
            assert texts["steps"]
            assert not any("{" in text for rows in texts.values() for row in rows for text in row)
    assert set(as_json(answer, "metric")) == {"question", "figures", "rows", "remarks"}


@pytest.mark.parametrize("name", QUESTIONS)
def test_every_sum_is_documented(name: str) -> None:
    told = QUESTIONS[name].answer.__doc__ or ""
    assert "Limits" in told
    assert "Source" in told or "in print" in told


def test_every_field_has_its_words_and_every_default_its_source() -> None:
    for field in FIELDS.values():
        assert knows(f"block.field.{field.name}"), field.name
        assert all(knows(f"block.choice.{field.name}.{one}") for one in field.choices)
        if field.default:
            assert field.usual() is not None
            assert say("en", f"block.status.{field.status}") in usual_note(field, "en", "metric")
        if field.status == "published":
            assert field.source_in("es"), field.name
    assert len(FIELD_BY_KEY) == len(FIELDS)


def test_the_page_carries_every_field() -> None:
    data = page_data("es", "us")
    fields = data["fields"]
    assert isinstance(fields, dict)
    assert set(fields) == set(FIELDS)
    note = fields["spur_spacing_mm"]["note"]
    assert note["us"].startswith("Habitual: 3,937 pulgadas (")
    assert note["metric"].startswith("Habitual: 10 cm (")


def test_a_block_goes_on_with_what_it_found() -> None:
    layout = {"row_spacing": "2.5 m", "vine_spacing": "1.6 m", "area": "1 ha"}
    arms = {"arm_length": "70 cm", "spur_spacing": "10 cm"}
    given = given_by(**layout, **arms, prunings="4 lb", cluster_weight="100 g", people="4")
    worked = {one.question: one for one in work_block(given)}
    assert list(worked) == ["vines", "buds", "room", "fit", "crop", "crop-load", "crew", "thinning"]
    fit, crop = worked["fit"], worked["crop"]
    assert isinstance(fit, Answer)
    assert isinstance(crop, Answer)
    assert fit.main.likely == 28
    assert crop.figure("clusters").likely == 28 * Fraction("0.75") * Fraction("1.9")


def test_advice_without_a_number_stops_nothing() -> None:
    given = given_by(arm_length="70 cm", prunings="4 lb", dead_buds="60 %", winter_rule="purdue")
    refused = [one for one in work_block(given) if isinstance(one, Refusal)]
    assert [(one.question, one.is_slip) for one in refused] == [("winter", False)]
