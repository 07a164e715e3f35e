"""The exercise by keyboard, read aloud, enlarged, on the narrowest phone and in the dark."""

import re
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from exercise_page import ExercisePage, cuts_kept, pick, press, stored

pytestmark = pytest.mark.browser

CLAIMED: set[str] = set()


def proves(row: str) -> Callable[[Callable[..., None]], Callable[..., None]]:
    """Claim a row of the keyboard table in exercise.mjs."""
    CLAIMED.add(row)
    return lambda test: test


def test_every_row_of_the_keyboard_table_is_proved(project: Path) -> None:
    text = (project / "site_assets" / "js" / "exercise.mjs").read_text("utf-8")
    assert set(re.findall(r"\(test: ([\w-]+)\)", text)) == CLAIMED


@proves("tab")
def test_tab_reaches_everything(desktop_page: Page, tidy: ExercisePage, tmp_path: Path) -> None:
    desktop_page.goto(tidy.write(tmp_path))
    pick(desktop_page, "L6a", "L6")
    desktop_page.evaluate("document.activeElement.blur()")
    reached = []
    for _ in range(60):
        desktop_page.keyboard.press("Tab")
        reached.append(
            desktop_page.evaluate(
                "[document.activeElement.className, document.activeElement.innerText,"
                " document.activeElement.tagName].join(' ').replace(/\\s+/g, ' ').trim()"
            )
        )
    for wanted in (
        *("Next: Thinning-out pass", "Whole vine", "Look closer", "pw-stage pw-stage-near"),
        *("L6b", "Cut off here", "Tool tap to choose", "Where to cut tap to choose"),
        *("Undo", "Measures", "See the uncut vine", "Start again", "SELECT"),
    ):
        assert any(wanted in one for one in reached), (wanted, reached)


@proves("left-right")
def test_arrows_change_the_position(desktop_page: Page, tidy: ExercisePage, tmp_path: Path) -> None:
    desktop_page.goto(tidy.write(tmp_path))
    press(desktop_page, "Close-up")
    desktop_page.locator(".pw-stage-near").focus()
    title = desktop_page.locator(".pw-position-title")
    for key, wanted in [("ArrowLeft", "L6"), ("ArrowRight", "L5"), ("ArrowRight", "L4")]:
        desktop_page.keyboard.press(key)
        expect(title).to_contain_text(f"Place {wanted} ")
    expect(desktop_page.locator(".pw-stage-near")).to_have_attribute(
        "aria-label", re.compile("place L4, 3 of 12")
    )


@proves("home-end")
def test_home_and_end(desktop_page: Page, tidy: ExercisePage, tmp_path: Path) -> None:
    desktop_page.goto(tidy.write(tmp_path))
    press(desktop_page, "Close-up")
    desktop_page.locator(".pw-stage-near").focus()
    title = desktop_page.locator(".pw-position-title")
    for key, wanted in [("End", "R6"), ("ArrowRight", "R6"), ("Home", "L6")]:
        desktop_page.keyboard.press(key)
        expect(title).to_contain_text(f"Place {wanted} ")


@proves("up-down")
def test_arrows_change_the_piece(desktop_page: Page, tidy: ExercisePage, tmp_path: Path) -> None:
    desktop_page.goto(tidy.write(tmp_path))
    press(desktop_page, "Close-up")
    pieces = desktop_page.locator(".pw-pieces button").evaluate_all(
        "all => all.map((one) => one.dataset.piece)"
    )
    pick(desktop_page, pieces[0])
    desktop_page.locator(".pw-stage-near").focus()
    piece = desktop_page.locator(".pw-piece")
    rings = desktop_page.locator(".pw-stage-near .pw-offered")
    for name in (*pieces[1:], pieces[-1]):
        desktop_page.keyboard.press("ArrowDown")
        expect(piece).to_have_attribute("data-piece", name)
        assert set(rings.evaluate_all("all => all.map((one) => one.dataset.cut)")) == {name}
    desktop_page.keyboard.press("ArrowUp")
    expect(piece).to_have_attribute("data-piece", pieces[-2])
    expect(desktop_page.locator(".pw-stage-near")).to_be_focused()


