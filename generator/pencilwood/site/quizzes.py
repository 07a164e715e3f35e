"""Reads the quizzes of a handbook's folder, works their questions out, and proves them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import Path

from pencilwood.cases.case import Profile
from pencilwood.cases.quiz import Quiz
from pencilwood.cases.quiz_file import KnownNames, read_quiz
from pencilwood.cases.settings_file import CHAPTERS
from pencilwood.proof import CaseProof
from pencilwood.quiz.making import make_quiz, vines_of
from pencilwood.quiz.quiz_proof import QuizProof, place_in_list, prove_quiz
from pencilwood.rules import RULE_BY_NAME
from pencilwood.site.hints import Notes

QUIZZES = "quizzes"


def open_quizzes(
    root: Path,
    profile: Profile,
    case_slugs: tuple[str, ...],
    vines: Mapping[str, CaseProof],
    notes: Notes,
) -> tuple[QuizProof, ...]:
    """Every quiz that could be read and made, proved, in the order of their list."""
    names = KnownNames(case_slugs, tuple(RULE_BY_NAME), _chapter_names(root))
    proofs = []
    for quiz in _read(root, profile, names, notes):
        # A quiz can be made only when all of its vines could be read.
        if any(vine not in vines for vine in vines_of(quiz)):
            continue
        made, findings = make_quiz(quiz, vines, profile, notes.language)
        notes.findings.extend(findings)
        if made is not None:
            proof = prove_quiz(made, vines, notes.language)
            notes.findings.extend(proof.findings)
            proofs.append(proof)
    return tuple(sorted(proofs, key=place_in_list))


def _chapter_names(root: Path) -> tuple[str, ...]:
    return tuple(sorted({path.stem for path in (root / CHAPTERS).glob("*/*.md")}))


def _read(root: Path, profile: Profile, names: KnownNames, notes: Notes) -> Iterator[Quiz]:
    for path in sorted((root / QUIZZES).glob("*.yml")):
        shown = path.relative_to(root).as_posix()
        quiz, findings = read_quiz(path, profile.languages, names, shown, language=notes.language)
        notes.findings.extend(findings)
        if quiz is not None:
            yield quiz
