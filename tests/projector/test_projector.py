"""The page for a room, as a trainer with a clicker uses it."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from browser import watched_page
from pencilwood.proof import CaseProof
from pencilwood.vine.measures import buds_kept
from room_page import CASE, ROOM, count, open_room
from web_host import web_host

LEAST_SHARE = 0.04
"""Share of the screen's height that the smallest letters must have."""


def heading(page: Page) -> str:
    return page.locator(".pwp-step h2:visible").inner_text()


def buds_shown(page: Page) -> int:
    script = "all => all.filter(bud => bud.getClientRects().length > 0).length"
    return int(page.locator(".pw-bud").evaluate_all(script))


@pytest.mark.browser
@pytest.mark.parametrize("key", ["ArrowRight", "ArrowDown", "PageDown", "Space", "Enter"])
def test_a_key_or_a_clicker_shows_the_next_step(room: Page, key: str) -> None:
    assert count(room)[0] == 1
    room.keyboard.press(key)
    assert count(room)[0] == 2
    assert heading(room) == "Rough pass"


@pytest.mark.browser
@pytest.mark.parametrize("key", ["ArrowLeft", "ArrowUp", "PageUp", "Backspace"])
def test_another_key_goes_back_and_not_past_the_first(room: Page, key: str) -> None:
    room.keyboard.press("PageDown")
    room.keyboard.press(key)
    assert count(room)[0] == 1
    room.keyboard.press(key)
    assert count(room)[0] == 1


@pytest.mark.browser
def test_a_tap_on_the_words_or_the_button_shows_the_next_step(room: Page) -> None:
    room.locator(".pwp-step.pwp-now").click()
    assert count(room)[0] == 2
    room.locator(".pwp-next").click()
    assert count(room)[0] == 3
    room.keyboard.press("Space")  # the button has the focus: it must not count twice
    assert count(room)[0] == 4
    room.locator(".pwp-back").click()
    assert count(room)[0] == 3


