"""The proofs that every case and every quiz must pass."""

from __future__ import annotations

from pencilwood.proof.case_proof import CaseProof, prove_case
from pencilwood.proof.quiz_proof import QuizProof, prove_quiz

__all__ = ["CaseProof", "QuizProof", "prove_case", "prove_quiz"]
