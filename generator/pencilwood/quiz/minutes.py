"""About how long a quiz takes. Every figure here is an assumption of this project, no more.

A learner is taken to read slowly and everything: each question with all its choices, and one
reason after it. Thinking is added by the kind of the question, cuts by the plan's number.
"""

from __future__ import annotations

import math

from pencilwood.quiz.made import Choices, MadeQuestion, MadeQuiz, Ordering, Pruning

WORDS_A_MINUTE = 100
"""Reading speed: slow, as of somebody who reads little or in a second language (assumption)."""

SECONDS_TO_THINK = {
    "choose": 10,
    "cane": 20,
    "part": 10,
    "count": 25,
    "order": 30,
    "safe": 10,
    "sum": 60,
    "prune": 60,
}
"""Thinking and tapping, by kind of question (assumption)."""

SECONDS_A_CUT = 5
"""Finding and making one cut on a phone (assumption)."""


def minutes_of(made: MadeQuiz) -> int:
    """Whole minutes, rounded up; those of the language that takes longest, for one quiz is one."""
    seconds = (sum(map(seconds_of, questions)) for questions in made.questions.values())
    return math.ceil(max(seconds) / 60)


def seconds_of(one: MadeQuestion) -> float:
    """Reading, thinking and doing one question."""
    cuts = one.body.cuts if isinstance(one.body, Pruning) else 0
    reading = words_of(one) * 60 / WORDS_A_MINUTE
    return reading + SECONDS_TO_THINK[one.about] + cuts * SECONDS_A_CUT


def words_of(one: MadeQuestion) -> int:
    """Words to read: the question, all that can be chosen, and the longest reason."""
    body = one.body
    shown, reasons = [one.text], [""]
    if isinstance(body, Choices):
        shown += [option.text for option in body.options]
        reasons = [option.why for option in body.options]
    elif isinstance(body, Ordering):
        shown += [item.text for item in body.items]
        reasons = [" ".join(item.why for item in body.items)]
    return sum(len(text.split()) for text in shown) + max(len(text.split()) for text in reasons)
