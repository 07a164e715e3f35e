"""Pruning a vine in Chromium, from the first tap to the result."""

import re
from pathlib import Path

import pytest
from playwright.sync_api import Locator, Page, Route, expect

from exercise_page import ExercisePage, choose, cuts_kept, pick, press, said, stored
from pencilwood.vine.passes import CUTTING_PASSES
from pencilwood.vine.wood import Shortening

pytestmark = pytest.mark.browser


def rings(page: Page) -> Locator:
    return page.locator(".pw-stage-near .pw-offered")


def middle(ring: Locator) -> tuple[float, float]:
    ring.scroll_into_view_if_needed()
    box = ring.bounding_box()
    assert box is not None
    return box["x"] + box["width"] / 2, box["y"] + box["height"] / 2


def on_the_glass(point: Locator) -> tuple[float, float]:
    """Where a cut point lies on the screen, shown or not."""
    x, y = point.evaluate(
        """one => { const to = one.ownerSVGElement.getScreenCTM();
        return [one.cx.baseVal.value * to.a + to.e, one.cy.baseVal.value * to.d + to.f]; }"""
    )
    return float(x), float(y)


def page_near(page: Page) -> Locator:
    return page.locator(".pw-stage-near")


def is_in_window(page: Page, ring: Locator) -> bool:
    """Whether the close-up shows the ring; it may lie outside what the window shows."""
    window, box = page.locator(".pw-stage-near").bounding_box(), ring.bounding_box()
    assert window is not None
    assert box is not None
    return window["y"] <= box["y"] and box["y"] + box["height"] <= window["y"] + window["height"]


def asked(page: Page) -> Locator:
    return page.locator(".pw-how-question:visible")


def test_tool_and_place_are_asked_at_the_first_cut_that_needs_them(
    phone_page: Page, tidy: ExercisePage, tmp_path: Path
) -> None:
    page = phone_page
    page.goto(tidy.write(tmp_path))
    expect(page.locator(".pw-how-none")).to_have_count(2)
    # Whole wood has no bud to keep away from: only the tool is asked.
    pick(page, "L6b", "L6")
    press(page, "Cut off here L6b")
    expect(asked(page)).to_contain_text("Which tool do you hold?")
    expect(page.get_by_role("heading", name="Which tool do you hold?")).to_be_focused()
    assert asked(page).locator("[aria-pressed=true]").count() == 0
    assert cuts_kept(page) == []
    press(page, "Loppers")
    assert cuts_kept(page) == [("L6b", None)]
    expect(asked(page)).to_have_count(0)
    pick(page, "L6a")
    press(page, "Leave 5 buds L6a")
    expect(asked(page)).to_contain_text("Where do you cut above the bud?")
    assert cuts_kept(page) == [("L6b", None)]
    press(page, "Touching the bud")
    assert cuts_kept(page) == [("L6b", None), ("L6a", 5)]
    pick(page, "L5a", "L5")
    press(page, "Leave 5 buds L5a")
    expect(asked(page)).to_have_count(0)
    steps = stored(page, "work:tidy")["work"]["history"]["steps"]
    made = [(cut["tool"], cut["stub"]) for step in steps for cut in step["cuts"]]
    assert [tool for tool, _ in made] == ["loppers"] * 3
    assert [stub for _, stub in made][1:] == ["close"] * 2


def test_a_question_that_is_left_cuts_nothing(
    phone_page: Page, tidy: ExercisePage, tmp_path: Path
) -> None:
    page = phone_page
    page.goto(tidy.write(tmp_path))
    press(page, "Shorten every long cane to 5 buds")
    press(page, "Hand shears")
    expect(asked(page)).to_contain_text("Where do you cut above the bud?")
    press(page, "Not now")
    expect(asked(page)).to_have_count(0)
    assert cuts_kept(page) == []
    press(page, "Shorten every long cane to 5 buds")
    expect(asked(page)).to_contain_text("Where do you cut above the bud?")
    press(page, "A finger's width above it")
    assert len(cuts_kept(page)) == 24


