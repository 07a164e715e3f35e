"""Says who measured a vine, how others may use it, and where it came from."""

from __future__ import annotations

from pencilwood.cases.case import Case
from pencilwood.words import say


def credit_words(case: Case, language: str) -> str:
    """The sentences that go with a case wherever it is shown; empty when it names nothing."""
    given = {"author": case.author, "licence": case.licence, "origin": case.origin}
    told = [
        say(language, f"credits.{name}", **{name: words[language]})
        for name, words in given.items()
        if words
    ]
    if case.shared_in:
        told.append(say(language, "credits.shared"))
    return " ".join(told)