@pytest.mark.browser
def test_the_room_is_asked_before_each_answer(room: Page) -> None:
    _, steps = count(room)
    asked = []
    for _ in range(steps - 2):
        room.keyboard.press("PageDown")
        asked.append("pwp-asks" in (room.locator(".pwp-step.pwp-now").get_attribute("class") or ""))
    assert asked == [True, False] * ((steps - 2) // 2)


@pytest.mark.browser
def test_the_last_step_shows_the_answer_and_no_more(room: Page, proof: CaseProof) -> None:
    room.keyboard.press("End")
    assert buds_shown(room) == buds_kept(proof.answer_left)
    told = room.locator(".pwp-step.pwp-now").inner_text().replace("\u00a0", " ")
    assert f"{buds_kept(proof.answer_left)} buds are left" in told
    room.keyboard.press("Home")
    assert buds_shown(room) == sum(p.piece.buds for p in proof.parts.parts if p.is_cane)


@pytest.mark.browser
def test_a_step_stays_through_a_reload(room: Page) -> None:
    for _ in range(3):
        room.keyboard.press("PageDown")
    room.reload()
    room.wait_for_selector("svg.pw-vine")
    assert count(room)[0] == 4


@pytest.mark.browser
@pytest.mark.parametrize("size", [ROOM, {"width": 1024, "height": 768}])
def test_no_letter_is_too_small_for_the_last_row(
    browser: Browser, folder: Path, size: dict[str, int]
) -> None:
    script = """least => [...document.querySelectorAll("h2, p, a, button, span, text")]
        .filter(one => one.checkVisibility({visibilityProperty: true})
            && one.getClientRects().length && one.textContent.trim()
            && !one.closest(".pwp-hidden, .pwp-keys"))
        .map(one => {
            const scale = one.ownerSVGElement ? one.getScreenCTM().a : 1;
            return [one.textContent, parseFloat(getComputedStyle(one).fontSize) * scale];
        })
        .filter(([, size]) => size < least - 0.1)"""
    for page in watched_page(browser, viewport=size):
        open_room(page, (folder / "es" / "project" / f"{CASE}.html").as_uri())
        for _ in range(count(page)[1]):
            assert page.evaluate(script, size["height"] * LEAST_SHARE) == []
            page.keyboard.press("PageDown")


@pytest.mark.browser
def test_all_of_a_step_fits_on_the_screen(room: Page) -> None:
    for _ in range(count(room)[1]):
        for part in (".pwp-step.pwp-now", ".pwp-drawing", ".pwp-bar"):
            box = room.locator(part).first.bounding_box()
            assert box is not None
            assert box["y"] >= -1
            assert box["y"] + box["height"] <= ROOM["height"] + 1
        room.keyboard.press("PageDown")


@pytest.mark.browser
def test_the_trainer_cuts_by_tapping_and_takes_it_back(room: Page) -> None:
    room.keyboard.press("PageDown")
    before = buds_shown(room)
    cane = room.locator('[data-part="L5a"]')
    wood = cane.locator('[data-from-bud="3"] > .pw-wood')
    wood.dispatch_event("click")
    assert cane.locator(".pw-stretch:not(.pw-gone)").count() == 3
    assert buds_shown(room) < before
    wood.dispatch_event("click")
    assert buds_shown(room) == before


@pytest.mark.browser
def test_wood_that_is_cut_takes_along_what_grows_on_it(room: Page) -> None:
    room.locator('[data-part="L5m"] > .pw-wood').first.dispatch_event("click")
    for part in ("L5m", "L5a", "L5b"):
        assert "pw-gone" in (room.locator(f'[data-part="{part}"]').get_attribute("class") or "")
    room.locator('[data-part="L5b"] .pw-wood').first.dispatch_event("click")
    assert "pw-gone" not in (room.locator('[data-part="L5m"]').get_attribute("class") or "")


@pytest.mark.browser
def test_the_screen_goes_black_for_a_talk(room: Page) -> None:
    room.keyboard.press("b")
    assert not room.locator(".pwp-step.pwp-now h2").is_visible()
    room.keyboard.press("b")
    assert room.locator(".pwp-step.pwp-now h2").is_visible()
    assert count(room)[0] == 1


@pytest.mark.browser
def test_without_its_script_the_page_tells_every_step(browser: Browser, folder: Path) -> None:
    for page in watched_page(browser, viewport=ROOM, java_script_enabled=False):
        page.goto((folder / "project" / f"{CASE}.html").as_uri())
        assert page.locator(".pwp-step").count() > 4
        assert page.locator(".pwp-step h2").last.is_visible()


@pytest.mark.browser
def test_a_web_host_gives_the_drawing_as_a_disk_does(browser: Browser, folder: Path) -> None:
    with web_host(folder) as host:
        for page in watched_page(browser, viewport=ROOM):
            open_room(page, host.url(f"project/{CASE}.html"))
            assert page.locator("iframe").count() == 0
            assert page.locator(".pw-cutpoint").count() == 0
            page.keyboard.press("PageDown")
            assert count(page)[0] == 2


@pytest.mark.browser
def test_without_the_vines_own_page_a_small_picture_and_every_step_stay(
    browser: Browser, folder: Path
) -> None:
    with web_host(folder) as host:
        host.failing.add(f"cases/{CASE}.html")
        for page in watched_page(browser, viewport=ROOM):
            page.goto(host.url(f"project/{CASE}.html"))
            page.wait_for_selector(".pwp-without img")
            assert page.locator(".pwp-step h2").last.is_visible()


def test_each_language_has_its_page(folder: Path) -> None:
    english = (folder / "project" / f"{CASE}.html").read_text("utf-8")
    spanish = (folder / "es" / "project" / f"{CASE}.html").read_text("utf-8")
    assert '<html lang="en">' in english
    assert '<html lang="es">' in spanish
    assert "Hands up!" in english
    assert "¡Manos arriba!" in spanish
    assert 'href="../cases/tidy-vine.html"' in english
    assert 'src="../../assets/pencilwood/pencilwood-room.js?v=' in spanish
    for text in (english, spanish):
        ids = re.findall(r'\bid="([^"]+)"', text)
        assert len(ids) == len(set(ids))