@pytest.mark.parametrize(("closer", "fewest"), [(False, 18), (True, 7)])
def test_every_ring_can_be_hit_on_the_narrowest_phone(
    narrow: Page, tidy: ExercisePage, tmp_path: Path, closer: bool, fewest: int
) -> None:
    narrow.goto(tidy.write(tmp_path))
    choose(narrow)
    pick(narrow, "L6a", "L6")
    if closer:
        press(narrow, "Look closer")
    hit = 0
    for piece in narrow.locator(".pw-pieces button").all():
        name = piece.get_attribute("data-piece") or ""
        pick(narrow, name)
        offered = rings(narrow)
        assert set(offered.evaluate_all("all => all.map((one) => one.dataset.cut)")) == {name}
        seen = [ring for ring in offered.all() if is_in_window(narrow, ring)]
        wanted = [ring.get_attribute("data-buds") for ring in seen]
        for ring, buds in zip(seen, wanted, strict=True):
            narrow.touchscreen.tap(*middle(ring))
            assert cuts_kept(narrow) == [(name, None if buds is None else int(buds))]
            press(narrow, "Undo")
            assert cuts_kept(narrow) == []
            hit += 1
    assert hit >= fewest


def test_a_tap_on_other_wood_chooses_it_and_cuts_nothing(
    phone_page: Page, tidy: ExercisePage, tmp_path: Path
) -> None:
    page = phone_page
    page.goto(tidy.write(tmp_path))
    choose(page)
    for name in ("L6a", "L6b"):
        pick(page, name, "L6")
    # No ring shows there now, so the place is asked of the drawing.
    at = on_the_glass(page.locator('.pw-stage-near [data-cut="L6a"][data-buds]').nth(-2))
    page.touchscreen.tap(*at)
    expect(page.locator(".pw-piece")).to_have_attribute("data-piece", "L6a")
    assert cuts_kept(page) == []


def test_what_lies_near_the_thumb_never_covers_the_drawing(
    phone_page: Page, tidy: ExercisePage, tmp_path: Path
) -> None:
    page = phone_page
    page.goto(tidy.write(tmp_path))
    stage = page.locator(".pw-stage-whole")
    box = stage.bounding_box()
    assert box is not None
    stage.tap(position={"x": box["width"] * 0.75, "y": box["height"] / 2})

    def is_clear() -> bool:
        near, hand = page.locator(".pw-stage-near"), page.locator(".pw-hand")
        top, under = near.bounding_box(), hand.bounding_box()
        assert top is not None
        assert under is not None
        assert under["y"] + under["height"] <= page.evaluate("innerHeight") + 1
        return top["y"] >= 0 and top["y"] + top["height"] <= under["y"] + 1

    assert is_clear()
    before = page.locator(".pw-hand").bounding_box()
    page.locator(".pw-cuts-now button").first.tap()
    expect(asked(page)).to_be_visible()
    assert is_clear()
    assert page.locator(".pw-hand").bounding_box() == before, "nothing moves for the question"


def test_a_tap_beside_the_wood_cuts_nothing_and_says_so(
    narrow: Page, tidy: ExercisePage, tmp_path: Path
) -> None:
    narrow.goto(tidy.write(tmp_path))
    choose(narrow)
    pick(narrow, "L6a", "L6")
    near = narrow.locator(".pw-stage-near")
    near.scroll_into_view_if_needed()
    near.tap(position={"x": 4, "y": 4})
    assert said(narrow) == "There is no wood here. Tap a ring to cut, or wood to choose it."
    assert cuts_kept(narrow) == []


