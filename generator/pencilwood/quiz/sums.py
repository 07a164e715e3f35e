"""Sums of the block: worked out, rightly and with each usual slip, by the block's own sums."""

from __future__ import annotations

from collections.abc import Mapping

from pencilwood.block.answer import Answer
from pencilwood.block.bud_load import Formula
from pencilwood.block.errors import BlockError
from pencilwood.block.field import Field, Value
from pencilwood.block.numbers import Range
from pencilwood.block.questions import QUESTIONS, Question
from pencilwood.block.shown import shown
from pencilwood.cases.quiz import BlockSum
from pencilwood.quiz.asker import Asker
from pencilwood.quiz.made import Choices, MadeQuestion, Option
from pencilwood.quiz.vines import QuestionError, slip


def block_sum(question: BlockSum, asker: Asker) -> MadeQuestion:
    """The question, worked out; QuestionError where a sum refuses or two sums agree."""
    units, language = asker.profile.units, asker.language
    right = _work(question.work_out, question.given)
    facts = _facts(question.work_out, question.given, asker)
    steps = " ".join(step.text("step", units, language) for step in right.steps)
    text = right.figures[0].text(units, language)
    options = [Option(text, steps, True)]
    for one in question.wrong:
        given = {**question.given, **one.given}
        name = one.work_out or question.work_out
        if one.work_out is not None:
            given = {key: value for key, value in given.items() if key in _fields(name)}
        wrong = _work(name, given).figures[0].text(units, language)
        options.append(Option(wrong, asker.own(one.why, {**facts, "right": text}), False))
    texts = [one.text for one in options]
    if len(set(texts)) < len(texts):
        raise slip("sums-agree", texts="; ".join(texts))
    body = Choices(tuple(options))
    return MadeQuestion(question, "sum", asker.own(question.ask, facts), body)


def _question(name: str) -> Question:
    if name not in QUESTIONS:
        raise slip("no-such-sum", name=name, known=", ".join(QUESTIONS))
    return QUESTIONS[name]


def _fields(name: str) -> Mapping[str, Field]:
    return {field.key: field for field in _question(name).fields}


def _values(name: str, given: Mapping[str, str]) -> dict[str, tuple[Field, Value]]:
    """Each figure that is given, by its key."""
    fields = _fields(name)
    values = {}
    for key, text in given.items():
        if key not in fields:
            raise slip("no-such-figure", name=key, sum=name, known=", ".join(fields))
        try:
            values[key] = (fields[key], fields[key].read(text))
        except BlockError as error:
            raise QuestionError("sum-refused", {"name": key}, error) from None
    return values


def _work(name: str, given: Mapping[str, str]) -> Answer:
    values = _values(name, given).values()
    try:
        return _question(name).work({field.name: value for field, value in values})
    except BlockError as error:
        raise QuestionError("sum-refused", {"name": name}, error) from None


def _facts(name: str, given: Mapping[str, str], asker: Asker) -> dict[str, str]:
    """The figures as the words of the question show them."""
    return {key: _told(field, value, asker) for key, (field, value) in _values(name, given).items()}


def _told(field: Field, value: Value, asker: Asker) -> str:
    if isinstance(value, Range):
        return shown(value, field.measure, asker.profile.units, asker.language)
    if isinstance(value, Formula):
        return f"{value.first_buds}+{value.further_buds}"
    return value
