"""Pruning a vine in Chromium, from the first tap to the result."""

import re
from pathlib import Path

import pytest
from playwright.sync_api import Locator, Page, expect

from exercise_page import ExercisePage, choose, cuts_kept, pick, press, said

pytestmark = pytest.mark.browser


def rings(page: Page) -> Locator:
    return page.locator(".pw-stage-near .pw-offered")


def middle(ring: Locator) -> tuple[float, float]:
    ring.scroll_into_view_if_needed()
    box = ring.bounding_box()
    assert box is not None
    return box["x"] + box["width"] / 2, box["y"] + box["height"] / 2


def on_the_glass(point: Locator) -> tuple[float, float]:
    """Where a cut point lies on the screen, shown or not."""
    x, y = point.evaluate(
        """one => { const to = one.ownerSVGElement.getScreenCTM();
        return [one.cx.baseVal.value * to.a + to.e, one.cy.baseVal.value * to.d + to.f]; }"""
    )
    return float(x), float(y)


def page_near(page: Page) -> Locator:
    return page.locator(".pw-stage-near")


def is_in_window(page: Page, ring: Locator) -> bool:
    """Whether the close-up shows the ring; it may lie outside what the window shows."""
    window, box = page.locator(".pw-stage-near").bounding_box(), ring.bounding_box()
    assert window is not None
    assert box is not None
    return window["y"] <= box["y"] and box["y"] + box["height"] <= window["y"] + window["height"]


@pytest.mark.parametrize(("closer", "fewest"), [(False, 18), (True, 7)])
def test_every_ring_can_be_hit_on_the_narrowest_phone(
    narrow: Page, tidy: ExercisePage, tmp_path: Path, closer: bool, fewest: int
) -> None:
    narrow.goto(tidy.write(tmp_path))
    choose(narrow)
    pick(narrow, "L6a", "L6")
    if closer:
        press(narrow, "Look closer")
    hit = 0
    for piece in narrow.locator(".pw-pieces button").all():
        name = piece.get_attribute("data-piece") or ""
        pick(narrow, name)
        offered = rings(narrow)
        assert set(offered.evaluate_all("all => all.map((one) => one.dataset.cut)")) == {name}
        seen = [ring for ring in offered.all() if is_in_window(narrow, ring)]
        wanted = [ring.get_attribute("data-buds") for ring in seen]
        for ring, buds in zip(seen, wanted, strict=True):
            narrow.touchscreen.tap(*middle(ring))
            assert cuts_kept(narrow) == [(name, None if buds is None else int(buds))]
            press(narrow, "Undo")
            assert cuts_kept(narrow) == []
            hit += 1
    assert hit >= fewest


def test_a_tap_on_other_wood_chooses_it_and_cuts_nothing(
    phone_page: Page, tidy: ExercisePage, tmp_path: Path
) -> None:
    page = phone_page
    page.goto(tidy.write(tmp_path))
    choose(page)
    for name in ("L6a", "L6b"):
        pick(page, name, "L6")
    # No ring shows there now, so the place is asked of the drawing.
    at = on_the_glass(page.locator('.pw-stage-near [data-cut="L6a"][data-buds]').nth(-2))
    page.touchscreen.tap(*at)
    expect(page.locator(".pw-piece")).to_have_attribute("data-piece", "L6a")
    assert cuts_kept(page) == []


def test_a_tap_beside_the_wood_cuts_nothing_and_says_so(
    narrow: Page, tidy: ExercisePage, tmp_path: Path
) -> None:
    narrow.goto(tidy.write(tmp_path))
    choose(narrow)
    pick(narrow, "L6a", "L6")
    near = narrow.locator(".pw-stage-near")
    near.scroll_into_view_if_needed()
    near.tap(position={"x": 4, "y": 4})
    assert said(narrow) == "There is no wood here. Tap a ring to cut, or wood to choose it."
    assert cuts_kept(narrow) == []


def test_a_finger_that_slides_away_cuts_nothing(
    desktop_page: Page, tidy: ExercisePage, tmp_path: Path
) -> None:
    desktop_page.goto(tidy.write(tmp_path))
    choose(desktop_page)
    pick(desktop_page, "L6a", "L6")
    x, y = middle(rings(desktop_page).first)
    desktop_page.mouse.move(x, y)
    desktop_page.mouse.down()
    desktop_page.mouse.move(x, y - 40)
    desktop_page.mouse.move(x, y - 15)
    desktop_page.mouse.up()
    assert cuts_kept(desktop_page) == []
    desktop_page.mouse.click(x, y)
    assert len(cuts_kept(desktop_page)) == 1


