"""The style sheet turns classes into what a reader sees: whole, ghosted or away."""

import pytest
from playwright.sync_api import Page

from drawn_states import draw_passes
from pencilwood.drawing.ink.looks import stylesheet
from pencilwood.vine.forms.cordon import ONE_ARM_RIGHT
from pencilwood.vine.model import Side
from pencilwood.vine.passes import DoneCut, Pass
from pencilwood.vine.wood import Shortening, ThinningOut, divide, uncut
from vines import arm, cane, old, vine

pytestmark = pytest.mark.browser

LOOK_AT = """
show => {
  const svg = document.querySelector("svg");
  svg.setAttribute("class", "pw-vine pw-show-" + show);
  const look = one => {
    if (one.getClientRects().length === 0) return "away";
    return getComputedStyle(one).fill === "none" ? "ghost" : "whole";
  };
  const wood = (part, bud) => svg.querySelector(
    `[data-part="${part}"] [data-from-bud="${bud}"] > .pw-wood`);
  return [wood("R1b", 6), wood("R1b", 0), wood("R1a", 3), wood("R1a", 0)].map(look).join(" ");
}
"""


@pytest.mark.parametrize(
    ("show", "seen"),
    [
        # R1b beyond its fifth bud, R1b at its foot, R1a beyond its second bud, R1a at its foot.
        ("before", "whole whole whole whole"),
        ("rough", "ghost whole whole whole"),
        ("thinning-out", "away ghost whole whole"),
        ("fine", "away away ghost whole"),
        ("plan", "whole whole ghost ghost"),
    ],
)
def test_each_state_shows_what_it_should(desktop_page: Page, show: str, seen: str) -> None:
    pieces = [old("m", 60), cane("a", 4, on="m", at_mm=15), cane("b", 7, on="m", at_mm=58)]
    parts = divide(vine(ONE_ARM_RIGHT, arm(Side.RIGHT, 400, (200, pieces))))
    cuts = [
        DoneCut(Shortening("R1b", 5), Pass.ROUGH),
        DoneCut(ThinningOut("R1m above a"), Pass.THINNING_OUT),
        DoneCut(Shortening("R1a", 2), Pass.FINE),
    ]
    plan = uncut(parts).cut(ThinningOut("R1a"))
    svg = draw_passes(parts, cuts, plan=plan)
    desktop_page.set_content(f"<style>{stylesheet()}</style>{svg}")
    assert desktop_page.evaluate(LOOK_AT, show) == seen
