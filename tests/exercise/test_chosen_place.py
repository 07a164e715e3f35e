"""The mark of the place in hand is read as easily as the names beside it, on any screen."""

from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from exercise_page import ExercisePage

pytestmark = [pytest.mark.browser, pytest.mark.slow]


@pytest.mark.parametrize("width_px", [390, 1280, 1920])
def test_the_chosen_place_has_no_smaller_letters_than_the_others(
    desktop_page: Page, tidy: ExercisePage, tmp_path: Path, width_px: int
) -> None:
    page = desktop_page
    page.set_viewport_size({"width": width_px, "height": 1080})
    page.goto(tidy.write(tmp_path))
    whole = page.locator(".pw-stage-whole")
    # As large as a wall makes it, so that names grow with the drawing.
    whole.locator("svg").evaluate(
        "(svg, wide) => { svg.style.height = `${wide / 2}px`; }", width_px
    )
    chosen = whole.locator(".pw-mark-here")
    expect(chosen).to_be_visible()
    page.wait_for_timeout(200)
    here_px = chosen.evaluate("one => parseFloat(getComputedStyle(one).fontSize)")
    others_px = whole.locator(".pw-place-name:not(.pw-name-away)").evaluate_all("""all => all.map(
        one => parseFloat(getComputedStyle(one).fontSize) * one.getScreenCTM().a)""")
    assert others_px
    assert here_px >= max(others_px) - 0.5
