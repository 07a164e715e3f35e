"""Whether reasons in a case are still the words that the program put in for the trainer.

A drafted case is whole, so that it can be looked at once. But a page tells its reasons as the
trainer's, and a reason that nobody in the row would give teaches nothing.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from itertools import groupby

from pencilwood.cases.case import Case, Text
from pencilwood.places import Place
from pencilwood.proof.report import ProofReport
from pencilwood.rules import RULES
from pencilwood.words import say

WHY = "field.draft.why"
ROUGH = "field.draft.rough"
TIE = "field.draft.tie"
_EXCUSE = "field.draft.excuse"
_EXCUSE_OF = {"too-few-buds": "field.draft.excuse-few", "too-many-buds": "field.draft.excuse-many"}
_EARLIER = {"en": "Otherwise: {problem}."}
"""How drafts of earlier versions worded their reasons."""
_MOST_LINES = 12


def excuse_key(rule: str) -> str:
    """The words by which a draft excuses this rule."""
    return _EXCUSE_OF.get(rule, _EXCUSE)


@cache
def _drafted(language: str) -> frozenset[str]:
    """Every reason that a draft can hold in this language."""
    excuses = {say(language, excuse_key(rule.name)) for rule in RULES}
    reasons = {say(language, WHY, problem=rule.title[language]) for rule in RULES}
    earlier = {
        _EARLIER[language].format(problem=rule.title[language])
        for rule in RULES
        if language in _EARLIER
    }
    return frozenset({say(language, ROUGH), say(language, TIE)} | excuses | reasons | earlier)


def check_own_words(case: Case, report: ProofReport) -> None:
    """Warn, once a file, of reasons that nobody has put into words of their own."""
    places = sorted(set(_untouched(case)))
    if not places or case.shared_in:
        return
    lines = [str(place.line) for place in places[:_MOST_LINES]]
    more = ["..."] if len(places) > _MOST_LINES else []
    report.add(places[0], "reasons-not-your-own", level="warning", lines=", ".join([*lines, *more]))


def _untouched(case: Case) -> Iterator[Place]:
    """Where each row stands that has such a reason; the cuts of one row share theirs."""
    for _, row in groupby(case.answer, key=lambda one: (one.done.in_pass, sorted(one.why.items()))):
        first = next(row)
        if _is_drafted(first.why):
            yield first.place
    yield from (one.place for one in case.excuses if _is_drafted(one.why))


def _is_drafted(why: Text) -> bool:
    return any(words in _drafted(language) for language, words in why.items())
