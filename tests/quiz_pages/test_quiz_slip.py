"""The completion slip on screen and on paper, and the trainer's crew list."""

import csv
import io
import json
import re
from datetime import date
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from exercise_page import stored
from quiz_page import QuizPage, write_crew_page
from quiz_walk import answer_all, press, start

pytestmark = pytest.mark.browser

FIELDS = ["Name", "Language used", "Quiz", "Version", "Score out of 100", "Date", "Topics"]


def make_slip(page: Page, quiz: QuizPage, folder: Path, name: str) -> str:
    """Pass the quiz and make a slip; gives its line of text."""
    page.goto(quiz.write(folder))
    start(page)
    answer_all(page, quiz)
    press(page, "Yes, I am done")
    page.get_by_label("Your name").fill(name)
    press(page, "Make the slip")
    return page.locator(".pw-slip-line").input_value()


def line_of(page: Page, quiz: QuizPage, folder: Path, name: str) -> str:
    """Another slip from the same page."""
    page.get_by_label("Your name").fill(name)
    press(page, "Make the slip")
    return page.locator(".pw-slip-line").input_value()


def test_the_slip(desktop_page: Page, quiz: QuizPage, tmp_path: Path) -> None:
    page = desktop_page
    line = make_slip(page, quiz, tmp_path, "  Ana | Núñez ")
    slip = page.locator(".pw-ask .pw-slip")
    expect(slip.get_by_role("heading", name="Completion slip")).to_be_focused()
    rows = dict(
        zip(slip.locator("dt").all_inner_texts(), slip.locator("dd").all_inner_texts(), strict=True)
    )
    today = date.fromisoformat(page.evaluate("new Date().toLocaleDateString('sv')"))
    told = f"{today.day}\u00a0{today:%b}\u00a0{today.year}"
    code = rows.pop("Check code")
    assert list(rows) == FIELDS
    assert rows["Name"] == "Ana Núñez"
    assert rows["Language used"] == "English"
    assert rows["Quiz"] == "Before the first day (before-the-first-day)"
    found = (rows["Score out of 100"], rows["Date"], rows["Topics"])
    assert found == ("100", told, "Counting buds")
    assert line.split(" | ")[-1] == code
    assert len(code) == 5
    expect(slip).to_contain_text("Trainer's signature:")
    expect(slip).to_contain_text("does not prove who took the quiz")
    expect(slip).to_contain_text("not proof of skill")
    assert "Ana" not in page.evaluate("JSON.stringify({...localStorage})")


def test_a_slip_needs_a_name(desktop_page: Page, quiz: QuizPage, tmp_path: Path) -> None:
    page = desktop_page
    page.goto(quiz.write(tmp_path))
    start(page)
    answer_all(page, quiz)
    press(page, "Yes, I am done")
    press(page, "Make the slip")
    expect(page.get_by_role("alert").filter(has_text="Write your name first.")).to_be_visible()
    expect(page.get_by_label("Your name")).to_be_focused()
    expect(page.locator(".pw-slip")).to_have_count(0)


def test_only_the_slip_is_printed_and_on_one_page(
    desktop_page: Page, quiz: QuizPage, tmp_path: Path
) -> None:
    page = desktop_page
    make_slip(page, quiz, tmp_path, "Ana")
    page.emulate_media(media="print")
    expect(page.locator("main")).to_be_hidden()
    expect(page.locator(".pw-slip-sheet .pw-slip")).to_be_visible()
    paper = page.pdf(format="Letter")
    assert paper.count(b"/Type /Page\n") + paper.count(b"/Type /Page ") == 1
    page.emulate_media(media="screen")
    expect(page.locator(".pw-slip-sheet")).to_be_hidden()
    press(page, "Start over")
    expect(page.locator(".pw-slip-sheet")).to_have_count(0)


def test_the_line_is_copied_or_marked(desktop_page: Page, quiz: QuizPage, tmp_path: Path) -> None:
    page = desktop_page
    line = make_slip(page, quiz, tmp_path, "Ana")
    page.evaluate(
        "Object.defineProperty(navigator, 'clipboard', {value: {writeText: text => {"
        " window.copied = text; return Promise.resolve() }}, configurable: true})"
    )
    press(page, "Copy the line")
    expect(page.get_by_text("The line is copied.")).to_be_visible()
    assert page.evaluate("copied") == line
    page.evaluate("Object.defineProperty(navigator, 'clipboard', {value: undefined})")
    press(page, "Copy the line")
    expect(page.get_by_text("The line is marked.")).to_be_visible()
    assert page.evaluate("getSelection().toString() || document.activeElement.value") == line


