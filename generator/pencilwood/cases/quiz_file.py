"""Reads a quiz: its questions, in which order, and how many must be right."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from pencilwood.cases import quiz_keys as keys
from pencilwood.cases.case_file import check_slug, known_names
from pencilwood.cases.fields import Row
from pencilwood.cases.question_rows import slug_key, the_question
from pencilwood.cases.quiz import Common, Quiz, QuizQuestion
from pencilwood.cases.report import Report, quoted
from pencilwood.cases.yaml_nodes import read_nodes
from pencilwood.findings import Finding


@dataclass(frozen=True)
class KnownNames:
    """Names that the questions of a quiz may use."""

    cases: Collection[str] = ()
    rules: Collection[str] = ()
    chapters: Collection[str] = ()


def read_quiz(
    path: Path,
    languages: Sequence[str],
    known: KnownNames,
    shown_as: str | None = None,
    *,
    language: str = "en",
) -> tuple[Quiz | None, list[Finding]]:
    """The quiz of a file, or None and every reason why it is none."""
    report = Report(language, languages)
    root = read_nodes(path, report, shown_as)
    row = None if root is None else keys.QUIZ_TABLE.read(root, "", report)
    if row is None:
        return None, report.findings()
    check_slug(row.get(keys.QUIZ), row.place_of(keys.QUIZ), path, report)
    questions = tuple(_questions(row, known, report))
    _check_needed(row, report)
    if report.errors:
        return None, report.findings()
    return _quiz(row, questions), report.findings()


def _quiz(row: Row, questions: tuple[QuizQuestion, ...]) -> Quiz:
    return Quiz(
        slug=row.need(keys.QUIZ),
        title=row.need(keys.TITLE).words,
        intro=row.need(keys.INTRO).words,
        questions=questions,
        passes_needed=row.need(keys.PASSES_NEEDED),
        place=row.place,
        tries=row.get(keys.TRIES) or 1,
        order=row.get(keys.PLACE_IN_LIST),
    )


def _check_needed(row: Row, report: Report) -> None:
    needed, given = row.get(keys.PASSES_NEEDED), row.get(keys.QUESTIONS)
    if needed is None or not given:
        return
    scored = sum(not placed.value.get(keys.MUST_KNOW) for placed in given)
    if needed > scored:
        place = row.place_of(keys.PASSES_NEEDED)
        report.add(place, "more-passes-than-questions", needed=needed, asked=scored)


def _questions(row: Row, known: KnownNames, report: Report) -> Iterator[QuizQuestion]:
    lines: dict[str, int] = {}
    for placed in row.get(keys.QUESTIONS) or ():
        one = placed.value
        key = slug_key(one)
        slug = None if key is None else one.get(key)
        if key is None or slug is None:
            continue
        place = one.place_of(key)
        if slug in lines:
            report.add(place, "named-twice", name=quoted(slug), line=lines[slug])
            continue
        lines[slug] = place.line
        if _check_names(one, known, report) and one.sound:
            yield the_question(one, _common(one, slug))


def _common(row: Row, slug: str) -> Common:
    return Common(
        slug,
        row.place,
        row.get(keys.MUST_KNOW) or False,
        tuple(placed.value for placed in row.get(keys.RULES) or ()),
        row.get(keys.CHAPTER),
    )


def _check_names(row: Row, known: KnownNames, report: Report) -> bool:
    """Whether every case, rule and chapter that a question names is there."""
    errors = report.errors
    known_names(row.get(keys.RULES), known.rules, "unknown-rule", report)
    drawing = row.get(keys.DRAWING)
    vines = [
        (row, keys.PRUNE),
        (row, keys.VINE),
        *([] if drawing is None else [(drawing, keys.VINE)]),
    ]
    for where, key in vines:
        vine = where.get(key)
        if vine is not None:
            report.check_known(vine, where.place_of(key), known.cases, "unknown-case")
    chapter = row.get(keys.CHAPTER)
    if chapter is not None:
        report.check_known(chapter, row.place_of(keys.CHAPTER), known.chapters, "unknown-chapter")
    return report.errors == errors
