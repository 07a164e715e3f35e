"""The drawing on the page for a room: where it stands, and the canes that are tied."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from browser import watched_page
from pencilwood.drawing.scene.wood_text import plate_of
from pencilwood.pages.projector_page import frames_of
from room_page import CANES, CASE, ROOM, count, open_room, proof_of

UNDER_WORDS = """
() => {
  const words = [...document.querySelectorAll(".pwp-scale, .pwp-keys")]
    .map(one => one.getBoundingClientRect());
  const trunk = Number(document.querySelector("svg.pw-vine").dataset.trunk);
  const wood = [...document.querySelectorAll("svg .pw-part .pw-wood")]
    .map(one => one.getBoundingClientRect());
  const over = (a, b) =>
    a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
  const names = [...document.querySelectorAll(".pw-place-name")].map(one => one.getBBox());
  return [
    wood.filter(one => words.some(other => over(one, other))).length,
    names.filter(one => one.x < trunk && one.x + one.width > -trunk).length,
  ];
}
"""


@pytest.mark.browser
@pytest.mark.parametrize("height", [600, 720, 1024])
def test_no_wood_is_under_words_and_no_name_over_the_trunk(room: Page, height: int) -> None:
    room.set_viewport_size({"width": ROOM["width"], "height": height})
    room.reload()
    room.wait_for_selector("html.pwp-shown svg.pw-vine")
    assert room.evaluate(UNDER_WORDS) == [0, 0]


@pytest.mark.browser
@pytest.mark.parametrize("slug", [CASE, CANES])
@pytest.mark.parametrize(
    "size", [ROOM, {"width": 390, "height": 844}, {"width": 820, "height": 1180}]
)
def test_the_drawing_stands_in_the_middle(
    browser: Browser, folder: Path, slug: str, size: dict[str, int]
) -> None:
    for page in watched_page(browser, viewport=size):
        open_room(page, (folder / "project" / f"{slug}.html").as_uri())
        page.keyboard.press("End")
        # The trunk stands at 0; the vine's ends are not equally far from it.
        trunk_px = page.locator("svg.pw-vine").evaluate("svg => svg.getScreenCTM().e")
        assert abs(trunk_px - size["width"] / 2) < 0.08 * size["width"]


@pytest.mark.browser
def test_canes_lie_along_the_wire_once_the_room_has_tied_them(
    browser: Browser, folder: Path
) -> None:
    lies = "all => all.filter(one => one.getClientRects().length).map(one => one.dataset.laid)"
    for page in watched_page(browser, viewport=ROOM):
        open_room(page, (folder / "project" / f"{CANES}.html").as_uri())
        laid = page.locator(".pw-laid")
        seen = []
        for _ in range(count(page)[1]):
            asked = page.locator(".pwp-step.pwp-now p").first.inner_text()
            seen.append(("which side" in asked, laid.evaluate_all(lies)))
            page.keyboard.press("PageDown")
        assert seen[0] == (False, [])
        assert seen[-5:] == [
            (True, []),
            (False, ["L1b"]),
            (True, ["L1b"]),
            (False, ["L1b", "R1b"]),
            (False, ["L1b", "R1b"]),
        ]
        for cane in ("L1b", "R1b"):
            assert not page.locator(f'[data-part="{cane}"]').is_visible()
        page.keyboard.press("Home")
        assert page.locator('[data-part="L1b"]').is_visible()
        assert laid.evaluate_all(lies) == []


LINES = """
() => {
  const svg = document.querySelector("svg.pw-vine");
  const scale = svg.getScreenCTM().a;
  const letter = parseFloat(getComputedStyle(svg.querySelector(".pw-place-name")).fontSize) * scale;
  const lines = [...svg.querySelectorAll(".pw-places-inside .pw-tick")];
  return lines.map(one => {
    const {height} = one.getBoundingClientRect();
    return [height / letter, Number(one.getAttribute("stroke-width")) * scale];
  });
}
"""


@pytest.mark.browser
def test_lines_to_the_wood_on_a_head_are_steep_and_thick_enough_to_be_told_apart(
    browser: Browser, folder: Path
) -> None:
    for page in watched_page(browser, viewport={"width": 1920, "height": 1080}):
        open_room(page, (folder / "project" / f"{CANES}.html").as_uri())
        lines = page.evaluate(LINES)
        assert len(lines) >= 4
        assert min(high for high, _ in lines) > 1.2
        assert min(thick for _, thick in lines) > 1.2
        names = page.locator(".pw-place-name").all()
        steps = page.locator(".pwp-steps").bounding_box()
        assert steps is not None
        for name in names:
            box = name.bounding_box()
            assert box is not None
            assert box["y"] + box["height"] * 0.8 < steps["y"]


def test_long_canes_run_on_beyond_the_edge_where_no_pass_shortens_them_first() -> None:
    whole, _ = frames_of(plate_of(proof_of(CANES).parts))
    vine = proof_of(CANES).parts.vine
    assert -whole.top == max(vine.trellis.top_wire_mm, vine.cordon_height_mm + 900) + 60
    cordon = plate_of(proof_of(CASE).parts)
    assert frames_of(cordon)[0].top == cordon.frame.top
