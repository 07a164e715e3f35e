"""Tells what was proved of each quiz: luck, habits, length, and the rules it covers."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from pencilwood.quiz.quiz_proof import QuizProof
from pencilwood.site.handbook import Opened
from pencilwood.words import say

_TINY_PERCENT = 0.001


def quizzes_as_json(opened: Opened) -> list[dict[str, object]]:
    """The proof of every quiz, for a machine."""
    return [
        {
            "quiz": proof.quiz.slug,
            "chance_of_passing_by_guessing": float(proof.chance),
            "tries": proof.quiz.tries,
            "minutes": proof.minutes,
            "covers": list(proof.covers),
            "leaves_out": list(proof.leaves_out),
            "right_answer_stands": list(proof.places),
        }
        for proof in _proofs(opened)
    ]


def quiz_report(opened: Opened, language: str) -> Iterator[str]:
    """The same, a line for each quiz."""
    for proof in _proofs(opened):
        yield say(
            language,
            "quizzes.report.line",
            quiz=proof.quiz.slug,
            chance=_percent(proof.chance),
            tries=proof.quiz.tries,
            minutes=proof.minutes,
            covers=len(proof.covers),
            rules=len(proof.covers) + len(proof.leaves_out),
            places="/".join(str(count) for count in proof.places),
        )


def _percent(chance: Fraction) -> str:
    """A chance in percent; what is tiny is only said to be so."""
    percent = float(chance) * 100
    return f"{percent:.2g}" if percent >= _TINY_PERCENT else f"< {_TINY_PERCENT:g}"


def _proofs(opened: Opened) -> tuple[QuizProof, ...]:
    return opened.handbook.quizzes if opened.handbook else ()
