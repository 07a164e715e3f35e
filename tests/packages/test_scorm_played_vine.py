"""An exercise as a SCORM 1.2 package, played in Chromium with an independent learning system."""

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import FrameLocator, Page, expect

from exercise_page import settle
from lms import ROOM, LearningSystem, interactions, learning_system, outcome
from package_walk import (
    answer,
    cut,
    give_up,
    prune,
    shown_score,
    state,
)
from pencilwood.words import say
from scorm_sample import VINE, packed, sample

pytestmark = [pytest.mark.browser, pytest.mark.node]

# SCORM 1.2 Run-Time Environment, section 3.4.2: CMITimespan.
TIMESPAN = re.compile(r"\d{2,4}:\d\d:\d\d(\.\d{1,2})?")


@pytest.fixture
def vine(project: Path, npm: str, tmp_path: Path) -> Iterator[LearningSystem]:
    with learning_system(project, tmp_path, packed(VINE).content) as system:
        yield system


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
    settle(page)
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
    expect(part.locator(".pw-measures")).not_to_have_text(fresh, use_inner_text=True)
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
