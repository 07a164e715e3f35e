"""Each kind of question in Chromium, in practice and in a test."""

import re
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from exercise_page import stored
from quiz_page import QuizPage
from quiz_walk import answer_all, choice, press, prune_as_planned, put_in_order, start

pytestmark = pytest.mark.browser


def go_to(page: Page, number: int) -> None:
    """Skip to a question of a test."""
    for _ in range(number - 1):
        press(page, "Next question")


def test_practice_tells_at_once_and_why(phone_page: Page, quiz: QuizPage, tmp_path: Path) -> None:
    page = phone_page
    page.goto(quiz.write(tmp_path))
    start(page, "Practise")
    press(page, "Check my answer")
    expect(page.get_by_role("alert")).to_have_text("First choose an answer.")
    choice(page, 0)
    press(page, "Check my answer")
    feedback = page.locator(".pw-ask-feedback")
    expect(feedback.get_by_role("heading", name="Not right")).to_be_focused()
    expect(feedback).to_contain_text("The bud at the very base is not counted.")
    expect(feedback).to_contain_text("The right answer: 10. Count the clear buds")
    expect(feedback.get_by_role("link", name="Counting buds")).to_have_attribute(
        "href", "counting-buds.html"
    )
    # What was explained is not answered again.
    expect(page.locator(".pw-ask-choices input").nth(1)).to_be_disabled()


def test_a_right_answer_has_its_why_too(phone_page: Page, quiz: QuizPage, tmp_path: Path) -> None:
    phone_page.goto(quiz.write(tmp_path))
    start(phone_page, "Practise")
    choice(phone_page, 1)
    press(phone_page, "Check my answer")
    feedback = phone_page.locator(".pw-ask-feedback")
    expect(feedback.get_by_role("heading", name="Right")).to_be_focused()
    expect(feedback).to_contain_text("Count the clear buds")
    expect(feedback.get_by_role("link")).to_have_count(0)


def test_a_test_tells_nothing_before_the_end(
    desktop_page: Page, quiz: QuizPage, tmp_path: Path
) -> None:
    page = desktop_page
    page.goto(quiz.write(tmp_path))
    start(page)
    choice(page, 0)
    press(page, "Next question")
    expect(page.locator(".pw-ask-feedback")).to_have_count(0)
    press(page, "Back")
    # An answer can be changed until the test is handed in.
    expect(page.locator(".pw-ask-choices input").nth(0)).to_be_checked()
    choice(page, 1)
    go_to(page, 5)
    prune_as_planned(page, quiz)
    expect(page.locator(".pw-ask-said").last).to_contain_text("Your pruning is kept.")
    expect(page.locator(".pw-exercise .pw-result")).to_be_hidden()
    assert "100" not in page.locator(".pw-ask").inner_text()


@pytest.mark.parametrize("zoomed", [False, True])
def test_a_tap_on_the_drawing_picks_the_piece(
    narrow: Page, quiz: QuizPage, tmp_path: Path, zoomed: bool
) -> None:
    page = narrow
    page.goto(quiz.write(tmp_path))
    start(page)
    go_to(page, 2)
    if zoomed:
        press(page, "Larger")
    for name in ("L6a", "L6b", "L5a"):
        cane = page.locator(f'.pw-ask-drawing [data-part="{name}"]')
        cane.scroll_into_view_if_needed()
        box = cane.bounding_box()
        assert box is not None
        page.touchscreen.tap(box["x"] + box["width"] / 2, box["y"] + box["height"] * 0.3)
        expect(page.locator(".pw-ask-part select")).to_have_value(name)
        expect(page.locator(".pw-ask-said").last).to_have_text(f"You picked: Cane {name}")
        assert page.locator(".pw-ask-picked").count() == 1


def test_a_tap_beside_the_wood_says_so(phone_page: Page, quiz: QuizPage, tmp_path: Path) -> None:
    phone_page.goto(quiz.write(tmp_path))
    start(phone_page)
    go_to(phone_page, 2)
    phone_page.locator(".pw-ask-drawing svg").tap(position={"x": 200, "y": 25})
    expect(phone_page.locator(".pw-ask-said").last).to_contain_text("There is no wood here.")
    expect(phone_page.locator(".pw-ask-part select")).to_have_value("")


def test_a_wrong_piece_is_explained_by_its_kind(
    phone_page: Page, quiz: QuizPage, tmp_path: Path
) -> None:
    page = phone_page
    page.goto(quiz.write(tmp_path))
    start(page, "Practise")
    choice(page, 1)
    press(page, "Check my answer")
    press(page, "Next question")
    press(page, "Check my answer")
    expect(page.get_by_role("alert")).to_contain_text("First tap the drawing")
    page.locator(".pw-ask-part select").select_option("L6m")
    press(page, "Check my answer")
    expect(page.locator(".pw-ask-feedback")).to_contain_text("This wood is older")
    expect(page.locator(".pw-ask-feedback")).to_contain_text("Right answers: Cane L6a, Cane L6b")
    assert page.locator(".pw-ask-right").count() == 24


def test_steps_move_by_buttons_and_the_focus_stays(
    desktop_page: Page, quiz: QuizPage, tmp_path: Path
) -> None:
    page = desktop_page
    page.goto(quiz.write(tmp_path))
    start(page)
    go_to(page, 3)
    up = page.get_by_role("button", name="Up Rough pass: shorten the long canes")
    up.focus()
    page.keyboard.press("Enter")
    expect(up).to_be_focused()
    expect(up).to_have_attribute("aria-disabled", "true")
    expect(page.locator(".pw-ask-said").last).to_have_text(
        "Now 1 of 3: Rough pass: shorten the long canes"
    )
    page.keyboard.press("Enter")
    first = page.locator(".pw-ask-order > li").first
    expect(first).to_contain_text("Rough pass")
    assert stored(page, f"quiz:{quiz.slug}")["answers"]["passes"] == [1, 0, 2]


