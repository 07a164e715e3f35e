"""The order of the quizzes in the handbook's lists; the first of them is the one to begin with."""

from types import SimpleNamespace
from typing import cast

import pytest

from pencilwood.quiz.quiz_proof import QuizProof, place_in_list

Given = tuple[str, int | None, int, int]
"""Name, order, minutes, questions."""


@pytest.mark.parametrize(
    ("given", "listed", "why"),
    [
        (
            [("a", 30, 5, 5), ("b", 10, 20, 5), ("c", 20, 1, 5)],
            "b c a",
            "the trainer's order goes before names and minutes",
        ),
        ([("a", None, 5, 5), ("b", 0, 5, 5)], "b a", "0 is an order; without one comes last"),
        ([("a", None, 20, 10), ("b", None, 6, 6)], "b a", "one minute a question asks least"),
        ([("a", None, 8, 2), ("b", None, 9, 9)], "b a", "not the shortest: each question is hard"),
        ([("a", None, 5, 5), ("b", None, 10, 10)], "a b", "of two alike the first file"),
        ([("a", 10, 8, 2), ("b", 10, 9, 9)], "b a", "of one order what asks least"),
    ],
)
def test_the_order(given: list[Given], listed: str, why: str) -> None:
    quizzes = [
        SimpleNamespace(
            quiz=SimpleNamespace(slug=slug, order=order, questions=range(asked)), minutes=minutes
        )
        for slug, order, minutes, asked in given
    ]
    found = sorted(cast(list[QuizProof], quizzes), key=place_in_list)
    assert " ".join(one.quiz.slug for one in found) == listed, why
