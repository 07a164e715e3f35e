"""Practice without end, on the built handbook opened from its folder."""

import json
import re
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from exercise_page import choose, settle, stored
from quiz_page import write_page
from quiz_walk import press

pytestmark = pytest.mark.browser

TODAY = datetime(2026, 1, 12, 9)
LEVELS = "['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']"


def open_practice(page: Page, site: Path, day: datetime = TODAY, language: str = "en") -> None:
    """Open the practice page on a day of our choice."""
    page.clock.set_fixed_time(day)
    folder = site if language == "en" else site / language
    page.goto((folder / "practice.html").as_uri())
    expect(page.locator(".pw-exercise.pw-live")).to_be_visible()


def title_of(name: str) -> str:
    """What the page calls a practice vine: `hard-007` is "Practice vine 7: Hard"."""
    level, number = name.split("-")
    words = {"easy": "Easy", "middling": "Medium", "hard": "Hard"}
    return f"Practice vine {int(number)}: {words[level]}"


def vine(page: Page) -> str:
    """The name of the vine in hand."""
    return str(stored(page, "practice:now")["name"])


def listed(page: Page) -> dict[str, Any]:
    """All practice vines of the page by name."""
    data = json.loads(page.locator("script.pw-practice-data").text_content() or "")
    return {one["name"]: one for one in data["vines"]}


def leave_everything(page: Page) -> None:
    """Go through the passes without a cut."""
    for _ in range(3):
        page.locator(".pw-step .pw-main:visible").first.click()
    expect(page.locator(".pw-exercise .pw-result")).to_be_visible()


def weak(page: Page) -> dict[str, Any]:
    """Rules that have to come back."""
    kept = stored(page, "rules")["weak"]
    assert isinstance(kept, dict)
    return kept


def test_a_broken_rule_comes_back_the_next_day(desktop_page: Page, built_site: Path) -> None:
    page = desktop_page
    open_practice(page, built_site)
    expect(page.get_by_text("You have no rule to repeat today.")).to_be_visible()
    leave_everything(page)
    broken = set(weak(page))
    assert "too-many-buds" in broken
    assert {one["step"] for one in weak(page).values()} == {0}
    expect(page.get_by_text("more rules come back on other days.")).to_be_visible()
    open_practice(page, built_site, TODAY + timedelta(days=1))
    due = page.locator(".pw-ask-links a")
    assert due.count() == len(broken)
    for link in due.all():
        href = link.get_attribute("href") or ""
        assert (built_site / href.split("#")[0]).is_file(), href
    press(page, "Next vine")
    assert set(listed(page)[vine(page)]["teaches"]) & broken


def test_only_the_first_try_at_a_vine_counts(desktop_page: Page, built_site: Path) -> None:
    page = desktop_page
    open_practice(page, built_site)
    leave_everything(page)
    before = weak(page)
    page.reload()
    expect(page.locator(".pw-exercise .pw-result")).to_be_visible()
    page.get_by_role("button", name="Try again").first.click()
    leave_everything(page)
    assert weak(page) == before


def test_the_vine_in_hand_is_taken_up_again(desktop_page: Page, built_site: Path) -> None:
    page = desktop_page
    open_practice(page, built_site)
    choose(page)
    press(page, "Shorten every long cane to 5 buds")
    settle(page)
    name, buds = vine(page), page.locator(".pw-measures dd").first.inner_text()
    page.reload()
    expect(page.get_by_role("heading", name=title_of(name))).to_be_visible()
    expect(page.locator(".pw-measures dd").first).to_have_text(buds)
    press(page, "Next vine")
    expect(page.get_by_role("heading", name=title_of(vine(page)))).to_be_focused()
    assert vine(page) != name
    expect(page.get_by_role("button", name="Undo", exact=True)).to_be_disabled()


def test_a_level_is_kept(desktop_page: Page, built_site: Path) -> None:
    page = desktop_page
    open_practice(page, built_site)
    page.get_by_label("Level").select_option(label="Hard")
    for _ in range(3):
        press(page, "Next vine")
        expect(page.get_by_role("heading", name=re.compile(": Hard$"))).to_be_visible()
        assert vine(page).startswith("hard-")
        expect(page.get_by_role("heading", name=title_of(vine(page)))).to_be_visible()
    page.reload()
    expect(page.get_by_label("Level")).to_have_value("hard")


def test_a_chosen_level_comes_at_once_where_nothing_is_cut_yet(
    phone_page: Page, built_site: Path
) -> None:
    page = phone_page
    open_practice(page, built_site)
    assert vine(page).startswith("easy-"), "a beginner's first vine"
    level, drawing = page.get_by_label("Level"), page.locator(".pw-glass svg:visible")
    expect(level).to_be_in_viewport(ratio=1)
    expect(drawing).to_be_in_viewport(ratio=1)
    level.select_option(label="Hard")
    expect(page.get_by_role("heading", name=re.compile(": Hard$"))).to_be_visible()
    first = vine(page)
    level.select_option(label="Mixed")
    level.select_option(label="Hard")
    assert vine(page) == first, "a vine of that level stays"
    choose(page)
    press(page, "Shorten every long cane to 5 buds")
    level.select_option(label="Easy")
    expect(page.get_by_text("This level holds from the next vine on.")).to_be_visible()
    assert vine(page) == first
    press(page, "Next vine")
    expect(page.get_by_role("heading", name=re.compile(": Easy$"))).to_be_visible()


