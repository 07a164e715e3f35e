"""SCORM 1.2 packages played in Chromium, with an independent learning system keeping the record."""

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import FrameLocator, Page, expect

from lms import LearningSystem, learning_system
from package_walk import (
    answer,
    cut,
    give_up,
    practise,
    press,
    prune,
    questions,
    shown_score,
    state,
    step_on,
    take_test,
)
from pencilwood.words import say
from scorm_sample import QUIZ, VINE, packed, sample

pytestmark = [pytest.mark.browser, pytest.mark.node]

# SCORM 1.2 Run-Time Environment, section 3.4.2: CMITimespan.
TIMESPAN = re.compile(r"\d{2,4}:\d\d:\d\d(\.\d{1,2})?")
ROOM = 4096
"""Section 3.4.4: characters of cmi.suspend_data."""


@pytest.fixture
def vine(project: Path, npm: str, tmp_path: Path) -> Iterator[LearningSystem]:
    with learning_system(project, tmp_path, packed(VINE).content) as system:
        yield system


@pytest.fixture
def quiz(project: Path, npm: str, tmp_path: Path) -> Iterator[LearningSystem]:
    with learning_system(project, tmp_path, packed(QUIZ).content) as system:
        yield system


def outcome(record: dict[str, Any]) -> tuple[str, str]:
    return record["core"]["lesson_status"], record["core"]["score"]["raw"]


def interactions(record: dict[str, Any]) -> list[dict[str, Any]]:
    return list(record["interactions"].values())


def nothing_was_refused(system: LearningSystem, page: Page, part: FrameLocator) -> None:
    assert system.refused(page) == []
    expect(state(part)).not_to_have_attribute("data-state", "refused")


def test_the_best_of_several_tries_counts(vine: LearningSystem, desktop_page: Page) -> None:
    part = vine.open(desktop_page)
    assert outcome(vine.record(desktop_page)) == ("incomplete", "")
    cut(part, answer()[0])
    give_up(part)
    poor = shown_score(part)
    assert outcome(vine.record(desktop_page)) == ("failed", f"{poor}")
    expect(state(part)).to_contain_text(f"{poor} of 100, not passed")

    part.get_by_role("button", name="Try again").first.click()
    prune(part)
    good = shown_score(part)
    assert good == sample().case_by_slug[VINE].answer_score
    assert outcome(vine.record(desktop_page)) == ("passed", f"{good}")

    # A worse try is told as a try, and takes nothing away.
    part.get_by_role("button", name="Try again").first.click()
    give_up(part)
    worse = shown_score(part)
    assert worse < good
    assert vine.refused(desktop_page) == []
    check_tries(vine.leave(desktop_page), (poor, good, worse))


def check_tries(record: dict[str, Any], scores: tuple[int, int, int]) -> None:
    """Wrong, right, wrong, and the best of them as the outcome."""
    assert outcome(record) == ("passed", f"{scores[1]}")
    assert (record["core"]["score"]["min"], record["core"]["score"]["max"]) == ("0", "100")
    tries = interactions(record)
    assert [one["result"] for one in tries] == ["wrong", "correct", "wrong"]
    told = [one["student_response"].split()[1] for one in tries]
    assert told == [f"{points}" for points in scores]
    assert {one["type"] for one in tries} == {"performance"}
    assert TIMESPAN.fullmatch(record["core"]["session_time"])


def test_quit_and_resume(vine: LearningSystem, phone_page: Page) -> None:
    page = phone_page
    part = vine.open(page)
    rough, later = answer()[:6], answer()[6:]
    for one in rough:
        cut(part, one)
    kept = part.locator(".pw-measures").inner_text()
    record = vine.leave(page)
    assert outcome(record) == ("incomplete", "")
    assert record["core"]["exit"] == "suspend"
    assert record["core"]["lesson_location"] == "rough"
    assert 0 < len(record["suspend_data"]) <= ROOM
    assert record["suspend_data"].isascii()
    # Nothing of a learner stays in the browser: the next one may sit at the same computer.
    assert page.evaluate("() => Object.keys(localStorage)") == []

    part = vine.open(page)
    assert part.locator(".pw-measures").inner_text() == kept
    assert vine.record(page)["core"]["entry"] == "resume"
    for one in later:
        cut(part, one)
    give_up(part)
    good = shown_score(part)
    assert good == sample().case_by_slug[VINE].answer_score
    vine.leave(page)

    part = vine.open(page)
    assert shown_score(part) == good, "the result is there again"
    expect(state(part)).to_contain_text(f"{good} of 100, passed")
    assert len(interactions(vine.leave(page))) == 1, "to look at it again is no new try"


def test_another_learner_finds_nothing_of_the_first(
    vine: LearningSystem, desktop_page: Page
) -> None:
    part = vine.open(desktop_page)
    fresh = part.locator(".pw-measures").inner_text()
    cut(part, answer()[0])
    assert part.locator(".pw-measures").inner_text() != fresh
    vine.leave(desktop_page)
    vine.kept = {}
    part = vine.open(desktop_page)
    assert part.locator(".pw-measures").inner_text() == fresh


