"""Makes the questions of a quiz in every language, or says why one cannot be made."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from fractions import Fraction
from typing import Any

from pencilwood.cases.case import Profile
from pencilwood.cases.quiz import (
    BlockSum,
    Choose,
    CountIt,
    NamePart,
    Prune,
    PutInOrder,
    Quiz,
    QuizQuestion,
    SafeOrStop,
    Seen,
    WhichCane,
)
from pencilwood.findings import Finding, in_order, worded
from pencilwood.quiz.asker import Asker
from pencilwood.quiz.canes import which_cane
from pencilwood.quiz.counts import count_it
from pencilwood.quiz.made import MadeQuestion, MadeQuiz, Pruning
from pencilwood.quiz.parts import name_part
from pencilwood.quiz.placing import place_evenly
from pencilwood.quiz.plain import choose, put_in_order, safe_or_stop
from pencilwood.quiz.sums import block_sum
from pencilwood.quiz.vines import ProvedVine, QuestionError, Vines


def make_quiz(
    quiz: Quiz, vines: Vines, profile: Profile, language: str = "en"
) -> tuple[MadeQuiz | None, tuple[Finding, ...]]:
    """Every question worked out, or None and what is wrong, worded in `language`."""
    wrong: dict[str, Finding] = {}
    made: dict[str, tuple[MadeQuestion, ...]] = {}
    for spoken in profile.languages:
        asker = Asker(quiz.slug, profile, spoken)
        questions = []
        for one in quiz.questions:
            try:
                questions.append(_MAKERS[type(one)](one, vines, asker))
            except QuestionError as error:
                wrong.setdefault(one.common.slug, _finding(one, error, language))
        made[spoken] = place_evenly(tuple(questions), quiz.slug)
    if wrong:
        return None, tuple(in_order(wrong.values()))
    return MadeQuiz(quiz, made, profile.pass_mark), ()


def vines_of(quiz: Quiz) -> Mapping[str, str]:
    """Slug of every case that a quiz shows or has pruned, with the question that names it."""
    named: dict[str, str] = {}
    for one in quiz.questions:
        vine = _vine_of(one)
        if vine is not None:
            named.setdefault(vine, one.common.slug)
    return named


def _vine_of(one: QuizQuestion) -> str | None:
    if isinstance(one, Prune):
        return one.common.slug
    # Every kind that shows a vine names it in the same way.
    seen: Seen | None = getattr(one, "seen", None)
    return None if seen is None else seen.vine


def _prune(one: Prune, vine: ProvedVine, asker: Asker) -> MadeQuestion:
    title = vine.case.title[asker.language]
    body = Pruning(one.common.slug, _upper(vine), len(vine.plan.cuts))
    return MadeQuestion(one, "prune", asker.say("prune.ask", title=title), body)


def _upper(vine: ProvedVine) -> Fraction:
    """Upper end of the interval of a random pruning's chance, rounded up to a millionth."""
    return Fraction(math.ceil(vine.luck.interval[1] * 1_000_000), 1_000_000)


def _finding(one: QuizQuestion, error: QuestionError, language: str) -> Finding:
    key = f"asking.problem.{error.problem}"
    return worded(one.common.place, key, language, error.facts_in(language))


_MAKERS: Mapping[type[QuizQuestion], Callable[[Any, Vines, Asker], MadeQuestion]] = {
    Prune: lambda one, vines, asker: _prune(one, vines[one.common.slug], asker),
    Choose: choose,
    WhichCane: lambda one, vines, asker: which_cane(one, vines[one.seen.vine], asker),
    NamePart: lambda one, vines, asker: name_part(one, vines[one.seen.vine], asker),
    CountIt: lambda one, vines, asker: count_it(one, vines[one.seen.vine], asker),
    PutInOrder: lambda one, _, asker: put_in_order(one, asker),
    SafeOrStop: lambda one, _, asker: safe_or_stop(one, asker),
    BlockSum: lambda one, _, asker: block_sum(one, asker),
}
"""What makes the questions of each kind."""