def test_a_tap_on_the_whole_vine_chooses_the_position(
    phone_page: Page, tidy: ExercisePage, tmp_path: Path
) -> None:
    phone_page.goto(tidy.write(tmp_path))
    whole = phone_page.locator(".pw-stage-whole")
    heading = phone_page.locator(".pw-position-title")
    before = heading.inner_text()
    expect(page_near(phone_page)).to_be_hidden()
    phone_page.touchscreen.tap(*on_the_glass(whole.locator('[data-cut="R5a"][data-buds]').nth(3)))
    assert before.startswith("Place L6")
    expect(heading).to_have_text(re.compile(r"^Place R5 "))
    expect(page_near(phone_page)).to_be_visible()
    expect(phone_page.locator(".pw-piece")).to_have_attribute("data-piece", "R5a")
    press(phone_page, "Whole vine")
    expect(whole).to_be_visible()
    expect(page_near(phone_page)).to_be_hidden()


def test_history_goes_back_and_forth(
    desktop_page: Page, tidy: ExercisePage, tmp_path: Path
) -> None:
    page = desktop_page
    page.goto(tidy.write(tmp_path))
    choose(page)
    press(page, "Shorten every long cane to 5 buds")
    assert said(page) == "24 canes shortened. 120 buds left. Goal: 22 to 32."
    uncut_buds = page.locator(".pw-measures dd").first
    expect(uncut_buds).to_have_text("120")
    press(page, "Undo")
    assert said(page).startswith("Taken back.")
    assert cuts_kept(page) == []
    press(page, "Redo")
    assert len(cuts_kept(page)) == 24
    gone = page.locator(".pw-stage-whole .pw-gone")
    ghosts = gone.count()
    assert ghosts > 0
    press(page, "See the uncut vine")
    expect(gone).to_have_count(0)
    press(page, "See the uncut vine")
    expect(gone).to_have_count(ghosts)


def test_a_mouse_over_the_whole_vine_is_told_what_the_drawing_is(
    desktop_page: Page, tidy: ExercisePage, tmp_path: Path
) -> None:
    page = desktop_page
    page.goto(tidy.write(tmp_path))
    stage = page.locator(".pw-stage-whole")
    told = stage.locator("svg > title").text_content()
    assert told
    stage.hover()
    # The tip is that of the nearest element above what the mouse meets, as HTML has it
    # (https://html.spec.whatwg.org/multipage/dom.html#the-title-attribute).
    tip = stage.evaluate("""one => {
      const { left, top, width, height } = one.getBoundingClientRect();
      const met = document.elementFromPoint(left + width / 2, top + height / 2);
      return [met.closest("svg") === null, met.closest("[title]")?.title];
    }""")
    assert tip == [True, told]


def test_a_cut_is_kept_though_the_page_is_left_at_once_and_is_never_made_twice(
    desktop_page: Page, tidy: ExercisePage, tmp_path: Path
) -> None:
    page = desktop_page
    page.goto(tidy.write(tmp_path))
    choose(page)
    off = pick(page, "L6a").get_by_role("button", name="Cut off here")
    with page.expect_navigation():
        off.evaluate("one => { one.click(); one.click(); location.reload(); }")
    assert cuts_kept(page) == [("L6a", None)]


def test_where_no_frame_is_drawn_all_is_shown_at_once(
    desktop_page: Page, tidy: ExercisePage, tmp_path: Path
) -> None:
    page = desktop_page
    page.goto(tidy.write(tmp_path))
    choose(page)
    off = pick(page, "L6a").get_by_role("button", name="Cut off here")
    buds = "document.querySelector('.pw-measures dd').textContent"
    before = page.evaluate(buds)
    page.evaluate("Object.defineProperty(document, 'hidden', { value: true })")
    assert int(off.evaluate(f"one => {{ one.click(); return {buds}; }}")) < int(before)


def test_starting_again_is_asked_for_and_can_be_undone(
    desktop_page: Page, tidy: ExercisePage, tmp_path: Path
) -> None:
    page = desktop_page
    page.goto(tidy.write(tmp_path))
    choose(page)
    press(page, "Shorten every long cane to 5 buds")
    press(page, "Start again")
    expect(page.get_by_role("button", name="No, keep my cuts")).to_be_focused()
    press(page, "No, keep my cuts")
    assert len(cuts_kept(page)) == 24
    press(page, "Start again")
    press(page, "Yes, start again")
    gone = page.locator(".pw-stage-whole .pw-gone")
    expect(gone).to_have_count(0)
    press(page, "Undo")
    assert len(cuts_kept(page)) == 24
    assert gone.count() > 0


def test_going_back_a_pass_is_told_and_charged(
    desktop_page: Page, tidy: ExercisePage, tmp_path: Path
) -> None:
    page = desktop_page
    page.goto(tidy.write(tmp_path))
    choose(page)
    press(page, "Next: Thinning-out pass")
    pick(page, "L6b", "L6")
    press(page, "Cut off here L6b")
    press(page, "Whole vine")
    warning = page.get_by_text("You have gone back a pass.")
    expect(warning).to_be_hidden()
    press(page, "Back a pass")
    expect(warning).to_be_visible()
    pick(page, "L6a")
    press(page, "Leave 5 buds L6a")
    assert said(page).endswith("Out of order.")
    press(page, "Next: Thinning-out pass")
    press(page, "Next: Fine pass")
    press(page, "I am done")
    expect(page.locator(".pw-result")).to_contain_text("How you cut: 95 of 100")