@proves("escape")
def test_escape_leaves_the_question(desktop_page: Page, tidy: ExercisePage, tmp_path: Path) -> None:
    page = desktop_page
    page.goto(tidy.write(tmp_path))
    pick(page, "L6a", "L6")
    page.get_by_role("button", name="Leave 2 buds L6a").press("Enter")
    expect(page.get_by_role("heading", name="Which tool do you hold?")).to_be_focused()
    page.keyboard.press("Escape")
    expect(page.locator(".pw-how-question")).to_be_hidden()
    expect(page.get_by_role("button", name="Leave 2 buds L6a")).to_be_focused()
    assert cuts_kept(page) == []


@proves("enter-space")
def test_a_cut_by_keyboard_alone_keeps_the_place(
    desktop_page: Page, tidy: ExercisePage, tmp_path: Path
) -> None:
    page = desktop_page
    page.goto(tidy.write(tmp_path))
    page.get_by_role("button", name="Close-up").press("Enter")
    page.locator(".pw-pieces [data-piece=L6a]").press("Space")
    page.get_by_role("button", name="Leave 2 buds L6a").focus()
    page.keyboard.press("Enter")
    # The cut waits for both answers, which the keyboard is led to.
    for key in ("Space", "Enter"):
        page.keyboard.press("Tab")
        page.keyboard.press(key)
    made = stored(page, "work:tidy")["work"]["history"]["steps"][0]["cuts"][0]
    assert (made["tool"], made["stub"]) == ("shears", "close")
    assert cuts_kept(page) == [("L6a", 2)]
    expect(page.get_by_role("heading", name="L6a")).to_be_focused()
    page.keyboard.press("Tab")
    page.keyboard.press("Space")
    assert cuts_kept(page) == [("L6a", 2), ("L6a", None)]
    page.locator(".pw-measures summary").focus()
    page.keyboard.press("Enter")
    expect(page.locator(".pw-measures dl")).to_be_hidden()


@pytest.mark.parametrize("language", ["en", "es"])
@pytest.mark.parametrize("dark", [False, True])
def test_axe_finds_nothing(
    phone_page: Page, project: Path, tmp_path: Path, npm: str, language: str, dark: bool
) -> None:
    page = phone_page
    page.goto(ExercisePage("climbing", language).write(tmp_path, dark=dark))
    if dark:
        page.evaluate("document.body.style.background = '#1e2129'")
    axe = (project / "node_modules" / "axe-core" / "axe.min.js").read_text("utf-8")
    page.evaluate(axe)
    levels = "['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']"
    ask = f"axe.run('.pw-exercise', {{runOnly: {levels}, preload: false}})"
    for _ in range(4):
        found = page.evaluate(ask)["violations"]
        assert [(one["id"], [n["html"] for n in one["nodes"]]) for one in found] == []
        button = page.locator(".pw-step .pw-main:visible")
        if button.count():
            button.click()
    expect(page.locator(".pw-result")).to_be_visible()


@pytest.mark.parametrize("zoom", ["100%", "200%"])
def test_narrow_pages_reflow_and_targets_are_large(narrow: Page, tmp_path: Path, zoom: str) -> None:
    narrow.goto(ExercisePage("climbing", "es").write(tmp_path))
    narrow.evaluate("size => { document.documentElement.style.fontSize = size }", zoom)
    targets = "button, select, input, summary"
    for _ in range(4):
        assert narrow.evaluate("document.documentElement.scrollWidth") <= 320
        small = (
            narrow.locator(".pw-built")
            .locator(targets)
            .evaluate_all(
                "all => all.filter(one => one.checkVisibility()).map(one => "
                "[one.outerHTML, one.getBoundingClientRect()]).filter(([_, box]) => "
                "box.width < 24 || box.height < 24).map(([html]) => html)"
            )
        )
        assert small == []
        button = narrow.locator(".pw-step .pw-main:visible")
        if button.count():
            button.click()
    expect(narrow.locator(".pw-result")).to_be_visible()


@pytest.mark.parametrize("language", ["en", "es"])
def test_every_word_is_there_and_every_id_is_its_own(
    phone_page: Page, tmp_path: Path, language: str
) -> None:
    page = phone_page
    page.goto(ExercisePage("climbing", language).write(tmp_path))
    for _ in range(3):
        page.locator(".pw-step .pw-main:visible").click()
    text = page.evaluate("document.querySelector('.pw-built').textContent")
    assert "exercise." not in text
    assert re.findall(r"\{\w+\}", text) == []
    ids = page.evaluate("[...document.querySelectorAll('[id]')].map(one => one.id)")
    assert len(ids) == len(set(ids))
    expect(page.locator(".pw-fallback")).to_be_hidden()
