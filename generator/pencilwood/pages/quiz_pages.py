"""The quizzes: several vines one after another, with a result."""

from __future__ import annotations

from pencilwood.pages.case_page import percent
from pencilwood.pages.desk import Desk
from pencilwood.pages.exercise import exercise_parts
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.page import Page
from pencilwood.proof import QuizProof
from pencilwood.proof.facts import fill
from pencilwood.rules import RULE_BY_NAME
from pencilwood.score.sheet import dump


def quizzes_page(handbook: Handbook, language: str) -> Page:
    """The list of quizzes."""
    desk = Desk(handbook, "quizzes", language)
    quizzes = tuple(proof.quiz for proof in handbook.quizzes)
    return desk.write(
        "quizzes.html", desk.say("quizzes"), menu_title=desk.say("quizzes"), quizzes=quizzes
    )


def quiz_page(handbook: Handbook, proof: QuizProof, language: str) -> Page:
    """One quiz: every exercise on one page, and a table that fills as they are done."""
    desk = Desk(handbook, f"quizzes/{proof.quiz.slug}", language)
    asked = [handbook.case_by_slug[one.prune] for one in proof.quiz.questions]
    vines = tuple(
        (
            one.case,
            fill(desk.own(one.case.story), one.facts[language]),
            exercise_parts(desk, one),
        )
        for one in asked
    )
    words = {
        "passesNeeded": proof.quiz.passes_needed,
        "strings": {
            name: desk.say(f"quiz.{name}", **_marks(name))
            for name in ("not-yet", "passed", "failed", "verdict.passed", "verdict.open")
        },
    }
    return desk.write(
        "quiz.html",
        desk.own(proof.quiz.title),
        description=desk.own(proof.quiz.intro),
        quiz=proof.quiz,
        vines=vines,
        words=dump(words).replace("<", "\\u003c"),
        chance=percent(desk, proof.chance_at_most),
        covers=tuple(RULE_BY_NAME[name] for name in proof.covers),
    )


def _marks(name: str) -> dict[str, str]:
    """Placeholders that the browser fills later stay as they are."""
    if not name.startswith("verdict"):
        return {}
    return {"n": "{n}", "of": "{of}", "needed": "{needed}"}