@pytest.mark.parametrize("foreign", ["bookmark=7;done", "[1,2,3]", '[1,".0",0,[0]]'])
def test_what_somebody_else_kept_starts_fresh(
    vine: LearningSystem, desktop_page: Page, foreign: str
) -> None:
    vine.kept = {"core": {}, "suspend_data": foreign}
    part = vine.open(desktop_page)
    expect(part.locator(".pw-step").first).to_be_visible()
    nothing_was_refused(vine, desktop_page, part)


@pytest.mark.parametrize("mode", ["review", "browse"])
def test_only_looking_records_nothing(vine: LearningSystem, desktop_page: Page, mode: str) -> None:
    part = vine.open(desktop_page, lesson_mode=mode)
    expect(state(part)).to_contain_text("only looking")
    give_up(part)
    shown_score(part)
    assert vine.refused(desktop_page) == []
    record = vine.leave(desktop_page)
    # The standard has the system itself write "browsed" (Run-Time Environment, section 3.4.4).
    assert outcome(record) in [("not attempted", ""), ("browsed", "")]
    assert (record["suspend_data"], record["core"]["exit"], interactions(record)) == ("", "", [])


def test_a_system_that_refuses_is_named(vine: LearningSystem, desktop_page: Page) -> None:
    part = vine.open(desktop_page)
    desktop_page.evaluate(
        "() => { API.LMSCommit = () => 'false'; API.LMSGetLastError = () => 301 }"
    )
    give_up(part)
    expect(state(part)).to_contain_text("did not take the report (error 301)")
    vine.leave(desktop_page)


def test_the_session_ends_when_the_system_moves_on(
    vine: LearningSystem, desktop_page: Page
) -> None:
    vine.open(desktop_page)
    desktop_page.evaluate("() => { document.querySelector('iframe').src = 'about:blank' }")
    desktop_page.wait_for_function("() => API.isTerminated()")


def test_a_system_that_opens_a_window(vine: LearningSystem, desktop_page: Page) -> None:
    page = desktop_page
    page.goto(f"{vine.address}/lms.html")
    page.evaluate("() => { window.API = new Scorm12API({ logLevel: 5 }) }")
    with page.expect_popup() as opened:
        page.evaluate("start => { window.open(start) }", vine.start)
    window = opened.value
    expect(state(window)).to_contain_text("Connected")
    give_up(window)
    score = shown_score(window)
    window.close()
    page.wait_for_function("() => API.isTerminated()")
    assert outcome(vine.record(page)) == ("failed", f"{score}")


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
    expect(part.locator(".pw-ask-score")).to_contain_text("That is enough: 3 are needed")
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
    expect(part.locator(".pw-step h3").first).to_contain_text("Thinning-out pass")
    for _ in range(last):
        press(part, "go.back")
    expect(part.locator(".pw-ask-choices input").nth(1)).to_be_checked()
    assert interactions(quiz.leave(page)) == []


def questions_named() -> list[str]:
    return [one.common.slug for one in sample().quizzes[0].quiz.questions]


def test_a_rule_opens_beside_the_quiz(vine: LearningSystem, desktop_page: Page) -> None:
    part = vine.open(desktop_page)
    give_up(part)
    with desktop_page.expect_popup() as opened:
        part.locator('.pw-result a[href*="rules/"]').first.click()
    expect(opened.value.locator("h1")).not_to_be_empty()
    assert not desktop_page.evaluate("() => API.isTerminated()")


@pytest.mark.parametrize("language", ["en", "es"])
def test_without_a_system_the_page_works_from_the_disk_and_says_so(
    vine: LearningSystem,
    project: Path,
    tmp_path_factory: pytest.TempPathFactory,
    desktop_page: Page,
    language: str,
) -> None:
    page, said = desktop_page, []
    page.on("console", lambda message: said.append(message.text))
    folder = tmp_path_factory.mktemp("alone")
    with learning_system(project, folder, packed(VINE, language).content) as system:
        page.goto((folder / system.start).as_uri())
        expect(state(page)).to_have_text(say(language, "scorm.page.alone"))
        give_up(page)
        assert shown_score(page) < 100
        assert page.evaluate(f"() => localStorage.getItem('pencilwood:score:{VINE}')")
    assert said == [], "the page's own policy must not stop the page"


WCAG = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]
"""Rules of axe-core for WCAG 2.2, levels A and AA (https://www.w3.org/TR/WCAG22/)."""


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
            # Not as a script element: the page's own policy would rightly refuse it.
            phone_page.evaluate((project / "node_modules/axe-core/axe.min.js").read_text("utf-8"))
            found = phone_page.evaluate(
                "tags => axe.run(document, { runOnly: tags }).then((all) => all.violations"
                ".map((one) => `${one.id}: ${one.nodes.slice(0, 3).map((node) => node.html)}`))",
                WCAG,
            )
            assert found == []
            for width in (320, 390):
                phone_page.set_viewport_size({"width": width, "height": 800})
                wide = phone_page.evaluate("document.scrollingElement.scrollWidth")
                assert wide <= width, path
