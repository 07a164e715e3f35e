"""Quiz pages by keyboard, read aloud, enlarged, on the narrowest phone and in the dark."""

import re
from collections.abc import Callable, Iterator
from itertools import pairwise
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from browser import watched_page
from quiz_page import QuizPage, write_crew_page
from quiz_walk import choice, press, start

pytestmark = pytest.mark.browser

CLAIMED: set[str] = set()
LEVELS = "['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']"
SPOKEN = (
    "[...document.querySelectorAll('.pw-quiz-built *:not(script)')].flatMap(one =>"
    " [...one.childNodes].filter(node => node.nodeType === 3)).map(node => node.data).join(' ')"
)
WAYS = {"en": ("Practise", "Yes, I am done"), "es": ("Practicar", "Sí, ya terminé")}


def proves(row: str) -> Callable[[Callable[..., None]], Callable[..., None]]:
    """Claim a row of the keyboard table in runner.mjs."""
    CLAIMED.add(row)
    return lambda test: test


def test_every_row_of_the_keyboard_table_is_proved(project: Path) -> None:
    text = (project / "site_assets" / "js" / "quiz" / "runner.mjs").read_text("utf-8")
    assert set(re.findall(r"\(test: ([\w-]+)\)", text)) == CLAIMED


def scenes(page: Page, language: str) -> Iterator[str]:
    """Every scene of a quiz in practice, wrong answers and what is said about them included."""
    way, done = WAYS[language]
    main = page.locator(".pw-quiz-built .pw-main:visible")
    yield "start"
    press(page, way)
    for number in range(1, 5):
        if page.locator(".pw-ask-choices").count():
            choice(page, 0)
        elif page.locator(".pw-ask-part").count():
            page.locator(".pw-ask-part select").select_option("L6m")
        else:
            page.locator(".pw-ask-order button").first.focus()
            page.locator(".pw-ask-order > li").nth(1).locator("button").first.click()
        yield f"question {number}"
        main.last.click()
        yield f"feedback {number}"
        main.last.click()
    yield "vine"
    page.locator(".pw-ask-nav .pw-main").click()
    yield "hand in"
    press(page, done)
    yield "result"


def tab_to(page: Page, name: str) -> None:
    """Press Tab until the control with this text has the focus."""
    for _ in range(40):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement.textContent") == name:
            return
    raise AssertionError(f"Tab doesn't reach {name!r}")


@proves("quiz-tab")
@proves("quiz-up-down")
def test_choices_by_keyboard_alone(desktop_page: Page, quiz: QuizPage, tmp_path: Path) -> None:
    page = desktop_page
    page.goto(quiz.write(tmp_path))
    tab_to(page, "Take the test")
    page.keyboard.press("Enter")
    expect(page.locator(".pw-ask h2")).to_be_focused()
    for _ in range(6):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement.type") == "radio":
            break
    page.keyboard.press("Space")
    inputs = page.locator(".pw-ask-choices input")
    expect(inputs.nth(0)).to_be_checked()
    page.keyboard.press("ArrowDown")
    expect(inputs.nth(1)).to_be_checked()
    page.keyboard.press("ArrowUp")
    expect(inputs.nth(0)).to_be_checked()
    tab_to(page, "Next question")
    page.keyboard.press("Space")
    expect(page.locator(".pw-ask h2")).to_have_text("2 of 5: Find the part")


@proves("quiz-letters")
@proves("quiz-enter-space")
def test_pieces_and_steps_by_keyboard_alone(
    desktop_page: Page, quiz: QuizPage, tmp_path: Path
) -> None:
    page = desktop_page
    page.goto(quiz.write(tmp_path))
    start(page)
    press(page, "Next question")
    page.locator(".pw-ask-part select").focus()
    page.keyboard.type("Old wood R2m")
    expect(page.locator(".pw-ask-part select")).to_have_value("R2m")
    tab_to(page, "Next question")
    page.keyboard.press("Enter")
    tab_to(page, "Down Fine pass: cut each cane that stays to a short spur")
    page.keyboard.press("Enter")
    page.keyboard.press("Space")
    expect(page.locator(".pw-ask-order > li").last).to_contain_text("Fine pass")
    tab_to(page, "Next question")
    page.keyboard.press("Enter")
    expect(page.locator(".pw-ask h2")).to_be_focused()


@pytest.mark.parametrize("language", ["en", "es"])
@pytest.mark.parametrize("dark", [False, True])
def test_axe_finds_nothing(
    phone_page: Page, project: Path, tmp_path: Path, npm: str, language: str, dark: bool
) -> None:
    page = phone_page
    page.goto(QuizPage(language).write(tmp_path, dark=dark))
    if dark:
        page.evaluate("document.body.style.background = '#1e2129'")
    page.evaluate((project / "node_modules" / "axe-core" / "axe.min.js").read_text("utf-8"))
    seen = 0
    for scene in scenes(page, language):
        ask = f"axe.run('.pw-quiz', {{runOnly: {LEVELS}, preload: false}})"
        found = page.evaluate(ask)["violations"]
        told = [(one["id"], [n["html"] for n in one["nodes"]]) for one in found]
        assert told == [], scene
        seen += 1
    assert seen == 12


