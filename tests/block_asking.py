"""Asks a sum as the command line does: every value as text, by its name in `blocks.yml`."""

from pencilwood.block.answer import Answer
from pencilwood.block.field import Value
from pencilwood.block.field_list import FIELD_BY_KEY
from pencilwood.block.questions import QUESTIONS


def given_by(**texts: str) -> dict[str, Value]:
    """The values of a block or a sum; `row_spacing="8 ft"` gives the field `row spacing`."""
    fields = [FIELD_BY_KEY[key.replace("_", " ")] for key in texts]
    return {
        field.name: field.read(text) for field, text in zip(fields, texts.values(), strict=True)
    }


def ask(question: str, **texts: str) -> Answer:
    """The answer of one question."""
    return QUESTIONS[question].work(given_by(**texts))
