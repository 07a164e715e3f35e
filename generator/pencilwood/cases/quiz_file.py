"""Reads a quiz: which vines it has, in which order, and how many must be passed."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from pathlib import Path

from pencilwood.cases.case import Quiz, QuizQuestion
from pencilwood.cases.case_file import check_slug
from pencilwood.cases.case_keys import SLUG
from pencilwood.cases.fields import Key, ListOf, Row, Table
from pencilwood.cases.kinds import Text, Whole, Words
from pencilwood.cases.report import Report, quoted
from pencilwood.cases.yaml_nodes import read_nodes
from pencilwood.findings import Finding

MOST_QUESTIONS = 100

QUIZ = Key("quiz", SLUG, "Short name of the quiz; the file has the same name.")
TITLE = Key("title", Words(120), "Title of the page in each language.")
INTRO = Key("intro", Words(), "What the learner reads first, in each language.")
PRUNE = Key("prune", Text(), "Short name of the case to prune.")
QUESTIONS = Key(
    "questions",
    ListOf(Table("One question.", (PRUNE,)), 1, MOST_QUESTIONS),
    "The questions in their order.",
)
PASSES_NEEDED = Key(
    "passes needed", Whole(1, MOST_QUESTIONS), "How many of the vines must be passed."
)
QUIZ_TABLE = Table(
    "A quiz: vines to prune, and how many must be passed.",
    (QUIZ, TITLE, INTRO, QUESTIONS, PASSES_NEEDED),
)


def read_quiz(
    path: Path,
    languages: Sequence[str],
    case_slugs: Collection[str],
    shown_as: str | None = None,
    *,
    language: str = "en",
) -> tuple[Quiz | None, list[Finding]]:
    """The quiz of a file, or None and every reason why it is none."""
    report = Report(language, languages)
    root = read_nodes(path, report, shown_as)
    row = None if root is None else QUIZ_TABLE.read(root, "", report)
    if row is None:
        return None, report.findings()
    check_slug(row.get(QUIZ), row.place_of(QUIZ), path, report)
    questions = _questions(row, case_slugs, report)
    needed = row.get(PASSES_NEEDED)
    given = row.get(QUESTIONS)
    asked = len(given) if given else 0
    if needed is not None and asked and needed > asked:
        report.add(
            row.place_of(PASSES_NEEDED), "more-passes-than-vines", needed=needed, asked=asked
        )
    if report.errors:
        return None, report.findings()
    return _quiz(row, questions), report.findings()


def _quiz(row: Row, questions: tuple[QuizQuestion, ...]) -> Quiz:
    return Quiz(
        slug=row.need(QUIZ),
        title=row.need(TITLE).words,
        intro=row.need(INTRO).words,
        questions=questions,
        passes_needed=row.need(PASSES_NEEDED),
        place=row.place,
    )


def _questions(row: Row, case_slugs: Collection[str], report: Report) -> tuple[QuizQuestion, ...]:
    asked: dict[str, QuizQuestion] = {}
    for placed in row.get(QUESTIONS) or ():
        slug, place = placed.value.get(PRUNE), placed.value.place_of(PRUNE)
        if slug is None or not report.check_known(slug, place, case_slugs, "unknown-case"):
            continue
        if slug in asked:
            line = asked[slug].place.line
            report.add(place, "named-twice", name=quoted(slug), line=line)
        else:
            asked[slug] = QuizQuestion(slug, place)
    return tuple(asked.values())
