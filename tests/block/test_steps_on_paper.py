"""Whoever works the printed steps along with a pencil comes to the printed results.

The steps are read as they stand on the page, in each language and in metric and US units: the test
knows neither their words nor what the engine worked with. A sentence that says its sum without
signs has a row here with what a reader makes of its numbers.
"""

from __future__ import annotations

import random
from collections import Counter
from collections.abc import Callable, Iterator, Mapping
from fractions import Fraction
from functools import cache

import pytest

from block_inputs import random_texts, read_texts
from pencilwood.block.answer import Answer
from pencilwood.block.bud_load import Formula
from pencilwood.block.errors import BlockError
from pencilwood.block.field import Value
from pencilwood.block.numbers import Range
from pencilwood.block.questions import QUESTIONS
from pencilwood.block.whole_block import work_block
from pencilwood.pages.block_pages import figures_of
from pencilwood.site.handbook import open_handbook
from pencilwood.units import UnitSystem
from pencilwood.words import LANGUAGES, catalogue, fitting
from small_handbook import PROJECT
from sums_on_paper import Found, Printed, found_by, printed_numbers, worked_on_paper

UNIT_SYSTEMS: tuple[UnitSystem, ...] = ("metric", "us")
INPUTS_PER_SUM = 120
MM2_PER_M2 = 1_000_000

Numbers = list[Printed]
Before = Mapping[str, Numbers]
"""Numbers of the steps before, by the name of the step."""
Given = Mapping[str, Value]


def same(told: Printed, number: Printed) -> Found:
    return found_by(told, number, by=lambda one: one)


def exactly(told: Printed, value: Fraction | int) -> Found:
    return same(told, Printed(Fraction(value)))


def likely(given: Given, field: str) -> Fraction:
    value = given[field]
    assert isinstance(value, Range)
    return value.likely


def first_buds(given: Given) -> int:
    formula = given["formula"]
    assert isinstance(formula, Formula)
    return formula.first_buds


def of_area(planted: Printed, row: Printed, vine: Printed) -> Found:
    return found_by(planted, row, vine, by=lambda a, b: MM2_PER_M2 / (a * b))


def left(told: Printed, planted: Printed, missing: Printed) -> Found:
    return found_by(told, planted, missing, by=lambda all_, share: all_ * (1 - share))


Reader = Callable[[Numbers, Before, Given], list[Found]]

WITHOUT_SIGNS: dict[str, Reader] = {
    # pounds and kilograms are one weight
    "pounds.us": lambda n, _, __: [same(n[0], n[1])],
    # the first number of the formula, whatever the weight
    "below-one-lb-hold": lambda n, _, given: [exactly(n[-1], first_buds(given))],
    "below-one-lb-hold.us": lambda n, _, given: [exactly(n[-1], first_buds(given))],
    # the reader's own bounds
    "floored": lambda n, _, given: [exactly(n[0], likely(given, "least_buds"))],
    "capped": lambda n, _, given: [exactly(n[0], likely(given, "most_buds"))],
    # one vine on row x vine, told for both areas
    "planted": lambda n, _, __: [of_area(n[2], n[0], n[1]), of_area(n[3], n[0], n[1])],
    # the missing ones are taken off of both
    "missing": lambda n, before, __: [
        left(n[1], before["planted"][2], n[0]),
        left(n[2], before["planted"][3], n[0]),
    ],
    # vines on an area, times the area
    "block-vines": lambda n, before, __: [
        found_by(
            n[1],
            n[0],
            before["missing"][1] if "missing" in before else before["planted"][2],
            by=lambda area, vines: area * vines,
        )
    ],
    # no more than were wanted
    "winter-same": lambda n, _, given: [exactly(n[-1], likely(given, "wanted_buds"))],
    # whole spurs on each arm, before they are counted on all arms
    "spurs": lambda n, _, __: [
        found_by(n[3], n[0], n[1], n[2], by=lambda arms, arm, each: arms * (arm // each))
    ],
    # buds on the length of all arms
    "density": lambda n, _, __: [
        found_by(n[3], n[0], n[1], n[2], by=lambda buds, arms, arm: buds / (arms * arm))
    ],
    # the smaller of two
    "smaller": lambda n, _, __: [found_by(n[2], n[0], n[1], by=min)],
    # crop on an area, times the area
    "block-crop": lambda n, before, __: [
        found_by(n[1], n[0], before["crop-on-area"][-1], by=lambda area, crop: area * crop)
    ],
    # the share is one of a full crop
    "first-year": lambda n, before, __: [
        found_by(n[2], n[1], before["full-crop"][-1], by=lambda share, full: share * full)
    ],
    # beside the sum with signs: what the machine saves is never less than nothing
    "pre-pruned": lambda n, before, __: [
        found_by(n[3], before["work"][-1], n[2], by=lambda work, by_hand: max(work - by_hand, 0))
    ],
}


def lost(told: Printed, full: Printed, answer: Answer) -> Found:
    """What each year of the table lacks of a full crop, added up."""
    shares = [one.value.likely for row in answer.rows for one in row if one.name == "crop-share"]
    lacking = sum(1 - share for share in shares)
    return found_by(told, full, by=lambda crop: crop * lacking)


def found_in(
    answer: Answer, given: Given, units: UnitSystem, language: str
) -> Iterator[tuple[str, str, list[Found]]]:
    """Each step by its key, as it is printed, and what a reader finds in it."""
    before: dict[str, Numbers] = {}
    for step in answer.steps:
        text = step.text("step", units, language)
        numbers = printed_numbers(text, language)
        key = fitting(f"block.step.{step.name}", units).removeprefix("block.step.")
        found = worked_on_paper(text, language)
        if key in WITHOUT_SIGNS:
            found += WITHOUT_SIGNS[key](numbers, before, given)
        if key == "lost-crop":
            found.append(lost(numbers[0], before["full-crop"][-1], answer))
        yield key, text, found
        before[step.name] = numbers


@cache
def answers() -> list[tuple[Answer, Given]]:
    """All sums of the demo's blocks, and many of random inputs."""
    opened = open_handbook(PROJECT, "en").handbook
    assert opened is not None
    done: list[tuple[Answer, Given]] = []
    for block in opened.blocks:
        given = figures_of(block)
        done += [(one, given) for one in work_block(given) if isinstance(one, Answer)]
    rng = random.Random(20261128)
    for question in QUESTIONS.values():
        for _ in range(INPUTS_PER_SUM):
            units = rng.choice(UNIT_SYSTEMS)
            try:
                given = read_texts(question.name, random_texts(rng, question, units), units)
                done.append((question.answer(**given), given))
            except BlockError:
                continue
    return done


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("units", UNIT_SYSTEMS)
def test_printed_steps_give_the_printed_results(units: UnitSystem, language: str) -> None:
    read: Counter[str] = Counter()
    for answer, given in answers():
        for key, text, found in found_in(answer, given, units, language):
            assert found, f"{key}: nothing can be worked in {text}"
            wrong = [
                (float(one.low), float(one.high), float(one.told.value))
                for one in found
                if not one.agrees
            ]
            assert not wrong, f"{text} {wrong}"
            read[key] += 1
    every = {
        key.removeprefix("block.step.")
        for key in catalogue(language)
        if key.startswith("block.step.")
    }
    other = {key.removesuffix(".us") for key in every if key.endswith(".us")}
    shown = every - other if units == "us" else {key for key in every if not key.endswith(".us")}
    assert set(read) == shown
