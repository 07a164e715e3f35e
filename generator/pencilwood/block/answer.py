"""What a sum answers: its figures, the steps that lead to them, and what to bear in mind."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from pencilwood.block.measures import MEASURES
from pencilwood.block.numbers import Range, as_range, rounded
from pencilwood.block.shown import shown, shown_number
from pencilwood.units import UnitSystem
from pencilwood.words import fitting, say


@dataclass(frozen=True)
class Figure:
    """One number of an answer."""

    name: str
    measure: str
    value: Range
    years: int | None = None
    """Over how many years it is added up; None for what is no such sum."""

    def text(self, units: UnitSystem, language: str) -> str:
        """The number as a page shows it."""
        return shown(self.value, self.measure, units, language)

    def label(self, language: str, question: str = "") -> str:
        """What the number is; for the answer of a question, told from those of other questions."""
        key = fitting(f"block.figure.{self.name}", question)
        if self.years is None:
            return say(language, key)
        own = "one" if self.years == 1 else ""
        return say(language, fitting(f"{key}.years", own), years=self.years)


Fact = tuple[str, Range | Fraction | int] | str
"""A measure and a value that a sentence names, or the key of a word."""
Facts = Mapping[str, Fact]


@dataclass(frozen=True)
class Sentence:
    """A step or a remark: the key of its words, and the facts that they name."""

    name: str
    facts: Facts = field(default_factory=dict)

    def text(self, part: str, units: UnitSystem, language: str) -> str:
        """The sentence, its facts written out."""
        texts = {name: _fact(fact, units, language) for name, fact in self.facts.items()}
        return say(language, fitting(f"block.{part}.{self.name}", units), **texts)


def _fact(fact: Fact, units: UnitSystem, language: str) -> str:
    if isinstance(fact, str):
        return say(language, f"block.{fact}")
    measure, value = fact
    one = as_range(value)
    # A step follows the likely values; the figures show how far it may be either way. It keeps
    # all the digits, so that whoever follows it on paper comes to the same result.
    return shown_number(one.likely, measure, units, language)


@dataclass(frozen=True)
class Answer:
    """The answer of one question; the first figure is the one that was asked for."""

    question: str
    figures: tuple[Figure, ...]
    steps: tuple[Sentence, ...] = ()
    remarks: tuple[Sentence, ...] = ()
    rows: tuple[tuple[Figure, ...], ...] = ()
    """A table, such as the years of a renovation; every row has the same figures."""

    @property
    def main(self) -> Range:
        """The figure that was asked for."""
        return self.figures[0].value

    def figure(self, name: str) -> Range:
        """The value of one figure by its name."""
        return self.named(name).value

    def named(self, name: str) -> Figure:
        """One figure by its name."""
        return next(one for one in self.figures if one.name == name)

    def has(self, name: str) -> bool:
        """Whether there is such a figure."""
        return any(one.name == name for one in self.figures)


def as_texts(answer: Answer, units: UnitSystem, language: str) -> dict[str, list[list[str]]]:
    """Everything that a page or the terminal shows of an answer."""
    return {
        "figures": [
            [one.label(language, answer.question), one.text(units, language)]
            for one in answer.figures
        ],
        "steps": [[one.text("step", units, language)] for one in answer.steps],
        "remarks": [[one.text("remark", units, language)] for one in answer.remarks],
        "columns": [[one.label(language)] for one in answer.rows[0]] if answer.rows else [],
        "rows": [[one.text(units, language) for one in row] for row in answer.rows],
    }


def as_json(answer: Answer, units: UnitSystem) -> dict[str, object]:
    """The figures for a machine: plain numbers in the unit that is named beside them."""
    return {
        "question": answer.question,
        "figures": {one.name: _figure_json(one, units) for one in answer.figures},
        "rows": [{one.name: _figure_json(one, units) for one in row} for row in answer.rows],
        "remarks": [one.name for one in answer.remarks],
    }


def _figure_json(figure: Figure, units: UnitSystem) -> dict[str, object]:
    measure = MEASURES[figure.measure]
    value = figure.value

    def plain(one: Fraction) -> int | float:
        exact = rounded(one / measure.factor(units), value.digits, whole=measure.whole)
        return int(exact) if exact.denominator == 1 else float(exact)

    told: dict[str, object] = {
        "low": plain(value.low),
        "likely": plain(value.likely),
        "high": plain(value.high),
        "unit": measure.word or measure.unit(units),
    }
    return told if figure.years is None else {**told, "years": figure.years}