def test_a_finger_that_slides_away_cuts_nothing(
    desktop_page: Page, tidy: ExercisePage, tmp_path: Path
) -> None:
    desktop_page.goto(tidy.write(tmp_path))
    choose(desktop_page)
    pick(desktop_page, "L6a", "L6")
    x, y = middle(rings(desktop_page).first)
    desktop_page.mouse.move(x, y)
    desktop_page.mouse.down()
    desktop_page.mouse.move(x, y - 40)
    desktop_page.mouse.move(x, y - 15)
    desktop_page.mouse.up()
    assert cuts_kept(desktop_page) == []
    desktop_page.mouse.click(x, y)
    assert len(cuts_kept(desktop_page)) == 1


def test_a_tap_on_the_whole_vine_chooses_the_position(
    phone_page: Page, tidy: ExercisePage, tmp_path: Path
) -> None:
    phone_page.goto(tidy.write(tmp_path))
    whole = phone_page.locator(".pw-stage-whole")
    heading = phone_page.locator(".pw-position-title")
    before = heading.inner_text()
    expect(page_near(phone_page)).to_be_hidden()
    phone_page.touchscreen.tap(*on_the_glass(whole.locator('[data-cut="R5a"][data-buds]').nth(3)))
    assert before.startswith("Position L6")
    expect(heading).to_have_text(re.compile(r"^Position R5 "))
    expect(page_near(phone_page)).to_be_visible()
    expect(phone_page.locator(".pw-piece")).to_have_attribute("data-piece", "R5a")
    press(phone_page, "Whole vine")
    expect(whole).to_be_visible()
    expect(page_near(phone_page)).to_be_hidden()


def test_history_goes_back_and_forth(
    desktop_page: Page, tidy: ExercisePage, tmp_path: Path
) -> None:
    page = desktop_page
    page.goto(tidy.write(tmp_path))
    choose(page)
    press(page, "Shorten every long cane to 5 buds")
    assert said(page) == "24 canes shortened. 120 buds left."
    uncut_buds = page.locator(".pw-measures dd").first
    expect(uncut_buds).to_have_text("120")
    press(page, "Undo")
    assert said(page).startswith("Taken back.")
    assert cuts_kept(page) == []
    press(page, "Do it again")
    assert len(cuts_kept(page)) == 24
    gone = page.locator(".pw-stage-whole .pw-gone")
    ghosts = gone.count()
    assert ghosts > 0
    press(page, "Look back at the uncut vine")
    expect(gone).to_have_count(0)
    press(page, "Look back at the uncut vine")
    expect(gone).to_have_count(ghosts)


def test_starting_again_is_asked_for_and_can_be_undone(
    desktop_page: Page, tidy: ExercisePage, tmp_path: Path
) -> None:
    page = desktop_page
    page.goto(tidy.write(tmp_path))
    choose(page)
    press(page, "Shorten every long cane to 5 buds")
    press(page, "Start again")
    expect(page.get_by_role("button", name="No, keep my cuts")).to_be_focused()
    press(page, "No, keep my cuts")
    assert len(cuts_kept(page)) == 24
    press(page, "Start again")
    press(page, "Yes, start again")
    gone = page.locator(".pw-stage-whole .pw-gone")
    expect(gone).to_have_count(0)
    press(page, "Undo")
    assert len(cuts_kept(page)) == 24
    assert gone.count() > 0


def test_going_back_a_pass_is_told_and_charged(
    desktop_page: Page, tidy: ExercisePage, tmp_path: Path
) -> None:
    page = desktop_page
    page.goto(tidy.write(tmp_path))
    choose(page)
    press(page, "Next: Thinning-out pass")
    pick(page, "L6b", "L6")
    press(page, "Cut off here L6b")
    press(page, "Whole vine")
    warning = page.get_by_text("You have gone back a pass.")
    expect(warning).to_be_hidden()
    press(page, "Back a pass")
    expect(warning).to_be_visible()
    pick(page, "L6a")
    press(page, "Leave 5 buds L6a")
    assert said(page).endswith("This cut is out of order.")
    press(page, "Next: Thinning-out pass")
    press(page, "Next: Fine pass")
    press(page, "I am done")
    expect(page.locator(".pw-result")).to_contain_text("How you cut: 95 of 100")


