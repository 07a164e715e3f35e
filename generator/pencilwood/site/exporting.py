"""Chooses what of a handbook goes into packages of a standard, and has them made."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from pencilwood.packages.package import Package
from pencilwood.pages.handbook import Handbook
from pencilwood.proof import CaseProof
from pencilwood.quiz.quiz_proof import QuizProof
from pencilwood.site.hints import Notes
from pencilwood.words import say

CASES, QUIZZES = "cases/", "quizzes/"
"""What stands before a name that a case and a quiz share."""


@dataclass(frozen=True)
class Chosen:
    """The cases and quizzes to export, in the handbook's order."""

    cases: tuple[CaseProof, ...]
    quizzes: tuple[QuizProof, ...]


Packer = Callable[[Handbook, Chosen, str], Iterator[Package]]
"""Makes the packages of one standard, in one language."""


class CannotExportError(Exception):
    """An export that cannot be made; `told` says why in the user's language."""

    def __init__(self, told: str) -> None:
        super().__init__(told)
        self.told = told


def choose(handbook: Handbook, names: Sequence[str], language: str) -> Chosen:
    """What these names mean; no name means all. Raises CannotExportError."""
    if language not in handbook.profile.languages:
        known = ", ".join(handbook.profile.languages)
        raise CannotExportError(say(language, "export.no-language", known=known))
    if not names:
        return Chosen(handbook.cases, handbook.quizzes)
    wanted = {_full_name(handbook, name, language) for name in names}
    return Chosen(
        tuple(one for one in handbook.cases if CASES + one.case.slug in wanted),
        tuple(one for one in handbook.quizzes if QUIZZES + one.quiz.slug in wanted),
    )


def _full_name(handbook: Handbook, name: str, language: str) -> str:
    known = [CASES + one.case.slug for one in handbook.cases]
    known += [QUIZZES + one.quiz.slug for one in handbook.quizzes]
    found = [full for full in known if name in (full, full.partition("/")[2])]
    if len(found) == 1:
        return found[0]
    if found:
        raise CannotExportError(
            say(language, "export.which", name=name, first=CASES + name, second=QUIZZES + name)
        )
    hint = Notes(language).hint(name, [full.partition("/")[2] for full in known])
    raise CannotExportError(say(language, "export.no-such", name=name, hint=hint))
