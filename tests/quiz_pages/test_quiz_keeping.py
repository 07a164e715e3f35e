"""A quiz that is left in the middle, on a device that keeps, refuses, fills up or was spoiled."""

from collections.abc import Iterator
from contextlib import ExitStack
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from browser import watched_page
from exercise_page import choose, settle, stored
from quiz_page import QuizPage
from quiz_walk import answer_all, choice, cut_in_list, press, put_in_order, start

pytestmark = pytest.mark.browser

KEY = "quiz:before-the-first-day"


def saves_nothing(page: Page) -> bool:
    """Whether the page says that it keeps nothing."""
    return page.get_by_text("This browser does not save your work.").first.is_visible()


def test_a_reload_in_the_middle_goes_on_where_it_was(
    desktop_page: Page, quiz: QuizPage, tmp_path: Path
) -> None:
    page = desktop_page
    page.goto(quiz.write(tmp_path))
    start(page)
    choice(page, 1)
    press(page, "Next question")
    page.locator(".pw-ask-part select").select_option("L6a")
    press(page, "Next question")
    put_in_order(page)
    page.reload()
    expect(page.locator(".pw-ask h2")).to_have_text("3 of 5: Put in order")
    expect(page.locator(".pw-ask-order > li").last).to_contain_text("Fine pass")
    press(page, "Back")
    expect(page.locator(".pw-ask-part select")).to_have_value("L6a")
    press(page, "Back")
    expect(page.locator(".pw-ask-choices input").nth(1)).to_be_checked()


def test_a_half_pruned_vine_is_still_half_pruned(
    desktop_page: Page, quiz: QuizPage, tmp_path: Path
) -> None:
    page = desktop_page
    page.goto(quiz.write(tmp_path))
    start(page)
    for _ in range(4):
        press(page, "Next question")
    choose(page)
    cut_in_list(page, "L6a", 2)
    page.reload()
    expect(page.locator(".pw-measures dd").first).not_to_have_text("0")
    buds = page.locator(".pw-measures dd").first.inner_text()
    press(page, "Undo")
    settle(page)
    assert page.locator(".pw-measures dd").first.inner_text() != buds
    # The vine's own page knows nothing of it.
    assert page.evaluate("localStorage.getItem('pencilwood:work:tidy')") is None


def test_a_closed_browser_and_a_result_are_taken_up(
    browser: Browser, quiz: QuizPage, tmp_path: Path
) -> None:
    address = quiz.write(tmp_path)
    visit = watched_page(browser)
    page = next(visit)
    page.goto(address)
    start(page)
    answer_all(page, quiz)
    press(page, "Yes, I am done")
    kept = page.evaluate("JSON.stringify({...localStorage})")
    assert list(visit) == []
    again = watched_page(browser)
    page = next(again)
    page.goto(address)
    page.evaluate("kept => Object.assign(localStorage, JSON.parse(kept))", kept)
    page.reload()
    expect(page.get_by_role("heading", name="Passed")).to_be_visible()
    press(page, "Start over")
    start(page)
    # A new round begins with nothing: no answer, and an uncut vine.
    assert page.locator(".pw-ask-choices input:checked").count() == 0
    for _ in range(4):
        press(page, "Next question")
    expect(page.get_by_role("button", name="Undo", exact=True)).to_be_disabled()
    assert list(again) == []


def test_storage_off(desktop_page: Page, quiz: QuizPage, tmp_path: Path) -> None:
    page = desktop_page
    page.add_init_script(
        "Object.defineProperty(window, 'localStorage',"
        " {get() { throw new DOMException('no', 'SecurityError'); }})"
    )
    page.goto(quiz.write(tmp_path))
    assert saves_nothing(page)
    start(page)
    answer_all(page, quiz)
    press(page, "Yes, I am done")
    expect(page.get_by_role("heading", name="Passed")).to_be_focused()


def test_storage_full(desktop_page: Page, quiz: QuizPage, tmp_path: Path) -> None:
    page = desktop_page
    page.goto(quiz.write(tmp_path))
    assert not saves_nothing(page)
    start(page)
    page.evaluate(
        "() => { const real = Storage.prototype.setItem; Storage.prototype.setItem = function () {"
        " throw new DOMException('full', 'QuotaExceededError'); };"
        " window.emptyAgain = () => { Storage.prototype.setItem = real; }; }"
    )
    choice(page, 1)
    assert saves_nothing(page)
    press(page, "Next question")
    press(page, "Back")
    expect(page.locator(".pw-ask-choices input").nth(1)).to_be_checked()
    page.evaluate("emptyAgain()")
    press(page, "Next question")
    assert not saves_nothing(page)
    assert stored(page, KEY)["answers"] == {"how-many": 1}


