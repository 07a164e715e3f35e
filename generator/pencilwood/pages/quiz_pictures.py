"""The picture of each quiz in a list: a vine that it asks about, or a sign."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from markupsafe import Markup

from pencilwood.pages.desk import Desk
from pencilwood.pages.sign import sign
from pencilwood.pages.vine_cards import small_drawing
from pencilwood.quiz.made import MadeQuiz, Pruning
from pencilwood.quiz.quiz_proof import QuizProof

_SIGN_OF = {"safe": "eyes", "sum": "list"}
"""What most questions are about, where no vine is asked about; anything else is the pencil's."""


def quiz_pictures(desk: Desk) -> dict[str, Markup]:
    """HTML of each quiz's picture by its name; quizzes show unlike vines as far as they can."""
    taken: set[str] = set()
    found = {}
    for proof in desk.handbook.quizzes:
        vine = _vine(proof, taken)
        if vine is not None:
            taken.add(vine)
        found[proof.quiz.slug] = _picture(desk, proof.made, vine)
    return found


def _vine(proof: QuizProof, taken: set[str]) -> str | None:
    """The first vine among its questions that no quiz before it has."""
    vines = list(dict.fromkeys(_asked_about(proof.made)))
    return next((one for one in vines if one not in taken), vines[0] if vines else None)


def _asked_about(made: MadeQuiz) -> Iterator[str]:
    for one in next(iter(made.questions.values())):
        if one.picture is not None:
            yield one.picture.vine
        elif isinstance(one.body, Pruning):
            yield one.body.vine


def _picture(desk: Desk, made: MadeQuiz, vine: str | None) -> Markup:
    if vine is None:
        return sign(desk, _sign(made))
    image = Markup('<img src="{}" alt="" loading="lazy" width="320" height="200">')
    return image.format(desk.asset(small_drawing(vine)))


def _sign(made: MadeQuiz) -> str:
    questions: Sequence[str] = [one.about for one in next(iter(made.questions.values()))]
    most, _ = Counter(questions).most_common(1)[0]
    return _SIGN_OF.get(most, "pencil")
