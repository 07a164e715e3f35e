"""Quizzes of a handbook as packages of QTI 3.0."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from pencilwood.packages.package import Package
from pencilwood.packages.qti import quiz_package
from pencilwood.pages.handbook import Handbook
from pencilwood.site.exporting import CannotExportError, Chosen
from pencilwood.words import say


def qti_packages(handbook: Handbook, chosen: Chosen, language: str) -> Iterator[Package]:
    """A package for each quiz; the first tells of the vines that were asked for in vain."""
    if not chosen.quizzes:
        known = ", ".join(proof.quiz.slug for proof in handbook.quizzes)
        raise CannotExportError(say(language, "qti.no-quiz", known=known))
    chapters = {one.name: one.title for one in handbook.chapters if one.language == language}
    left_out = _cases_left_out(chosen, language)
    for proof in chosen.quizzes:
        made = quiz_package(proof, handbook.case_by_slug, handbook.profile, chapters, language)
        if made is None:
            title = proof.quiz.title[language]
            raise CannotExportError(say(language, "qti.no-item", quiz=title))
        yield replace(made, notes=(*left_out, *made.notes))
        left_out = ()


def _cases_left_out(chosen: Chosen, language: str) -> tuple[str, ...]:
    if not chosen.cases:
        return ()
    titles = "; ".join(proof.case.title[language] for proof in chosen.cases)
    return (say(language, "qti.left-out.cases", cases=titles),)