@pytest.mark.parametrize(("sample", "language"), [("tidy", "en"), ("climbing", "es")])
def test_the_plan_made_by_buttons_has_full_points(
    desktop_page: Page, tmp_path: Path, sample: str, language: str
) -> None:
    page, made = desktop_page, ExercisePage(sample, language)
    page.goto(made.write(tmp_path))
    words = made.words()["strings"]
    for one in CUTTING_PASSES:
        for done in (cut for cut in made.plan_cuts if cut.in_pass is one):
            choose(page, str(done.tool), str(done.stub))
            part = made.parts.parts[made.parts.index[done.cut.part]]
            row = pick(page, part.name, part.position.name)
            name = (
                part.name.replace(" above ", " por encima de ") if language == "es" else part.name
            )
            if not isinstance(done.cut, Shortening):
                label = words["exercise.cut.off"]
            else:
                number = "one" if done.cut.buds == 1 else "many"
                label = words[f"exercise.cut.leave.{number}"].format(n=done.cut.buds)
            row.get_by_role("button", name=f"{label} {name}", exact=True).click()
        page.locator(".pw-step .pw-main:visible").click()
    passed = words["exercise.result.passed"].format(score=100)
    heading = page.locator(".pw-result h3").first
    expect(heading).to_have_text(passed)
    expect(heading).to_be_focused()
    scores = stored(page, f"score:{sample}")
    assert (scores["score"], scores["cutting"], scores["passed"]) == (100, 100, True)
    # What could not be helped is said, and the author's reasons are text, not markup.
    lost = page.get_by_text(words["exercise.result.plan-lost.many"].format(n=made.plan.lost))
    assert lost.count() == (1 if made.plan.lost else 0)
    page.locator(".pw-reasons summary").first.click()
    expect(page.locator(".pw-reasons li").first).to_contain_text("<why>")


def test_a_poor_pruning_is_shown_where_and_why(
    phone_page: Page, tidy: ExercisePage, tmp_path: Path
) -> None:
    page = phone_page
    page.goto(tidy.write(tmp_path))
    press(page, "Next: Thinning-out pass")
    press(page, "Next: Fine pass")
    press(page, "I am done")
    result = page.locator(".pw-result")
    expect(result.locator("h3").first).to_have_text("Not passed yet: 0 of 100")
    finding = result.locator(".pw-finding").first
    expect(finding).to_contain_text("Must rule")
    expect(finding.get_by_role("link")).to_have_attribute("href", re.compile(r"^rules/"))
    finding.get_by_role("button").first.click()
    here = result.get_by_text("You are looking at position L6.")
    expect(here).to_be_visible()
    press(page, "Change my cuts")
    expect(result).to_be_hidden()
    press(page, "I am done")
    press(page, "Try again")
    expect(page.locator(".pw-step-title")).to_have_text("Rough pass: step 1 of 3")


def test_numbers_on_the_drawing_are_those_of_the_reasons(
    phone_page: Page, tidy: ExercisePage, tmp_path: Path
) -> None:
    page = phone_page
    page.goto(tidy.write(tmp_path))
    for name in ("Next: Thinning-out pass", "Next: Fine pass", "I am done"):
        press(page, name)
    result = page.locator(".pw-result")
    result.locator(".pw-finding").first.get_by_role("button").first.click()
    drawn = result.locator(".pw-marks .pw-mark")
    assert drawn.count() > 0
    listed = result.locator("[data-number]")
    numbers = listed.evaluate_all("all => all.map((one) => one.dataset.number)")
    assert len(numbers) == len(set(numbers))
    assert set(drawn.all_inner_texts()) - {"\u2026"} <= set(numbers)
    # Each leads to its reason.
    spot = drawn.filter(has_text=re.compile(r"^1$")).bounding_box()
    assert spot is not None
    page.touchscreen.tap(spot["x"] + spot["width"] / 2, spot["y"] + spot["height"] / 2)
    expect(result.locator('[data-number="1"]')).to_be_focused()
    # Nothing was cut here; in the same frame the plan has its cuts, and no numbers.
    assert result.locator(".pw-stage-compare .pw-gone").count() == 0
    result.get_by_label("Best plan").check()
    assert result.locator(".pw-stage-compare .pw-gone").count() > 0
    expect(drawn).to_have_count(0)


