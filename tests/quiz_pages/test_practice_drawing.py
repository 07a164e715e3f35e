"""The drawing that the browser makes of a practice vine, held against the measured vine."""

import json
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from pencilwood.drawing.scene.cutpoints import cut_points
from pencilwood.drawing.scene.wood_text import plate_of
from pencilwood.quiz.practice_vines import grow
from pencilwood.vine.wood import divide

pytestmark = pytest.mark.browser

FIND = """() => [...document.querySelectorAll('.pw-stage-near svg [data-cut]')].map((one) => ({
  cut: one.getAttribute('data-cut'), buds: one.getAttribute('data-buds'),
  x: Number(one.getAttribute('cx')), y: Number(one.getAttribute('cy'))}))"""


def open_practice(page: Page, site: Path) -> None:
    page.goto((site / "practice.html").as_uri())
    expect(page.locator(".pw-exercise.pw-live")).to_be_visible()


def in_hand(page: Page) -> dict[str, object]:
    """The script's own data of the vine on the page."""
    sheet = json.loads(page.locator("script.pw-sheet").text_content() or "")
    source = page.locator("script[src*='/practice/']").get_attribute("src")
    assert source is not None
    address = page.evaluate("source => new URL(source, location.href).pathname", source)
    text = Path(address).read_text(encoding="utf-8")
    data: dict[str, object] = json.loads(text[text.index("(") + 1 : text.rindex(")")])
    assert data["name"] == sheet["case"]
    return data


def test_cuts_are_where_the_full_drawing_has_them(phone_page: Page, built_site: Path) -> None:
    page = phone_page
    open_practice(page, built_site)
    data = in_hand(page)
    level, number = str(data["name"]).split("-")
    drawn = {(one["cut"], one["buds"]): (one["x"], one["y"]) for one in page.evaluate(FIND)}
    # The first attempt that passed the proofs is the one that was given out.
    for attempt in range(20):
        parts = divide(grow(f"{level}/{int(number)}/{attempt}", level))  # type: ignore[arg-type]
        points = cut_points(plate_of(parts))
        names = {(p.part, None if p.buds is None else str(p.buds)) for p in points}
        if names != set(drawn):
            continue
        off = max(
            abs(p.middle.x - drawn[p.part, None if p.buds is None else str(p.buds)][0])
            + abs(p.middle.y - drawn[p.part, None if p.buds is None else str(p.buds)][1])
            for p in points
        )
        if off < 6:
            return
    raise AssertionError("no vine of this name has these cuts")


def test_all_wood_is_drawn_and_can_be_cut(phone_page: Page, built_site: Path) -> None:
    page = phone_page
    open_practice(page, built_site)
    sheet = json.loads(page.locator("script.pw-sheet").text_content() or "")
    whole = page.locator(".pw-stage-whole svg")
    for piece in sheet["pieces"]:
        part = whole.locator(f"[data-part='{piece['name']}']")
        expect(part).to_have_count(1)
        if piece["kind"] == "cane":
            expect(part.locator(".pw-stretch")).to_have_count(piece["states"] - 1)
            expect(part.locator(".pw-bud")).to_have_count(piece["states"] - 1)
    expect(whole).to_have_attribute("aria-label", "This vine before pruning, drawn to scale")


@pytest.mark.parametrize("language", ["en", "es"])
def test_the_plan_is_the_only_answer(phone_page: Page, built_site: Path, language: str) -> None:
    page = phone_page
    folder = built_site if language == "en" else built_site / language
    page.goto((folder / "practice.html").as_uri())
    for _ in range(3):
        page.locator(".pw-step .pw-main:visible").first.click()
    result = page.locator(".pw-result")
    expect(result).to_be_visible()
    expect(result.locator("input[type=radio][value=plan]")).to_have_count(1)
    expect(result.locator("input[type=radio][value=answer]")).to_have_count(0)
    text = result.inner_text()
    assert "undefined" not in text
    assert "{" not in text