@pytest.mark.parametrize("dark", [False, True])
def test_axe_finds_nothing_in_the_crew_list(
    phone_page: Page, project: Path, tmp_path: Path, npm: str, dark: bool
) -> None:
    page = phone_page
    page.goto(write_crew_page(tmp_path, "es", dark=dark))
    if dark:
        page.evaluate("document.body.style.background = '#1e2129'")
    page.evaluate((project / "node_modules" / "axe-core" / "axe.min.js").read_text("utf-8"))
    page.locator("textarea").first.fill("nada")
    press(page, "Agregar a la lista")
    found = page.evaluate(f"axe.run('.pw-quiz', {{runOnly: {LEVELS}, preload: false}})")
    assert [(one["id"], [n["html"] for n in one["nodes"]]) for one in found["violations"]] == []


@pytest.mark.parametrize("zoom", ["100%", "200%"])
def test_narrow_pages_reflow_and_targets_are_large(narrow: Page, tmp_path: Path, zoom: str) -> None:
    page = narrow
    page.goto(QuizPage("es").write(tmp_path))
    page.evaluate("size => { document.documentElement.style.fontSize = size }", zoom)
    for scene in scenes(page, "es"):
        assert page.evaluate("document.documentElement.scrollWidth") <= 320, scene
        small = page.locator(".pw-quiz-built :is(button, select, input, summary, textarea)")
        boxes = small.evaluate_all(
            "all => all.filter(one => one.checkVisibility()).map(one => "
            "[one.outerHTML, one.getBoundingClientRect()]).filter(([_, box]) => "
            "box.width < 24 || box.height < 24).map(([html]) => html)"
        )
        assert boxes == [], scene
        cut = page.locator(".pw-quiz-built :is(button, legend, h2, h3, label)").evaluate_all(
            "all => all.filter(one => one.checkVisibility() && !one.closest('.pw-unseen') && "
            "one.scrollWidth > one.clientWidth + 1 && getComputedStyle(one).overflow !== 'visible')"
            ".map(one => one.outerHTML)"
        )
        assert cut == [], scene
    page.goto(write_crew_page(tmp_path, "es"))
    page.evaluate("size => { document.documentElement.style.fontSize = size }", zoom)
    assert page.evaluate("document.documentElement.scrollWidth") <= 320


def test_reduced_motion(browser: Browser, quiz: QuizPage, tmp_path: Path) -> None:
    visit = watched_page(browser, reduced_motion="reduce")
    page = next(visit)
    page.goto(quiz.write(tmp_path))
    start(page, "Practise")
    choice(page, 0)
    press(page, "Check my answer")
    moving = page.evaluate(
        "[...document.querySelectorAll('.pw-quiz *')].filter(one => {"
        " const style = getComputedStyle(one);"
        " return style.transitionDuration.split(', ').some(t => t !== '0s')"
        " || style.animationName !== 'none' || style.scrollBehavior === 'smooth' }).length"
    )
    assert moving == 0
    assert page.evaluate("document.getAnimations().length") == 0
    assert list(visit) == []


def test_what_a_screen_reader_hears(desktop_page: Page, quiz: QuizPage, tmp_path: Path) -> None:
    page = desktop_page
    page.goto(quiz.write(tmp_path))
    start(page)
    expect(page.get_by_role("progressbar", name="Question 1 of 5")).to_be_visible()
    group = page.get_by_role("group", name="How many counted buds does cane L6a have?")
    expect(group.get_by_role("radio", name="10", exact=True)).to_be_visible()
    expect(page.get_by_role("img", name="A vine")).to_be_visible()
    press(page, "Next question")
    expect(page.get_by_role("combobox", name="Part")).to_be_visible()
    status = page.get_by_role("status").filter(has_text="You picked")
    page.get_by_role("combobox", name="Part").select_option("L6a")
    expect(status).to_have_text("You picked: Cane L6a")
    press(page, "Next question")
    expect(page.get_by_role("listitem")).to_have_count(3)
    press(page, "Next question")
    expect(page.get_by_text("Must know")).to_be_visible()


@pytest.mark.parametrize("language", ["en", "es"])
def test_every_word_is_there_and_every_id_is_its_own(
    phone_page: Page, tmp_path: Path, language: str
) -> None:
    page = phone_page
    page.goto(QuizPage(language).write(tmp_path))
    for scene in scenes(page, language):
        text = page.evaluate(SPOKEN)
        assert "quiz." not in text, scene
        assert re.findall(r"\{\w+\}", text) == [], scene
        ids = page.evaluate("[...document.querySelectorAll('[id]')].map(one => one.id)")
        assert len(ids) == len(set(ids)), scene
        levels = page.locator(":is(h1, h2, h3, h4):visible").evaluate_all(
            "all => all.map(one => Number(one.tagName[1]))"
        )
        steps = pairwise(levels)
        assert all(after - before <= 1 for before, after in steps), scene
    expect(page.locator(".pw-fallback").first).to_be_hidden()