def test_work_is_taken_up_after_a_reload(
    phone_page: Page, tidy: ExercisePage, tmp_path: Path
) -> None:
    page = phone_page
    page.goto(tidy.write(tmp_path))
    choose(page, "loppers", "long")
    press(page, "Next: Thinning-out pass")
    pick(page, "R2b", "R2")
    press(page, "Cut off here R2b")
    page.locator(".pw-measures summary").click()
    closed = "JSON.parse(localStorage['pencilwood:work:tidy']).work.measuresOpen === false"
    page.wait_for_function(closed)
    page.reload()
    expect(page.locator(".pw-step-title")).to_contain_text("Thinning-out pass")
    expect(page.locator(".pw-position-title")).to_contain_text("R2")
    expect(page.locator(".pw-pieces [data-piece=R2b]")).to_contain_text("Gone")
    expect(pick(page, "R2b")).to_contain_text("Gone")
    expect(page.locator("[data-how=tool]")).to_contain_text("Loppers")
    expect(page.locator("[data-how=stub]")).to_contain_text("A long stub")
    expect(page.locator(".pw-measures dl")).to_be_hidden()
    expect(page.get_by_text("does not save your work")).to_be_hidden()


def test_it_works_unsaved_and_says_so(phone_page: Page, tidy: ExercisePage, tmp_path: Path) -> None:
    refuse = "Object.defineProperty(window, 'localStorage', {get() { throw new Error('no') }})"
    phone_page.add_init_script(refuse)
    phone_page.goto(tidy.write(tmp_path))
    choose(phone_page)
    press(phone_page, "Shorten every long cane to 5 buds")
    assert said(phone_page).startswith("24 canes shortened.")
    expect(phone_page.get_by_text("does not save your work")).to_be_visible()


def test_the_controls_can_be_taken_away_again(
    desktop_page: Page, project: Path, tidy: ExercisePage, tmp_path: Path
) -> None:
    page = desktop_page
    files = "http://127.0.0.1:9/"

    def serve(route: Route) -> None:
        path = route.request.url.removeprefix(files)
        kind = "text/javascript" if path.endswith(".mjs") else "text/html"
        route.fulfill(body=(project / path).read_text("utf-8") if path else "", content_type=kind)

    page.route(f"{files}**", serve)
    page.goto(files)
    body = re.sub(r"<(meta|link)[^>]*>", "", Path(tidy.write(tmp_path)[7:]).read_text("utf-8"))
    page.set_content(re.sub(r"<script src=.*?</script>", "", body))
    before = page.inner_html(".pw-exercise")
    page.evaluate(
        f"""async () => {{
            const {{ Exercise }} = await import("{files}site_assets/js/exercise.mjs");
            const one = new Exercise(document.querySelector(".pw-exercise"));
            one.bind();
            document.querySelector(".pw-pass-tools button").click();
            for (const value of ["saw", "right"])
                document.querySelector(`[data-value=${{value}}]`).click();
            window.cut = document.querySelectorAll(".pw-gone").length;
            one.destroy();
        }}"""
    )
    assert page.evaluate("window.cut") > 0
    after = re.sub(r' (pw-offered|pw-gone|pw-far)(?=[" ])', "", page.inner_html(".pw-exercise"))
    assert after == before