@pytest.mark.parametrize(
    "spoiled",
    [
        "{not json",
        "null",
        "[]",
        '{"version":"0f3a5c9d1e2b","mode":"test","at":77,"answers":{"how-many":9,"passes":[1]}}',
        '{"version":"0f3a5c9d1e2b","mode":"test","done":true,"answers":7,"checked":{},"turn":-1}',
    ],
)
def test_storage_spoiled(desktop_page: Page, quiz: QuizPage, tmp_path: Path, spoiled: str) -> None:
    page = desktop_page
    page.add_init_script(
        f"if (!localStorage.getItem('tried')) {{ localStorage.setItem('pencilwood:{KEY}',"
        f" {spoiled!r}); localStorage.setItem('pencilwood:rules', '[3'); "
        "localStorage.setItem('tried', '1') }"
    )
    page.goto(quiz.write(tmp_path))
    assert page.locator(".pw-ask h2").count() == 1
    if page.get_by_role("button", name="Start over").count():
        press(page, "Start over")
    if page.get_by_role("button", name="Take the test").count():
        start(page)
    while page.get_by_role("button", name="Back", exact=True).count():
        press(page, "Back")
    assert page.locator(".pw-ask-choices input:checked").count() == 0
    choice(page, 1)
    assert stored(page, KEY)["answers"] == {"how-many": 1}


def test_work_on_an_older_quiz_is_not_taken_up(
    desktop_page: Page, quiz: QuizPage, tmp_path: Path
) -> None:
    page = desktop_page
    page.goto(quiz.write(tmp_path))
    start(page)
    choice(page, 1)
    page.goto(QuizPage("en", version="ffffffffffff").write(tmp_path))
    start(page)
    assert page.locator(".pw-ask-choices input:checked").count() == 0


def test_the_other_language_goes_on_with_the_same_answers(
    desktop_page: Page, quiz: QuizPage, tmp_path: Path
) -> None:
    page = desktop_page
    page.goto(quiz.write(tmp_path))
    start(page)
    choice(page, 1)
    page.goto(QuizPage("es").write(tmp_path))
    expect(page.locator(".pw-ask h2")).to_have_text("1 de 5: Cuente")
    expect(page.locator(".pw-ask-choices input").nth(1)).to_be_checked()


@pytest.fixture
def two_pages(desktop_page: Page) -> Iterator[tuple[Page, Page]]:
    """Two tabs of one browser."""
    with ExitStack() as stack:
        other = desktop_page.context.new_page()
        stack.callback(other.close)
        yield desktop_page, other


def test_two_tabs_show_the_same_and_lose_nothing(
    two_pages: tuple[Page, Page], quiz: QuizPage, tmp_path: Path
) -> None:
    one, two = two_pages
    address = quiz.write(tmp_path)
    one.goto(address)
    two.goto(address)
    start(one)
    expect(two.locator(".pw-ask h2")).to_have_text("1 of 5: Count")
    expect(two.locator(".pw-quiz-built > .pw-ask-said")).to_contain_text("another open page")
    choice(one, 1)
    expect(two.locator(".pw-ask-choices input").nth(1)).to_be_checked()
    press(two, "Next question")
    two.locator(".pw-ask-part select").select_option("L6a")
    expect(one.locator(".pw-ask-part select")).to_have_value("L6a")
    assert stored(one, KEY)["answers"] == {"how-many": 1, "a-cane": "L6a"}


def test_no_network(desktop_page: Page, quiz: QuizPage, tmp_path: Path) -> None:
    page = desktop_page
    asked: list[str] = []
    page.goto(quiz.write(tmp_path))
    page.context.set_offline(True)
    page.on("request", lambda request: asked.append(request.url))
    start(page)
    answer_all(page, quiz)
    press(page, "Yes, I am done")
    expect(page.get_by_role("heading", name="Passed")).to_be_visible()
    assert asked == []


def test_another_person_starts_with_nothing_of_the_last(
    desktop_page: Page, quiz: QuizPage, tmp_path: Path
) -> None:
    page = desktop_page
    page.goto(quiz.write(tmp_path))
    page.evaluate("localStorage.setItem('pencilwood:crew', '[]')")
    page.evaluate("localStorage.setItem('elsewhere', 'stays')")
    start(page)
    answer_all(page, quiz, right=False)
    press(page, "Yes, I am done")
    press(page, "Start over")
    page.get_by_text("Another person uses this device now").click()
    press(page, "Forget everything and start fresh")
    expect(page.locator(".pw-ask h2")).to_be_focused()
    keys = set(page.evaluate("Object.keys(localStorage)"))
    assert keys == {f"pencilwood:{KEY}", "pencilwood:crew", "elsewhere"}
    assert stored(page, KEY)["answers"] == {}
    assert stored(page, KEY)["tries"] == 0