def test_pasted_slips_become_a_table(desktop_page: Page, quiz: QuizPage, tmp_path: Path) -> None:
    page = desktop_page
    names = ["Ana Núñez", "=HYPERLINK(A1)", 'Bo "B", Jr']
    lines = [make_slip(page, quiz, tmp_path, names[0])]
    lines += [line_of(page, quiz, tmp_path, name) for name in names[1:]]
    page.goto(write_crew_page(tmp_path, "en"))
    mistyped = lines[0].replace("Ana", "Eva")
    page.locator("textarea").first.fill("\n".join([*lines, "", mistyped, "hello", lines[0]]))
    press(page, "Add to the list")
    expect(page.locator(".pw-ask-said")).to_have_text("3 slips added. 1 was on the list already.")
    assert page.locator(".pw-crew-faults li").all_inner_texts() == [
        "Line 5: The check code does not fit. Look for a mistake in one of the fields.",
        "Line 6: This is not the text line of a slip.",
    ]
    # What was not read stays to be mended.
    expect(page.locator("textarea").first).to_have_value(f"{mistyped}\nhello")
    assert page.locator("tbody th").all_inner_texts() == names
    date = re.compile(r"^\d{1,2}\s[A-Z][a-z]{2}\s\d{4}$")
    expect(page.locator("tbody td:nth-child(5)")).to_have_text([date] * 3)
    page.reload()
    assert page.locator("tbody th").all_inner_texts() == names
    with page.expect_download() as waiting:
        press(page, "Save as a table (CSV)")
    assert waiting.value.suggested_filename.startswith("crew-list-")
    text = Path(waiting.value.path()).read_bytes().decode("utf-8-sig")
    rows = list(csv.reader(io.StringIO(text, newline="")))
    assert rows[0] == [*FIELDS, "Check code"]
    assert [row[0] for row in rows[1:]] == ["Ana Núñez", "'=HYPERLINK(A1)", 'Bo "B", Jr']
    assert {row[4] for row in rows[1:]} == {"100"}


def test_a_slip_is_typed_from_paper(desktop_page: Page, quiz: QuizPage, tmp_path: Path) -> None:
    page = desktop_page
    line = make_slip(page, quiz, tmp_path, "Ana Núñez")
    _, _, _, _, version, score, date, _, code = line.split(" | ")
    page.goto(write_crew_page(tmp_path, "en"))
    # Version and topics of the quizzes that the handbook has stand there already.
    expect(page.get_by_label("Version")).to_have_value(version)
    page.get_by_label("Name", exact=True).fill("ana nunez")
    page.get_by_label("Score out of 100").fill("90")
    page.get_by_label("Date").fill(date)
    page.get_by_label("Check code").fill(code)
    press(page, "Add this slip")
    expect(page.get_by_role("alert").filter(has_text="does not fit")).to_be_visible()
    expect(page.get_by_label("Check code")).to_be_focused()
    page.get_by_label("Score out of 100").fill("1000")
    press(page, "Add this slip")
    expect(page.get_by_label("Score out of 100")).to_be_focused()
    expect(page.get_by_label("Score out of 100")).to_have_attribute("aria-invalid", "true")
    page.get_by_label("Score out of 100").fill(score)
    page.get_by_label("Check code").fill(f" {code.lower()}")
    press(page, "Add this slip")
    expect(page.locator("tbody th")).to_have_text(["ana nunez"])
    expect(page.get_by_label("Name", exact=True)).to_be_focused()


def test_what_is_taken_off_can_come_back(
    desktop_page: Page, quiz: QuizPage, tmp_path: Path
) -> None:
    page = desktop_page
    lines = [make_slip(page, quiz, tmp_path, "Ana"), line_of(page, quiz, tmp_path, "Bo")]
    page.goto(write_crew_page(tmp_path, "en"))
    page.locator("textarea").first.fill("\n".join(lines))
    press(page, "Add to the list")
    page.get_by_role("button", name="Take off Ana").click()
    expect(page.locator("tbody th")).to_have_text(["Bo"])
    press(page, "Bring back what was taken off")
    expect(page.locator("tbody th")).to_have_text(["Ana", "Bo"])
    press(page, "Empty the list")
    expect(page.locator("tbody th")).to_have_count(0)
    expect(page.get_by_role("button", name="Save as a table (CSV)")).to_be_disabled()
    press(page, "Bring back what was taken off")
    assert [slip["name"] for slip in stored(page, "crew")] == ["Ana", "Bo"]


def test_the_crew_list_without_a_store(desktop_page: Page, quiz: QuizPage, tmp_path: Path) -> None:
    page = desktop_page
    line = make_slip(page, quiz, tmp_path, "Ana")
    page.add_init_script(
        "Object.defineProperty(window, 'localStorage',"
        " {get() { throw new DOMException('no', 'SecurityError'); }})"
    )
    page.goto(write_crew_page(tmp_path, "en"))
    expect(page.get_by_text("This browser does not save your work.")).to_be_visible()
    page.locator("textarea").first.fill(line)
    press(page, "Add to the list")
    expect(page.locator("tbody th")).to_have_text(["Ana"])


def test_a_spoiled_crew_list_is_read_as_far_as_it_goes(desktop_page: Page, tmp_path: Path) -> None:
    page = desktop_page
    good = dict.fromkeys(["name", "language", "quiz", "version", "score", "date", "topics"], "x")
    page.goto(write_crew_page(tmp_path, "en"))
    spoiled = json.dumps([good, None, 7, {"name": "y"}])
    page.evaluate("kept => localStorage.setItem('pencilwood:crew', kept)", spoiled)
    page.reload()
    expect(page.locator("tbody th")).to_have_text(["x"])


def test_two_open_crew_lists_add_to_one(desktop_page: Page, quiz: QuizPage, tmp_path: Path) -> None:
    page = desktop_page
    lines = [make_slip(page, quiz, tmp_path, "Ana"), line_of(page, quiz, tmp_path, "Bo")]
    address = write_crew_page(tmp_path, "en")
    other = page.context.new_page()
    for one, line in zip((page, other), lines, strict=True):
        one.goto(address)
        one.locator("textarea").first.fill(line)
        press(one, "Add to the list")
    expect(page.locator("tbody th")).to_have_text(["Ana", "Bo"])
    other.close()
