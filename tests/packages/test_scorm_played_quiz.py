"""Quizzes as SCORM 1.2 packages, played in Chromium; and how the pages of packages look."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from browser import unmet_by
from lms import ROOM, LearningSystem, interactions, learning_system, outcome
from package_walk import answer, cut, practise, press, questions, step_on, take_test
from scorm_sample import QUIZ, VINE, packed, sample

pytestmark = [pytest.mark.browser, pytest.mark.node]


@pytest.fixture
def quiz(project: Path, npm: str, tmp_path: Path) -> Iterator[LearningSystem]:
    with learning_system(project, tmp_path, packed(QUIZ).content) as system:
        yield system


def test_a_quiz_passed(quiz: LearningSystem, desktop_page: Page) -> None:
    page = desktop_page
    part = quiz.open(page)
    take_test(part)
    expect(part.locator(".pw-ask-result h2")).to_have_text("Passed")
    expect(part.locator(".pw-ask-score")).to_contain_text("4 of 4 questions right: 100 of 100")
    part.get_by_label("Your name").fill("Benita Calicanto")
    record = quiz.leave(page)
    assert outcome(record) == ("passed", "100")
    told = interactions(record)
    asked = [one.common.slug for one in sample().quizzes[0].quiz.questions]
    assert [one["id"] for one in told] == asked
    kinds = ["choice", "fill-in", "sequencing", "choice", "performance"]
    assert [one["type"] for one in told] == kinds
    assert {one["result"] for one in told} == {"correct"}
    # What must be known counts apart from the score.
    assert [one["weighting"] for one in told] == ["1", "1", "1", "0", "1"]
    for one in told:
        if one["type"] in ("choice", "sequencing"):
            (right,) = one["correct_responses"].values()
            assert right["pattern"] == one["student_response"]
    assert "Benita" not in f"{record}"
    assert quiz.refused(page) == []


def test_a_must_know_answer_counts_apart_from_the_score(
    quiz: LearningSystem, phone_page: Page
) -> None:
    part = quiz.open(phone_page)
    take_test(part, wrong=("no-glasses", questions(part)[-1]["id"]))
    expect(part.locator(".pw-ask-score")).to_contain_text("3 of 4 are needed: that is enough.")
    expect(part.locator(".pw-ask-result h2")).to_have_text("Not passed yet")
    record = quiz.leave(phone_page)
    assert outcome(record) == ("failed", "75")
    assert [one["result"] for one in interactions(record)].count("wrong") == 2


def test_practice_is_not_told(quiz: LearningSystem, desktop_page: Page) -> None:
    part = quiz.open(desktop_page)
    practise(part)
    expect(part.locator(".pw-ask-result h2")).to_have_text("Practice is done")
    record = quiz.leave(desktop_page)
    assert outcome(record) == ("incomplete", "")
    assert interactions(record) == []


def test_a_quiz_is_taken_up_again(quiz: LearningSystem, desktop_page: Page) -> None:
    page = desktop_page
    part = quiz.open(page)
    press(part, "start.test")
    last = len(questions(part)) - 1
    part.locator(".pw-ask-choices input").nth(1).check()
    for _ in range(last):
        press(part, "go.next")
    cut(part, answer()[0])
    step_on(part)
    record = quiz.leave(page)
    assert record["core"]["lesson_location"] == questions_named()[last]
    assert len(record["suspend_data"]) <= ROOM

    part = quiz.open(page)
    expect(part.locator(".pw-ask h2")).to_contain_text(f"{last + 1} of {last + 1}")
    expect(part.locator(".pw-step-title").first).to_contain_text("Thinning-out pass")
    for _ in range(last):
        press(part, "go.back")
    expect(part.locator(".pw-ask-choices input").nth(1)).to_be_checked()
    assert interactions(quiz.leave(page)) == []


def questions_named() -> list[str]:
    return [one.common.slug for one in sample().quizzes[0].quiz.questions]


@pytest.mark.parametrize("name", [VINE, QUIZ])
def test_pages_fit_a_phone_and_meet_wcag(
    project: Path, npm: str, tmp_path: Path, phone_page: Page, name: str
) -> None:
    with learning_system(project, tmp_path, packed(name, "es").content) as system:
        rule = next((tmp_path / "package" / "rules").glob("*.html"))
        for path in (system.start, rule.relative_to(tmp_path).as_posix()):
            phone_page.goto((tmp_path / path).as_uri())
            for fold in phone_page.locator("details").all():
                fold.evaluate("one => { one.open = true; }")
            assert unmet_by(phone_page, project, "html") == []
            for width in (320, 390):
                phone_page.set_viewport_size({"width": width, "height": 800})
                wide = phone_page.evaluate("document.scrollingElement.scrollWidth")
                assert wide <= width, path
