"""Single questions of a quiz, made of the demo's vines, for tests."""

from pencilwood.cases.quiz import (
    Common,
    Quiz,
    QuizQuestion,
    Said,
    Seen,
)
from pencilwood.places import Place
from pencilwood.quiz.made import Choices, MadeQuestion, MadeQuiz
from pencilwood.quiz.making import make_quiz
from quiz_demo import Demo

HERE = Place("quiz.yml", 7, 5)


def common(slug: str = "q", *, must_know: bool = False, rules: tuple[str, ...] = ()) -> Common:
    return Common(slug, HERE, must_know, rules)


def seen(vine: str, at: str | None = None) -> Seen:
    return Seen(vine, HERE, "before", at)


def said(words: str, why: str = "That is why it is so.") -> Said:
    return Said({"en": words, "es": words}, {"en": why, "es": why}, HERE)


def a_quiz(*questions: QuizQuestion, needed: int = 0, tries: int = 1) -> Quiz:
    words = {"en": "Quiz", "es": "Examen"}
    return Quiz("quiz", words, words, questions, needed, Place("quiz.yml", 1, 1), tries)


def made(demo: Demo, *questions: QuizQuestion, needed: int = 0, tries: int = 1) -> MadeQuiz:
    quiz, findings = make_quiz(
        a_quiz(*questions, needed=needed, tries=tries), demo.vines, demo.profile
    )
    assert findings == ()
    assert quiz is not None
    return quiz


def made_one(demo: Demo, question: QuizQuestion) -> MadeQuestion:
    return made(demo, question).questions["en"][0]


def refused(demo: Demo, question: QuizQuestion) -> str:
    quiz, findings = make_quiz(a_quiz(question), demo.vines, demo.profile)
    assert quiz is None
    [only] = findings
    _, spanish = make_quiz(a_quiz(question), demo.vines, demo.profile, "es")
    assert spanish[0].what != only.what
    return only.render()


def texts(question: MadeQuestion) -> set[str]:
    assert isinstance(question.body, Choices)
    return {option.text for option in question.body.options}


def right_text(question: MadeQuestion) -> str:
    assert isinstance(question.body, Choices)
    return question.body.options[question.body.right].text
