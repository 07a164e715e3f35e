"""Rows and cards of lists, in Chromium: one large link each, seen when a key reaches it."""

from pathlib import Path

import pytest
from playwright.sync_api import Page

from browser import unmet_by

pytestmark = [pytest.mark.browser, pytest.mark.slow]

LISTS = (
    ("rules", ".pw-row"),
    ("quizzes", ".pw-row"),
    ("teachers", ".pw-row"),
    ("vines", ".pw-card"),
)
TOUCH_PX = 44
WHERE_A_CORNER_LEADS = """row => {
    row.scrollIntoView({ block: "center" });
    const box = row.getBoundingClientRect();
    const [right, low] = [box.width - 4, box.height - 4];
    const corners = [[4, 4], [right, 4], [4, low], [right, low]];
    const hit = corners.map(([x, y]) => document.elementFromPoint(box.left + x, box.top + y));
    const link = row.querySelector("a");
    return [box.height, hit.every(one => one !== null && one.closest("a") === link)];
}"""


@pytest.mark.parametrize("folder", ["", "es/"])
@pytest.mark.parametrize(("name", "row"), LISTS)
def test_a_tap_anywhere_in_a_row_follows_its_one_link(
    phone_page: Page, built_site: Path, folder: str, name: str, row: str
) -> None:
    phone_page.goto((built_site / folder / f"{name}.html").as_uri())
    rows = phone_page.locator(row).all()
    assert len(rows) > 5
    for one in rows:
        height, leads = one.evaluate(WHERE_A_CORNER_LEADS)
        assert height >= TOUCH_PX
        assert leads, one.inner_text()


@pytest.mark.parametrize(("name", "row"), LISTS)
def test_a_key_that_reaches_a_row_shows_it(
    desktop_page: Page, built_site: Path, name: str, row: str
) -> None:
    desktop_page.goto((built_site / f"{name}.html").as_uri())
    link = desktop_page.locator(f"{row} a").first
    # A key, not a script, so that the browser takes it for one who sees where the focus is.
    link.evaluate("link => link.focus()")
    desktop_page.keyboard.press("Tab")
    desktop_page.keyboard.press("Shift+Tab")
    shown = link.evaluate(
        "link => { const own = getComputedStyle(link, '::after');"
        " return [link === document.activeElement, own.outlineStyle, own.outlineColor]; }"
    )
    focus = link.evaluate("link => getComputedStyle(link).getPropertyValue('--pwh-focus')")
    assert shown[:2] == [True, "solid"]
    red, green, blue = (int(focus.strip()[at : at + 2], 16) for at in (1, 3, 5))
    assert shown[2] == f"rgb({red}, {green}, {blue})"


@pytest.mark.parametrize("name", ["rules", "quizzes", "safety", "teachers", "vines"])
def test_the_pages_fit_a_phone_and_pass_axe(
    phone_page: Page, built_site: Path, project: Path, npm: str, name: str
) -> None:
    phone_page.goto((built_site / f"{name}.html").as_uri())
    assert phone_page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    assert unmet_by(phone_page, project, "article") == []


def test_safety_notes_stand_side_by_side_on_a_wide_screen(
    desktop_page: Page, built_site: Path
) -> None:
    desktop_page.goto((built_site / "safety.html").as_uri())
    lefts = desktop_page.locator(".pw-note").evaluate_all(
        "notes => notes.map(note => Math.round(note.getBoundingClientRect().left))"
    )
    assert len(set(lefts)) == 2


def test_a_sign_and_a_picture_are_dark_on_light_and_light_on_dark(
    desktop_page: Page, built_site: Path
) -> None:
    def sums(thing: str) -> tuple[int, int]:
        """How light a pen line is on a light page, and on a dark one."""
        found = []
        for scheme in ("default", "slate"):
            colour = desktop_page.locator(thing).first.evaluate(
                "(one, scheme) => { document.body.dataset.mdColorScheme = scheme;"
                " return getComputedStyle(one).stroke.match(/\\d+/g).slice(0, 3).map(Number); }",
                scheme,
            )
            found.append(sum(colour))
        return found[0], found[1]

    for name, thing in (("safety", ".pw-sign-thick"), ("rules", ".pw-fault-ring")):
        desktop_page.goto((built_site / f"{name}.html").as_uri())
        light, dark = sums(thing)
        assert light < 300 < dark
