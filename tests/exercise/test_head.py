"""A head-trained vine pruned in Chromium: by fingers in both views, by keys on a desk."""

from pathlib import Path

import pytest
from playwright.sync_api import Locator, Page, expect

from exercise_page import ExercisePage, choose, pick, stored
from heads import head_vine
from pencilwood.vine.passes import CUTTING_PASSES, DoneCut, Pass
from pencilwood.vine.wood import Shortening
from vines import SAMPLES

pytestmark = pytest.mark.browser


@pytest.fixture
def made(monkeypatch: pytest.MonkeyPatch) -> ExercisePage:
    monkeypatch.setitem(SAMPLES, "head", head_vine)
    return ExercisePage("head", "en")


def position_of(made: ExercisePage, done: DoneCut) -> str:
    return made.parts.parts[made.parts.index[done.cut.part]].position.name


def circle(within: Locator, done: DoneCut, view: str) -> Locator:
    buds = f'[data-buds="{done.cut.buds}"]' if isinstance(done.cut, Shortening) else ""
    where = f'circle[data-cut="{done.cut.part}"][data-view="{view}"]{buds}'
    return within.locator(where if buds else f"{where}:not([data-buds])")


def tap_middle(page: Page, target: Locator) -> None:
    box = target.bounding_box()
    assert box is not None
    page.touchscreen.tap(box["x"] + box["width"] / 2, box["y"] + box["height"] / 2)


def expect_full_points(page: Page, made: ExercisePage) -> None:
    passed = made.words()["strings"]["exercise.result.passed"].format(score=100)
    expect(page.locator(".pw-result h3").first).to_have_text(passed)
    scores = stored(page, "score:head")
    assert (scores["score"], scores["cutting"], scores["passed"]) == (100, 100, True)


def test_fingers_prune_it_in_both_views(
    made: ExercisePage, phone_page: Page, tmp_path: Path
) -> None:
    page = phone_page
    page.goto(made.write(tmp_path))
    near = page.locator(".pw-stage-near")
    turn = page.get_by_role("button", name=made.words()["strings"]["exercise.turn"], exact=True)
    view = "row"
    for one in CUTTING_PASSES:
        wanted = "row" if one is Pass.ROUGH else "above"
        if wanted != view:
            turn.tap()
            view = wanted
        for done in (cut for cut in made.plan_cuts if cut.in_pass is one):
            choose(page, str(done.tool), str(done.stub))
            pick(page, done.cut.part, position_of(made, done))
            near.evaluate("stage => stage.scrollIntoView({ block: 'center' })")
            point = circle(near, done, view)
            expect(point).to_have_class("pw-cutpoint pw-offered")
            tap_middle(page, point)
            expect(page.locator(".pw-said")).to_contain_text(done.cut.part)
            expect(point).to_have_class("pw-cutpoint")
        page.locator(".pw-step .pw-main:visible").tap()
    expect_full_points(page, made)


def test_keys_prune_it(made: ExercisePage, desktop_page: Page, tmp_path: Path) -> None:
    page = desktop_page
    page.goto(made.write(tmp_path))
    words = made.words()["strings"]
    for one in CUTTING_PASSES:
        for done in (cut for cut in made.plan_cuts if cut.in_pass is one):
            choose(page, str(done.tool), str(done.stub))
            row = pick(page, done.cut.part, position_of(made, done))
            label = words["exercise.cut.off"]
            if isinstance(done.cut, Shortening):
                number = "one" if done.cut.buds == 1 else "many"
                label = words[f"exercise.cut.leave.{number}"].format(n=done.cut.buds)
            name = f"{label} {done.cut.part}"
            row.get_by_role("button", name=name, exact=True).press("Enter")
        page.locator(".pw-step .pw-main:visible").press("Enter")
    expect_full_points(page, made)


@pytest.mark.parametrize("view", ["row", "above"])
def test_a_tap_in_either_view_chooses_place_and_view(
    made: ExercisePage, phone_page: Page, tmp_path: Path, view: str
) -> None:
    page = phone_page
    page.goto(made.write(tmp_path))
    whole = page.locator(".pw-stage-whole")
    first = whole.locator(f'circle[data-cut="H4a"][data-buds="5"][data-view="{view}"]')
    first.evaluate("one => one.ownerSVGElement.scrollIntoView({ block: 'start' })")
    middle = first.evaluate(
        "one => { const at = new DOMPoint(one.cx.baseVal.value, one.cy.baseVal.value)"
        ".matrixTransform(one.getScreenCTM()); return [at.x, at.y]; }"
    )
    page.touchscreen.tap(*middle)
    expect(page.locator(".pw-nav select option:checked")).to_have_text("H4")
    offered = page.locator(".pw-stage-near circle.pw-offered")
    views = {one.get_attribute("data-view") for one in offered.all()}
    assert views == {view}


def test_no_measure_speaks_of_metres_of_arm(
    made: ExercisePage, desktop_page: Page, tmp_path: Path
) -> None:
    page = desktop_page
    page.goto(made.write(tmp_path))
    names = page.locator(".pw-measures dt").all_text_contents()
    assert len(names) == 4
    assert not [name for name in names if "metre" in name or "arm" in name.split()]


CAPTIONS = """() => {
  const stage = document.querySelector(".pw-stage-whole").getBoundingClientRect();
  return [...document.querySelectorAll(".pw-stage-whole .pw-caption")].map((one) => {
    const { left, right, bottom } = one.getBoundingClientRect();
    const scale = one.getScreenCTM().a;
    return {
      px: parseFloat(getComputedStyle(one).fontSize) * scale,
      inside: left >= stage.left && right <= stage.right && bottom <= stage.bottom,
    };
  });
}"""


@pytest.mark.parametrize("width", [320, 360, 390])
@pytest.mark.parametrize("language", ["en", "es"])
def test_words_that_tell_the_views_apart_can_be_read_on_a_phone(
    language: str, width: int, monkeypatch: pytest.MonkeyPatch, phone_page: Page, tmp_path: Path
) -> None:
    monkeypatch.setitem(SAMPLES, "head", head_vine)
    phone_page.set_viewport_size({"width": width, "height": 700})
    phone_page.goto(ExercisePage("head", language).write(tmp_path))
    expect(phone_page.locator(".pw-stage-whole")).to_be_visible()
    captions = phone_page.evaluate(CAPTIONS)
    assert len(captions) == 4
    assert all(one["px"] > 11 and one["inside"] for one in captions), captions
