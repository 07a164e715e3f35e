"""Random inputs of a sum, as somebody may write them into its form."""

from __future__ import annotations

import random
from collections.abc import Mapping

from pencilwood.block.field import Field, Value
from pencilwood.block.measures import MEASURES
from pencilwood.block.questions import QUESTIONS, Question
from pencilwood.units import UnitSystem


def _number(rng: random.Random, field: Field, units: UnitSystem) -> str:
    measure = MEASURES[field.measure]
    low, high = (float(bound / measure.factor(units)) for bound in field.bounds())
    # Small values are as likely as large ones, and a few lie beyond the bounds.
    least = low or high / 1000
    value = least * (high * 1.01 / least) ** rng.random()
    if measure.whole:
        return str(int(value))
    return f"{value:.{rng.randint(0, 4)}f}".replace(".", rng.choice(".,"))


def _texts(rng: random.Random, field: Field, units: UnitSystem) -> list[str]:
    """What somebody may write into a field: one number, three, or a choice."""
    if field.choices:
        return [rng.choice(field.choices)]
    if not field.measure:
        return [f"{rng.randint(0, 99)}+{rng.randint(0, 30)}"]
    if not field.ranged or rng.random() < 0.6:
        return [_number(rng, field, units)]
    three = [_number(rng, field, units) for _ in range(3)]
    if rng.random() < 0.95:
        three.sort(key=lambda text: float(text.replace(",", ".")))
    return three


def random_texts(rng: random.Random, question: Question, units: UnitSystem) -> dict[str, list[str]]:
    """The fields of a form by their names; some that may stay empty are left out."""
    optional = [name for name in question.optional if rng.random() < 0.6]
    return {
        field.name: _texts(rng, field, units)
        for field in question.fields
        if field.name in (*question.asked, *optional)
    }


def read_texts(
    question: str, texts: Mapping[str, list[str]], units: UnitSystem
) -> dict[str, Value]:
    """Their values; raises BlockError as `Field.read` does."""
    by_name = {field.name: field for field in QUESTIONS[question].fields}
    given: dict[str, Value] = {}
    for name, written in texts.items():
        measure = by_name[name].measure
        unit = MEASURES[measure].unit(units) if measure else ""
        given[name] = by_name[name].read(f"{' to '.join(written)} {unit}".strip())
    return given