def test_the_level_stands_clear_of_what_is_around_it(desktop_page: Page, built_site: Path) -> None:
    page = desktop_page
    for width in (390, 820, 1280):
        page.set_viewport_size({"width": width, "height": 844})
        open_practice(page, built_site, language="es")
        level = page.get_by_label("Nivel").bounding_box()
        above = page.locator(".pw-practice-lead").bounding_box()
        below = page.locator(".pw-step .pw-main:visible").first.bounding_box()
        assert level is not None
        assert above is not None
        assert below is not None
        assert level["y"] >= above["y"] + above["height"] + 4
        assert level["y"] + level["height"] <= below["y"] - 8


def test_paper_has_the_goal_and_nothing_to_choose(desktop_page: Page, built_site: Path) -> None:
    page = desktop_page
    open_practice(page, built_site)
    goal = page.locator(".pw-on-paper", has_text="Goal for the vine:")
    expect(goal).to_be_hidden()
    page.emulate_media(media="print")
    expect(goal).to_be_visible()
    expect(page.get_by_label("Level")).to_be_hidden()


def test_vines_do_not_come_twice_in_a_row_and_are_mixed(
    desktop_page: Page, built_site: Path
) -> None:
    page = desktop_page
    open_practice(page, built_site)
    seen = []
    for _ in range(6):
        seen.append(vine(page))
        leave_everything(page)
        press(page, "Next vine")
        expect(page.locator(".pw-exercise .pw-prune")).to_be_visible()
    assert len(set(seen)) == 6


def test_a_vine_that_does_not_come(desktop_page: Page, built_site: Path) -> None:
    page = desktop_page
    open_practice(page, built_site)

    page.evaluate(
        "() => { const add = HTMLElement.prototype.append; document.head.append = script => {"
        " script.src = script.src.replace('/practice/', '/nowhere/');"
        " add.call(document.head, script); } }"
    )
    name = vine(page)
    press(page, "Next vine")
    expect(page.get_by_text("This vine could not be opened.")).to_be_visible()
    page.evaluate("delete document.head.append")
    press(page, "Next vine")
    expect(page.locator(".pw-exercise .pw-prune")).to_be_visible()
    assert vine(page) != name


def test_practice_without_a_store(desktop_page: Page, built_site: Path, tmp_path: Path) -> None:
    page = desktop_page
    # On a page of its own: a theme may fail without a store, and that's no matter of ours.
    html = (built_site / "practice.html").read_text("utf-8")
    found = re.search(
        r'<script type="application/json" class="pw-practice-data">.*?</script>', html
    )
    assert found is not None
    folder = (built_site / "assets" / "pencilwood" / "practice").as_uri()
    script = found[0].replace('"assets/pencilwood/practice/"', f'"{folder}/"')
    assert folder in script
    inside = f"<div data-pencilwood-practice>{script}</div>"
    address = write_page(tmp_path / "practice.html", "en", inside, dark=False)
    page.add_init_script(
        "Object.defineProperty(window, 'localStorage',"
        " {get() { throw new DOMException('no', 'SecurityError'); }})"
    )
    page.goto(address)
    expect(page.get_by_text("This browser does not save your work.").first).to_be_visible()
    leave_everything(page)
    press(page, "Next vine")
    expect(page.locator(".pw-exercise .pw-prune")).to_be_visible()


@pytest.mark.parametrize("language", ["en", "es"])
def test_axe_finds_nothing_in_practice(
    phone_page: Page, built_site: Path, project: Path, npm: str, language: str
) -> None:
    page = phone_page
    open_practice(page, built_site, language=language)
    page.evaluate((project / "node_modules" / "axe-core" / "axe.min.js").read_text("utf-8"))
    ask = f"axe.run('[data-pencilwood-practice]', {{runOnly: {LEVELS}, preload: false}})"
    for _ in range(2):
        # Where the page was scrolled to, its bar may lie over a part of what is under it.
        page.evaluate("scrollTo(0, 0)")
        found = page.evaluate(ask)["violations"]
        assert [(one["id"], [n["html"] for n in one["nodes"]]) for one in found] == []
        if page.locator(".pw-prune").is_visible():
            leave_everything(page)


def test_practice_fits_the_narrowest_phone(narrow: Page, built_site: Path) -> None:
    open_practice(narrow, built_site, language="es")
    assert narrow.evaluate("document.documentElement.scrollWidth") <= 320
    leave_everything(narrow)
    assert narrow.evaluate("document.documentElement.scrollWidth") <= 320


NAMES = """() => [...document.querySelectorAll(".pw-stage-whole .pw-place-name")]
  .map((one) => [one.textContent, getComputedStyle(one).display === "none"])"""


def test_every_place_of_a_vine_has_its_name(phone_page: Page, built_site: Path) -> None:
    """On a small picture names go into rows; only the one that a mark tells is left out."""
    open_practice(phone_page, built_site)
    for _ in range(8):
        marks = phone_page.locator(".pw-stage-whole .pw-marks > *")
        expect(marks.first).to_be_visible()
        marked = set(marks.all_inner_texts())
        names = phone_page.evaluate(NAMES)
        assert len(names) > 5
        assert {name for name, is_hidden in names if is_hidden} <= marked, vine(phone_page)
        press(phone_page, "Next vine")
