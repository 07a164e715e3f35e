"""Passed or not: the outcome processing of a QTI test against the handbook's own script."""

from __future__ import annotations

import json
import random
import subprocess
from collections.abc import Mapping
from pathlib import Path
from xml.etree import ElementTree as Xml

import pytest

from pencilwood.packages.qti.left_out import Carried, needed_of
from pencilwood.quiz.compiled import compile_quiz
from pencilwood.quiz.made import Pruning
from pencilwood.words import say
from qti_demo import LANGUAGES, QTI, QUIZZES, Packed, demo_handbook, packed, read

TRIES = 300


class Outcomes:
    """Runs the outcome processing of a test.

    Only the rules that our files use, after the words of the standard (source: 1EdTech, QTI 3.0
    Assessment, Section and Item Information Model, outcome rules and expressions): `sum` adds
    its values, `test-variables` collects a variable of every item in a category, `gte` compares
    numbers, `and` is true if all are, the first true branch of a condition is carried out.
    """

    def __init__(self, test: Xml.Element, scores: Mapping[str, float]) -> None:
        refs = test.iter(f"{QTI}qti-assessment-item-ref")
        self.category = {ref.attrib["identifier"]: ref.attrib["category"] for ref in refs}
        self.scores = scores
        self.values: dict[str, object] = {}
        for one in test.findall(f"{QTI}qti-outcome-declaration"):
            self.values[one.attrib["identifier"]] = one.findtext(f".//{QTI}qti-value")
        processing = test.find(f"{QTI}qti-outcome-processing")
        assert processing is not None
        for rule in processing:
            self.carry_out(rule)

    def carry_out(self, rule: Xml.Element) -> None:
        name = rule.tag.removeprefix(f"{QTI}qti-")
        if name == "set-outcome-value":
            self.values[rule.attrib["identifier"]] = self.value(rule[0])
            return
        assert name == "outcome-condition"
        for branch in rule:
            is_else = branch.tag == f"{QTI}qti-outcome-else"
            if is_else or self.value(branch[0]) is True:
                for inner in branch if is_else else branch[1:]:
                    self.carry_out(inner)
                return

    def value(self, one: Xml.Element) -> object:
        match one.tag.removeprefix(f"{QTI}qti-"):
            case "sum":
                return sum(number for part in one for number in self.collected(part))
            case "and":
                return all(self.value(part) is True for part in one)
            case "gte":
                first, second = (float(str(self.value(part))) for part in one)
                return first >= second
            case "variable":
                return self.values[one.attrib["identifier"]]
            case "base-value":
                return one.text
        raise AssertionError(one.tag)

    def collected(self, one: Xml.Element) -> list[float]:
        assert one.attrib["variable-identifier"] == "SCORE"
        wanted = one.attrib["include-category"]
        return [score for name, score in self.scores.items() if self.category[name] == wanted]


@pytest.fixture(params=[(quiz, spoken) for quiz in QUIZZES for spoken in LANGUAGES], ids="-".join)
def one(request: pytest.FixtureRequest) -> Packed:
    return packed(*request.param)


@pytest.mark.node
def test_passed_means_what_it_means_in_the_handbook(one: Packed, node: str, project: Path) -> None:
    """Random results of the carried questions, marked by the test and by `markQuiz`."""
    test = read(one.files["assessment.xml"])
    names = {slug: root.attrib["identifier"] for slug, root in one.items()}
    compiled = compile_quiz(one.made, one.language)
    quiz = compiled | {
        # What the package lacks is taken away here too, and the share of right answers stays.
        "questions": [{"id": slug, "kind": "prune"} for slug in names],
        "scored": [slug for slug in compiled["scored"] if slug in names],  # type: ignore[attr-defined]
        "mustKnow": [slug for slug in compiled["mustKnow"] if slug in names],  # type: ignore[attr-defined]
    }
    before = len(compiled["scored"])  # type: ignore[arg-type]
    quiz["needed"] = -(-int(str(compiled["needed"])) * len(quiz["scored"]) // before)  # type: ignore[arg-type]
    chance = random.Random(one.made.quiz.slug)
    tries = []
    for _ in range(TRIES):
        luck = chance.choice((0.5, 0.9, 0.97))
        tries.append({slug: chance.random() < luck for slug in names})
    ours = marked(node, project, quiz, tries)
    seen = set()
    for tried, expected in zip(tries, ours, strict=True):
        outcomes = Outcomes(test, {names[slug]: float(right) for slug, right in tried.items()})
        assert outcomes.values["SCORE"] == expected["right"]
        assert outcomes.values["PASSED"] == ("true" if expected["passed"] else "false")
        result = "passed" if expected["passed"] else "not-passed"
        assert outcomes.values["RESULT"] == result
        seen.add(result)
    assert len(seen) == 2, "all tries came out alike"
    feedback = {one.attrib["identifier"] for one in test.iter(f"{QTI}qti-test-feedback")}
    assert feedback == seen


def marked(
    node: str, project: Path, quiz: object, tries: list[dict[str, bool]]
) -> list[dict[str, object]]:
    """What the handbook's own script makes of right and wrong answers."""
    module = (project / "site_assets" / "js" / "quiz" / "marking.mjs").as_uri()
    script = f"""
      import {{ markQuiz }} from {json.dumps(module)};
      import {{ readFileSync }} from "node:fs";
      const {{ quiz, tries }} = JSON.parse(readFileSync(0, "utf8"));
      const given = (right) => ({{ passed: right, score: right ? 100 : 0 }});
      console.log(JSON.stringify(tries.map((tried) => markQuiz(quiz,
        Object.fromEntries(Object.entries(tried).map(([id, right]) => [id, given(right)]))))));
    """
    done = subprocess.run(
        [node, "--input-type=module", "--eval", script],
        input=json.dumps({"quiz": quiz, "tries": tries}),
        capture_output=True,
        text=True,
        check=True,
    )
    return list(json.loads(done.stdout))


def test_leaving_questions_out_never_makes_passing_easier() -> None:
    """The share of right answers that is needed is never less than in the quiz."""
    for proof in demo_handbook().quizzes:
        questions = proof.made.questions["en"]
        for dropped in range(len(questions) + 1):
            carried = [Carried(q, q.text, n >= dropped) for n, q in enumerate(questions)]
            needed, of = needed_of(proof, carried)
            assert needed <= of
            assert needed * len(proof.quiz.scored) >= proof.quiz.passes_needed * of


def test_every_vine_to_prune_is_said_to_be_lost_or_carried_as_less(one: Packed) -> None:
    carried = {slug for slug, _ in one.items()}
    asked = [question for question in one.questions if isinstance(question.body, Pruning)]
    assert asked
    for question in asked:
        title = one.handbook.case_by_slug[question.slug].case.title[one.language]
        notes = [note for note in one.package.notes if title in note]
        lost = say(one.language, "qti.left-out.prune", title=title)
        assert len(notes) == 1
        assert (notes == [lost]) == (question.slug not in carried)
    assert {question.slug for question in one.questions} - carried <= {q.slug for q in asked}


def test_what_is_said_follows_from_the_quiz() -> None:
    """Only a quiz that asks for an order loses something of orders."""
    order = {
        quiz: any("wrong order" in note for note in packed(quiz, "en").package.notes)
        for quiz in QUIZZES
    }
    assert order == {"before-the-first-day": True, "crew-leader": True, "first-week": False}
    tapped = {
        quiz: any("only come near a piece" in note for note in packed(quiz, "en").package.notes)
        for quiz in QUIZZES
    }
    assert tapped == {"before-the-first-day": True, "crew-leader": False, "first-week": True}
