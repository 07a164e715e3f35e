"""A quiz as an assessment test: its items in order, and what it takes to pass."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from xml.etree import ElementTree as Xml

from pencilwood.packages.qti.items import MUST_KNOW, SCORED, Item
from pencilwood.packages.qti.markup import (
    QTI,
    QTI_SCHEMA,
    as_file,
    base_value,
    head_of,
    outcome,
    paragraph,
    set_outcome,
    tag,
    variable,
)

ASSESSMENT_FILE = "assessment.xml"
_MUST = "MUSTKNOW"
_RESULT = "RESULT"
_PASSED, _FAILED = "passed", "not-passed"


@dataclass(frozen=True)
class Assessment:
    """What an assessment test holds."""

    identifier: str
    title: str
    needed: int
    """Right answers needed among the items that make up the score."""
    told: Sequence[str]
    """Read before the first question."""
    passed: str
    failed: str
    items: Sequence[Item]

    def count(self, category: str) -> int:
        """How many items there are of a category."""
        return sum(one.category == category for one in self.items)


def assessment(quiz: Assessment) -> bytes:
    """The file of the test."""
    must_know = quiz.count(MUST_KNOW)
    declared = [
        outcome("SCORE", "float", "0", highest=quiz.count(SCORED)),
        *([outcome(_MUST, "float", "0", highest=must_know)] if must_know else []),
        outcome("PASSED", "boolean", "false"),
        outcome(_RESULT, "identifier"),
    ]
    root = tag(
        "qti-assessment-test",
        {
            **head_of(QTI, QTI_SCHEMA),
            "identifier": quiz.identifier,
            "title": quiz.title,
        },
        *declared,
        _part(quiz),
        _processing(quiz, must_know),
        _feedback(_PASSED, quiz.passed),
        _feedback(_FAILED, quiz.failed),
    )
    return as_file(root)


def _part(quiz: Assessment) -> Xml.Element:
    """One part; the reasons follow each answer, so each question is answered once."""
    control = {"max-attempts": "1", "show-feedback": "true", "allow-skipping": "true"}
    read_first = tag("qti-content-body", None, *(paragraph(text) for text in quiz.told))
    section = tag(
        "qti-assessment-section",
        {"identifier": "questions", "title": quiz.title, "visible": "true"},
        tag("qti-rubric-block", {"view": "candidate"}, read_first),
        *(
            tag(
                "qti-assessment-item-ref",
                {"identifier": one.identifier, "href": one.file, "category": one.category},
            )
            for one in quiz.items
        ),
    )
    modes = {"navigation-mode": "nonlinear", "submission-mode": "individual"}
    return tag(
        "qti-test-part",
        {"identifier": "part", **modes},
        tag("qti-item-session-control", control),
        section,
    )


def _processing(quiz: Assessment, must_know: int) -> Xml.Element:
    sums = [_sum("SCORE", SCORED)]
    tests = [_at_least("SCORE", quiz.needed)]
    if must_know:
        sums.append(_sum(_MUST, MUST_KNOW))
        tests.append(_at_least(_MUST, must_know))
    passed = tag("qti-outcome-if", None, tag("qti-and", None, *tests), *_result(_PASSED, "true"))
    failed = tag("qti-outcome-else", None, *_result(_FAILED, "false"))
    decided = tag("qti-outcome-condition", None, passed, failed)
    return tag("qti-outcome-processing", None, *sums, decided)


def _sum(name: str, category: str) -> Xml.Element:
    scores = {"variable-identifier": "SCORE", "include-category": category}
    return set_outcome(name, tag("qti-sum", None, tag("qti-test-variables", scores)))


def _at_least(name: str, number: int) -> Xml.Element:
    return tag("qti-gte", None, variable(name), base_value("float", str(number)))


def _result(name: str, passed: str) -> list[Xml.Element]:
    return [
        set_outcome("PASSED", base_value("boolean", passed)),
        set_outcome(_RESULT, base_value("identifier", name)),
    ]


def _feedback(name: str, text: str) -> Xml.Element:
    given = {
        "identifier": name,
        "outcome-identifier": _RESULT,
        "show-hide": "show",
        "access": "atEnd",
    }
    return tag("qti-test-feedback", given, tag("qti-content-body", None, paragraph(text)))
