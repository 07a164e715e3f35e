"""What came of a pruning, and what is kept of it."""

import re
from pathlib import Path

import pytest
from playwright.sync_api import Page, Route, expect

from exercise_page import ExercisePage, choose, pick, press, said, stored
from pencilwood.vine.passes import CUTTING_PASSES
from pencilwood.vine.wood import Shortening

pytestmark = pytest.mark.browser


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
            name = part.name.replace(" above ", " arriba de ") if language == "es" else part.name
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


def test_a_close_up_of_the_result_names_the_place_that_it_shows(
    phone_page: Page, tidy: ExercisePage, tmp_path: Path
) -> None:
    page = phone_page
    page.goto(tidy.write(tmp_path))
    for _ in range(3):
        page.locator(".pw-step .pw-main:visible").click()
    look, named = page.locator(".pw-compare-look"), page.locator(".pw-stage-compare .pw-mark-here")
    expect(named).to_have_count(0)
    for position in tidy.parts.positions[:2]:
        look.get_by_role("button", name="Next place").click()
        expect(named).to_have_text(position.name)
        expect(page.locator(".pw-compare-here")).to_contain_text(position.name)
    look.get_by_role("button", name="Whole vine").click()
    expect(named).to_have_count(0)


def test_who_cuts_nothing_is_not_praised_for_how_they_cut(
    phone_page: Page, tidy: ExercisePage, tmp_path: Path
) -> None:
    page = phone_page
    page.goto(tidy.write(tmp_path))
    for _ in range(3):
        page.locator(".pw-step .pw-main:visible").click()
    result = page.locator(".pw-result")
    expect(result).to_contain_text("You made no cut")
    expect(result).not_to_contain_text("How you cut")
    press(page, "Try again")
    choose(page, "saw")
    press(page, "Shorten every long cane to 5 buds")
    for _ in range(3):
        page.locator(".pw-step .pw-main:visible").click()
    expect(result).to_contain_text("How you cut:")
    # A saw on canes, thinner and thicker: one line in which each is named once, and can be seen.
    line = result.locator("section", has_text="Wrong tool").locator("li")
    expect(line).to_contain_text("A saw tears thin wood: take hand shears.")
    names = line.inner_text().split(":")[0].split(", ")
    assert len(names) == len(set(names)) > 0
    line.get_by_role("button", name="Show me").click()
    expect(page.locator(".pw-stage-compare")).to_be_focused()


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
    expect(finding).to_contain_text("Must be kept")
    expect(finding.get_by_role("link")).to_have_attribute("href", re.compile(r"^rules/"))
    finding.get_by_role("button").first.click()
    here = result.get_by_text("You are looking at place L6.")
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
    drawn = result.locator(".pw-marks .pw-mark:not(.pw-mark-here)")
    assert drawn.count() > 0
    listed = result.locator("[data-number]")
    numbers = listed.evaluate_all("all => all.map((one) => one.dataset.number)")
    assert len(numbers) == len(set(numbers))
    assert set(drawn.all_inner_texts()) <= set(numbers)
    # Each leads to its reason.
    spot = drawn.filter(has_text=re.compile(r"^1$")).bounding_box()
    assert spot is not None
    page.touchscreen.tap(spot["x"] + spot["width"] / 2, spot["y"] + spot["height"] / 2)
    expect(result.locator('[data-number="1"]')).to_be_focused()
    # Nothing was cut here; in the same frame the plan has its cuts, and no numbers.
    assert result.locator(".pw-stage-compare .pw-gone").count() == 0
    result.get_by_role("radio", name="Best plan").check()
    assert result.locator(".pw-stage-compare .pw-gone").count() > 0
    expect(drawn).to_have_count(0)


LINES_END_ON_WOOD = """(part) => {
  const stage = document.querySelector(".pw-stage-compare");
  const wood = stage.querySelector(`[data-part="${part}"]`).getBoundingClientRect();
  return [...stage.querySelectorAll(".pw-mark-lines circle")].some((dot) => {
    const at = dot.getBoundingClientRect();
    const [x, y] = [at.x + at.width / 2, at.y + at.height / 2];
    return wood.left <= x && x <= wood.right && wood.top <= y && y <= wood.bottom;
  });
}"""


def test_each_remark_is_shown_on_its_own_wood(
    phone_page: Page, tidy: ExercisePage, tmp_path: Path
) -> None:
    page = phone_page
    page.goto(tidy.write(tmp_path))
    for name in ("Next: Thinning-out pass", "Next: Fine pass", "I am done"):
        press(page, name)
    result = page.locator(".pw-result")
    for fold in result.locator(".pw-finding details").all():
        fold.evaluate("one => { one.open = true; }")
    lines = result.locator(".pw-finding [data-number]:has(button)")
    assert lines.count() > 20
    for line in lines.all():
        number = line.get_attribute("data-number")
        part = re.search(r"\b([LR]\d[a-z])\b", line.inner_text())
        assert part is not None
        line.get_by_role("button").click()
        assert result.locator(".pw-mark-chosen").all_inner_texts() == [number]
        picked = result.locator(".pw-stage-compare .pw-picked")
        assert {one.get_attribute("data-part") for one in picked.all()} == {part[1]}
        assert page.evaluate(LINES_END_ON_WOOD, part[1]), part[1]
        # From near no remark of another place is in the way.
        here = result.locator(".pw-compare-here").inner_text()
        assert part[1][:2] in here


def test_a_remark_turns_the_drawing_once(
    desktop_page: Page, tidy: ExercisePage, tmp_path: Path
) -> None:
    page = desktop_page
    page.goto(tidy.write(tmp_path))
    for name in ("Next: Thinning-out pass", "Next: Fine pass", "I am done"):
        press(page, name)
    result = page.locator(".pw-result")
    marks = result.locator(".pw-marks")
    # Whoever looks at the plan comes back to their own vine, as its remarks speak of it.
    result.get_by_role("radio", name="Best plan").check()
    expect(marks.locator(".pw-mark")).to_have_count(0)
    marks.evaluate(
        "(layer) => { window.seen = []; const see = (all) => window.seen.push(...all);"
        " new MutationObserver(see).observe(layer, {childList: true}); }"
    )
    result.get_by_role("button", name="Show me").first.click()
    expect(result.get_by_role("radio", name="Your vine")).to_be_checked()
    expect(marks.locator(".pw-mark-chosen")).to_have_count(1)
    assert page.evaluate("window.seen.length") == 1


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
