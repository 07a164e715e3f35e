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