def test_the_vine_in_practice_shows_its_own_result(
    desktop_page: Page, quiz: QuizPage, tmp_path: Path
) -> None:
    page = desktop_page
    page.goto(quiz.write(tmp_path))
    start(page, "Practise")
    for number in (1, None, None, 2):
        if number is not None:
            choice(page, number)
        elif page.locator(".pw-ask-part").count():
            page.locator(".pw-ask-part select").select_option("L6a")
        else:
            put_in_order(page)
        press(page, "Check my answer")
        press(page, "Next question")
    prune_as_planned(page, quiz)
    expect(page.locator(".pw-exercise .pw-result")).to_be_visible()
    expect(page.locator(".pw-ask-feedback")).to_contain_text("100 of 100 points")
    press(page, "To the end")
    press(page, "Yes, I am done")
    expect(page.get_by_role("heading", name="Practice is done")).to_be_focused()
    # Practice counts for nothing: no slip.
    expect(page.locator(".pw-slip-maker")).to_have_count(0)


def test_a_cut_after_done_takes_the_answer_back(
    desktop_page: Page, quiz: QuizPage, tmp_path: Path
) -> None:
    page = desktop_page
    page.goto(quiz.write(tmp_path))
    start(page)
    go_to(page, 5)
    prune_as_planned(page, quiz)
    key = f"quiz:{quiz.slug}"
    assert stored(page, key)["answers"]["a-vine"]["passed"] is True
    press(page, "Undo")
    assert "a-vine" not in stored(page, key)["answers"]
    page.locator(".pw-step .pw-main:visible").click()
    assert "a-vine" in stored(page, key)["answers"]


def test_a_passed_test(desktop_page: Page, quiz: QuizPage, tmp_path: Path) -> None:
    page = desktop_page
    page.goto(quiz.write(tmp_path))
    start(page)
    answer_all(page, quiz)
    expect(page.locator(".pw-ask")).to_contain_text("Every question has an answer.")
    press(page, "Yes, I am done")
    expect(page.get_by_role("heading", name="Passed")).to_be_focused()
    expect(page.locator(".pw-ask-score")).to_contain_text("4 of 4 questions right: 100 of 100.")
    expect(page.locator(".pw-ask-must-set")).to_contain_text("All 1 are right")
    expect(page.locator(".pw-ask-result")).not_to_contain_text("What to look at again")
    expect(page.locator(".pw-ask-plain")).to_contain_text("not proof of skill")


def test_must_know_stands_apart_from_the_score(
    desktop_page: Page, quiz: QuizPage, tmp_path: Path
) -> None:
    page = desktop_page
    page.goto(quiz.write(tmp_path))
    start(page)
    answer_all(page, quiz)
    press(page, "Back to the questions")
    press(page, "Back")
    choice(page, 0)
    press(page, "Next question")
    press(page, "Hand in")
    press(page, "Yes, I am done")
    expect(page.get_by_role("heading", name="Not passed yet")).to_be_focused()
    expect(page.locator(".pw-ask-score")).to_contain_text("that is enough")
    expect(page.locator(".pw-ask-must-set")).to_contain_text("All of them must be right")
    expect(page.locator(".pw-slip-maker")).to_have_count(0)


def test_a_test_not_passed_says_what_to_look_at_again(
    desktop_page: Page, quiz: QuizPage, tmp_path: Path
) -> None:
    page = desktop_page
    page.goto(quiz.write(tmp_path))
    start(page)
    answer_all(page, quiz, right=False)
    expect(page.locator(".pw-ask")).to_contain_text("2 questions have no answer yet.")
    expect(page.get_by_role("button", name=re.compile("^To question "))).to_have_count(2)
    press(page, "Yes, I am done")
    expect(page.locator(".pw-ask-score")).to_contain_text("are needed: that is not enough.")
    links = page.locator(".pw-ask-links a")
    assert links.all_inner_texts() == ["Too many buds", "Counting buds"]
    # Every question can be seen again, with what is said about it.
    page.get_by_role("button", name="See it again question 1").click()
    expect(page.locator(".pw-ask-feedback")).to_contain_text("Your answer: 11.")
    press(page, "Next question")
    expect(page.locator(".pw-ask-feedback")).to_contain_text("This wood is older")
    press(page, "To my result")
    expect(page.get_by_role("heading", name="Not passed yet")).to_be_focused()
    # The wrong answers' rules come back in practice.
    assert list(stored(page, "rules")["weak"]) == ["too-many-buds"]


def test_after_its_tries_a_test_waits_for_the_trainer(
    desktop_page: Page, quiz: QuizPage, tmp_path: Path
) -> None:
    page = desktop_page
    page.goto(quiz.write(tmp_path))
    for _ in range(quiz.data()["tries"]):
        start(page)
        answer_all(page, quiz, right=False)
        press(page, "Yes, I am done")
        press(page, "Start over")
    expect(page.get_by_role("button", name="Take the test")).to_have_count(0)
    expect(page.get_by_role("button", name="Practise", exact=True)).to_be_visible()
    page.reload()
    expect(page.get_by_role("button", name="Take the test")).to_have_count(0)
    press(page, "My trainer is here and allows another test")
    start(page)
