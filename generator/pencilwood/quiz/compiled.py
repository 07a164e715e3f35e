"""A quiz as JSON for the browser; `pencilwood.quiz` documents the layout."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping, Sequence
from types import MappingProxyType
from typing import Final

from pencilwood.quiz.made import Body, Choices, MadeQuestion, MadeQuiz, Ordering, Pruning, Tapping
from pencilwood.quiz.minutes import minutes_of

Boxes = Mapping[str, Sequence[int]]
"""The viewBox of each close-up by the name of its picture."""
_NO_BOXES: Final[Boxes] = MappingProxyType({})


def compile_quiz(made: MadeQuiz, language: str, boxes: Boxes = _NO_BOXES) -> dict[str, object]:
    """The quiz in one language; a picture without a box is shown whole."""
    return {"format": 1, "version": version_of(made), **_body(made, language, boxes)}


def version_of(made: MadeQuiz) -> str:
    """Changes when anything that a learner sees or must answer changes in any language."""
    bodies = [_body(made, language) for language in made.questions]
    text = json.dumps(bodies, ensure_ascii=False, sort_keys=True, separators=(",", ":"))
    return hashlib.sha256(text.encode()).hexdigest()[:12]


def _body(made: MadeQuiz, language: str, boxes: Boxes = _NO_BOXES) -> dict[str, object]:
    quiz = made.quiz
    return {
        "quiz": quiz.slug,
        "language": language,
        "title": quiz.title[language],
        "intro": quiz.intro[language],
        "minutes": minutes_of(made),
        "tries": quiz.tries,
        "needed": quiz.passes_needed,
        "scored": [one.common.slug for one in quiz.scored],
        "mustKnow": [one.common.slug for one in quiz.must_know],
        "questions": [_question(one, boxes) for one in made.questions[language]],
    }


def _question(one: MadeQuestion, boxes: Boxes) -> dict[str, object]:
    common = one.asked.common
    return {
        "id": common.slug,
        "kind": _WIDGETS[type(one.body)],
        "about": one.about,
        "text": one.text,
        "mustKnow": common.must_know,
        "rules": list(common.rules),
        "chapter": common.chapter,
        "drawing": _drawing(one, boxes),
        **_answers(one),
    }


_WIDGETS: dict[type[Body], str] = {
    Choices: "choice",
    Tapping: "part",
    Ordering: "order",
    Pruning: "prune",
}


def _drawing(one: MadeQuestion, boxes: Boxes) -> dict[str, object] | None:
    if one.picture is None:
        return None
    box = boxes.get(one.picture.name)
    shown = None if box is None else list(box)
    return {"drawing": one.picture.name, "at": one.at, "box": shown}


def _answers(one: MadeQuestion) -> dict[str, object]:
    body = one.body
    if isinstance(body, Choices):
        choices = [{"text": c.text, "why": c.why, "right": c.right} for c in body.options]
        return {"choices": choices}
    if isinstance(body, Ordering):
        items = [{"text": item.text, "why": item.why} for item in body.items]
        return {"items": items, "order": list(body.order)}
    if isinstance(body, Tapping):
        targets = [{"name": t.name, "label": t.label, "kind": t.kind} for t in body.targets]
        right = list(body.right)
        return {"targets": targets, "right": right, "why": body.why, "whys": dict(body.whys)}
    return {"case": body.vine}
