"""Names on the drawings of a phone: those that are shown can be read."""

from pathlib import Path

import pytest
from playwright.sync_api import Page

pytestmark = [pytest.mark.browser, pytest.mark.slow]

LEAST_PX = 11.0
"""What can just be read at arm's length (common practice, no source)."""
SIZES = """() => [...document.querySelectorAll(".pw-vine .pw-place-name")]
  .filter((one) => one.getClientRects().length > 0)
  .map((one) => parseFloat(getComputedStyle(one).fontSize) * one.getScreenCTM().a)"""


@pytest.mark.parametrize(
    ("address", "has_names"),
    [
        # A whole head-trained vine and two rules, each from the row and from above.
        ("head-trained-vine", True),
        ("es/head-trained-vine", True),
        ("rules/open-side", True),
        ("es/rules/wood-in-the-middle", True),
        # Arms from tip to tip.
        ("why-we-prune", True),
        ("high-cordon", True),
        ("cane-pruned-vine", True),
        # Down to the ground a vine is too small for names, and the text uses none.
        ("ladders", False),
    ],
)
def test_names_of_places_can_be_read(
    phone_page: Page, built_site: Path, address: str, has_names: bool
) -> None:
    phone_page.goto((built_site / f"{address}.html").as_uri())
    sizes: list[float] = phone_page.evaluate(SIZES)
    assert bool(sizes) is has_names
    assert [round(one, 1) for one in sizes if round(one, 1) < LEAST_PX] == []


@pytest.mark.parametrize(
    "case", ["shoots-on-the-head", "a-cane-across-the-head", "crowded-positions"]
)
def test_every_place_of_a_vine_to_prune_is_named_also_beside_the_mark_of_the_one_in_hand(
    phone_page: Page, built_site: Path, case: str
) -> None:
    phone_page.set_viewport_size({"width": 320, "height": 800})
    phone_page.goto((built_site / f"cases/{case}.html").as_uri())
    whole = phone_page.locator(".pw-stage-whole")
    whole.locator(".pw-mark-here").first.wait_for()
    told = set(whole.locator(".pw-mark").all_inner_texts())
    names = whole.locator(".pw-place-name")
    assert names.count() > len(told)
    unseen = {one.text_content() for one in names.all() if not one.is_visible()}
    assert unseen <= told


@pytest.mark.parametrize("case", ["hanging-spurs", "tidy-vine"])
def test_a_name_that_moved_has_a_line_and_the_edge_cuts_no_mark(
    phone_page: Page, built_site: Path, case: str
) -> None:
    phone_page.set_viewport_size({"width": 320, "height": 800})
    phone_page.goto((built_site / f"cases/{case}.html").as_uri())
    stage = phone_page.locator(".pw-stage-whole")
    mark = stage.locator(".pw-mark-here")
    mark.wait_for()
    moved = stage.locator(".pw-place-name[style*='translateY']:not(.pw-name-away)")
    assert moved.count() > 0
    led = stage.locator(".pw-place:has(> .pw-tick-on) > .pw-place-name[style*='translateY']")
    assert led.count() == moved.count()
    box, edge = mark.bounding_box(), stage.bounding_box()
    assert box is not None
    assert edge is not None
    assert edge["x"] <= box["x"]
    assert box["x"] + box["width"] <= edge["x"] + edge["width"]


@pytest.mark.parametrize("width_px", [320, 390, 1280])
def test_the_mark_of_the_place_in_hand_stands_in_the_order_of_its_row(
    phone_page: Page, built_site: Path, width_px: int
) -> None:
    phone_page.set_viewport_size({"width": width_px, "height": 800})
    phone_page.goto((built_site / "cases/a-cane-across-the-head.html").as_uri())
    stage = phone_page.locator(".pw-stage-whole")
    mark = stage.locator(".pw-mark-here")
    mark.wait_for()
    names = [one for one in stage.locator(".pw-place-name").all() if one.is_visible()]
    boxes = {str(one.text_content()): one.bounding_box() for one in [*names, mark]}
    seen = {name: box for name, box in boxes.items() if box is not None}
    assert sorted(seen, key=lambda name: seen[name]["x"]) == ["L3", "L2", "L1", "R1", "R2", "R3"]
    middles = [box["y"] + box["height"] / 2 for box in seen.values()]
    assert max(middles) - min(middles) < 4
