"""The demo's own quizzes, passed and failed in the built handbook."""

import json
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from exercise_page import choose
from quiz_walk import cut_in_list, press

pytestmark = [pytest.mark.browser, pytest.mark.slow]

QUIZZES = ("before-the-first-day", "first-week", "crew-leader", "high-cordons")


def data_of(page: Page) -> dict[str, Any]:
    """What the page gives the browser."""
    data = json.loads(page.locator("script.pw-quiz-data").text_content() or "")
    assert isinstance(data, dict)
    return data


def open_quiz(page: Page, site: Path, quiz: str, language: str = "en") -> dict[str, Any]:
    """Open a quiz of the built handbook."""
    folder = site if language == "en" else site / language
    page.goto((folder / "quizzes" / f"{quiz}.html").as_uri())
    expect(page.locator(".pw-ask h2")).to_be_visible()
    return data_of(page)


def answer(page: Page, question: dict[str, Any]) -> None:
    """Answer one question rightly."""
    if question["kind"] == "choice":
        right = [choice["right"] for choice in question["choices"]].index(True)
        page.locator(".pw-ask-choices input").nth(right).check()
    elif question["kind"] == "part":
        page.locator(".pw-ask-part select").select_option(question["right"][0])
    elif question["kind"] == "order":
        sort_steps(page, [question["items"][item]["text"] for item in question["order"]])
    else:
        prune(page)


def sort_steps(page: Page, wanted: list[str]) -> None:
    """Move each step up to its place, from the first on."""
    for place, text in enumerate(wanted):
        up = page.get_by_role("button", name=f"Up {text}", exact=True)
        for _ in wanted:
            if page.locator(".pw-ask-order .pw-ask-step").all_inner_texts().index(text) == place:
                break
            up.click()
    assert page.locator(".pw-ask-order .pw-ask-step").all_inner_texts() == wanted


def prune(page: Page) -> None:
    """Make the plan's cuts in the exercise on the page."""
    words = json.loads(page.locator("script.pw-words").text_content() or "")
    choose(page)
    for in_pass in ("rough", "thinning-out", "fine"):
        for cut in words["plan"]["cuts"]:
            if cut["pass"] == in_pass:
                part = page.locator(f'.pw-stage-whole [data-part="{cut["part"]}"]')
                position = part.get_attribute("data-position") or ""
                page.locator(".pw-nav select").select_option(label=position)
                cut_in_list(page, cut["part"], cut["buds"])
        page.locator(".pw-step .pw-main:visible").click()


@pytest.mark.parametrize("quiz", QUIZZES)
def test_right_answers_pass_and_the_slip_is_taken(
    desktop_page: Page, built_site: Path, quiz: str
) -> None:
    page = desktop_page
    data = open_quiz(page, built_site, quiz)
    press(page, "Take the test")
    for number, question in enumerate(data["questions"]):
        answer(page, question)
        last = number == len(data["questions"]) - 1
        press(page, "Hand in" if last else "Next question")
    press(page, "Yes, I am done")
    expect(page.get_by_role("heading", name="Passed")).to_be_focused()
    expect(page.locator(".pw-ask-score")).to_contain_text("100 of 100")
    page.get_by_label("Your name").fill("Ana")
    press(page, "Make the slip")
    line = page.locator(".pw-slip-line").input_value()
    page.goto((built_site / "es" / "crew.html").as_uri())
    page.locator("textarea").first.fill(line)
    press(page, "Agregar a la lista")
    expect(page.locator("tbody th")).to_have_text(["Ana"])
    # What the trainer would type is what the crew list fills in: version and topics.
    _, _, language, slug, version, _, _, topics, _ = line.split(" | ")
    page.get_by_label("Idioma usado").select_option(language)
    page.get_by_label("Examen", exact=True).select_option(slug)
    expect(page.get_by_label("Versión")).to_have_value(version)
    expect(page.get_by_label("Temas")).to_have_value(topics)


def answer_first(page: Page, question: dict[str, Any]) -> None:
    """Take what stands first, in practice, and read what is said about it."""
    main = page.locator(".pw-ask .pw-main:visible")
    if question["kind"] == "choice":
        page.locator(".pw-ask-choices input").first.check()
    elif question["kind"] == "part":
        page.locator(".pw-ask-part select").select_option(index=1)
    elif question["kind"] == "order":
        page.locator(".pw-ask-order > li").nth(1).locator("button").first.click()
    if question["kind"] != "prune":
        main.last.click()
        feedback = page.locator(".pw-ask-feedback")
        assert len(feedback.locator("p").first.inner_text()) > 20, question["id"]
        assert "{" not in feedback.inner_text(), question["id"]
    main.last.click()


@pytest.mark.parametrize("language", ["en", "es"])
@pytest.mark.parametrize("quiz", QUIZZES)
def test_first_choices_are_explained_and_the_pages_named_exist(
    phone_page: Page, built_site: Path, quiz: str, language: str
) -> None:
    page = phone_page
    data = open_quiz(page, built_site, quiz, language)
    page.locator(".pw-ask-way button").first.click()
    for question in data["questions"]:
        assert page.evaluate("document.documentElement.scrollWidth") <= 390, question["id"]
        if question["drawing"] is not None:
            expect(page.locator(".pw-ask-drawing svg")).to_be_visible()
        answer_first(page, question)
    page.locator(".pw-ask .pw-main:visible").last.click()
    links = page.locator(".pw-ask-links a")
    assert links.count() > 0
    folder = built_site / "quizzes" if language == "en" else built_site / "es" / "quizzes"
    for link in links.all():
        href = (link.get_attribute("href") or "").split("#")[0]
        assert (folder / href).resolve().is_file(), href


@pytest.mark.parametrize("quiz", QUIZZES)
def test_both_languages_ask_the_same_in_the_same_order(
    page: Page, built_site: Path, quiz: str
) -> None:
    english = open_quiz(page, built_site, quiz)
    spanish = open_quiz(page, built_site, quiz, "es")
    assert english["version"] == spanish["version"]
    for one, other in zip(english["questions"], spanish["questions"], strict=True):
        assert one["id"] == other["id"]
        # Answers are kept by place and name: a learner may change the language in the middle.
        for part in ("right", "order"):
            assert one.get(part) == other.get(part)
        rights = [[c["right"] for c in each.get("choices", [])] for each in (one, other)]
        assert rights[0] == rights[1]
