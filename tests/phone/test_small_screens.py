"""On the smallest phones the buttons stand right below the drawing that they are for."""

from pathlib import Path

import pytest
from playwright.sync_api import Page, ViewportSize, expect

pytestmark = [pytest.mark.browser, pytest.mark.slow]

MOST_PX = 16
BETWEEN = """() => document.querySelector(".pw-hand").getBoundingClientRect().top
  - document.querySelector(".pw-glass").getBoundingClientRect().bottom"""
SMALL = [ViewportSize(width=320, height=568), ViewportSize(width=360, height=640)]


@pytest.mark.parametrize("screen", SMALL, ids=lambda one: f"{one['width']}x{one['height']}")
@pytest.mark.parametrize(
    "address", ["index", "es/cases/climbing-spurs", "cases/around-the-head", "practice"]
)
def test_no_empty_stretch_parts_buttons_from_drawing(
    phone_page: Page, built_site: Path, address: str, screen: ViewportSize
) -> None:
    phone_page.set_viewport_size(screen)
    phone_page.goto((built_site / f"{address}.html").as_uri())
    expect(phone_page.locator(".pw-glass .pw-stage-whole svg")).to_be_visible()
    assert 0 <= phone_page.evaluate(BETWEEN) <= MOST_PX
