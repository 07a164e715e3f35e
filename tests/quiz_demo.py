"""The demo handbook's quizzes and vines, for tests."""

from collections.abc import Mapping
from dataclasses import dataclass

from pencilwood.cases.case import Profile
from pencilwood.proof import CaseProof
from pencilwood.quiz.quiz_proof import QuizProof


@dataclass(frozen=True)
class Demo:
    """Everything that questions are made of, and what was made."""

    profile: Profile
    vines: Mapping[str, CaseProof]
    quizzes: Mapping[str, QuizProof]
