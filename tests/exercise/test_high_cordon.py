"""A high cordon pruned in Chromium: by fingers on a phone, by keys on a desk."""

from pathlib import Path

import pytest
from playwright.sync_api import Locator, Page, expect

from exercise_page import ExercisePage, choose, pick, stored
from high_cordons import high_vine
from pencilwood.vine.passes import CUTTING_PASSES
from pencilwood.vine.wood import Shortening
from vines import SAMPLES

pytestmark = pytest.mark.browser


@pytest.mark.parametrize("hand", ["phone_page", "desktop_page"])
def test_the_plan_of_a_high_cordon_has_full_points(
    hand: str, request: pytest.FixtureRequest, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(SAMPLES, "high", high_vine)
    page: Page = request.getfixturevalue(hand)
    made = ExercisePage("high", "en")
    page.goto(made.write(tmp_path))

    def press(button: Locator) -> None:
        if hand == "phone_page":
            button.tap()
        else:
            button.press("Enter")

    words = made.words()["strings"]
    for one in CUTTING_PASSES:
        for done in (cut for cut in made.plan_cuts if cut.in_pass is one):
            choose(page, str(done.tool), str(done.stub))
            part = made.parts.parts[made.parts.index[done.cut.part]]
            row = pick(page, part.name, part.position.name)
            label = words["exercise.cut.off"]
            if isinstance(done.cut, Shortening):
                number = "one" if done.cut.buds == 1 else "many"
                label = words[f"exercise.cut.leave.{number}"].format(n=done.cut.buds)
            press(row.get_by_role("button", name=f"{label} {part.name}", exact=True))
        press(page.locator(".pw-step .pw-main:visible"))
    heading = page.locator(".pw-result h3").first
    expect(heading).to_have_text(words["exercise.result.passed"].format(score=100))
    scores = stored(page, "score:high")
    assert (scores["score"], scores["cutting"], scores["passed"]) == (100, 100, True)


def test_the_close_up_of_a_hanging_place_shows_its_canes(
    phone_page: Page, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(SAMPLES, "high", high_vine)
    page = phone_page
    page.goto(ExercisePage("high", "en").write(tmp_path))
    page.locator(".pw-nav select").select_option(label="L6")
    near = page.locator(".pw-stage-near")
    _, top, _, height = map(float, (near.locator("svg").get_attribute("viewBox") or "").split())
    # The arm is 1.7 m up and y grows downward: it is near the top, the canes fill the rest.
    assert top < -1700 < top + height / 2
