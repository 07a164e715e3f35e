"""Tool and place of a cut are asked in their moment, near the thumb."""

from pathlib import Path

import pytest
from playwright.sync_api import Locator, Page, expect

from exercise_page import ExercisePage, cuts_kept, pick, press, stored

pytestmark = pytest.mark.browser


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


def test_going_on_does_not_lose_a_cut_that_waits_for_its_answer(
    phone_page: Page, tidy: ExercisePage, tmp_path: Path
) -> None:
    page = phone_page
    page.goto(tidy.write(tmp_path))
    press(page, "Shorten every long cane to 5 buds")
    expect(asked(page)).to_be_in_viewport(ratio=1)
    go_on = page.locator(".pw-step .pw-main:visible").first
    go_on.click()
    expect(page.get_by_text("Your cut waits for an answer.")).to_be_visible()
    expect(page.get_by_role("heading", name="Which tool do you hold?")).to_be_focused()
    expect(asked(page)).to_be_in_viewport(ratio=1)
    press(page, "Hand shears")
    press(page, "A finger's width above it")
    assert len(cuts_kept(page)) == 24
    go_on.click()
    assert stored(page, "work:tidy")["work"]["history"].get("pass") == "thinning-out"
    # A tool that is only looked at holds nothing up.
    page.locator("[data-how=tool]").click()
    go_on.click()
    expect(asked(page)).to_have_count(0)


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


def test_a_question_names_the_cut_that_waits_and_its_ring_is_marked(
    phone_page: Page, tidy: ExercisePage, tmp_path: Path
) -> None:
    page = phone_page
    page.goto(tidy.write(tmp_path))
    held = page.locator(".pw-stage-near .pw-held")
    pick(page, "L6a", "L6")
    press(page, "Leave 2 buds L6a")
    expect(page.get_by_role("heading", name="L6a: Leave 2 buds.")).to_be_focused()
    expect(held).to_have_count(1)
    expect(held).to_have_attribute("data-cut", "L6a")
    expect(held).to_have_attribute("data-buds", "2")
    press(page, "Hand shears")
    expect(page.get_by_role("heading", name="L6a: Leave 2 buds. Where do you cut")).to_be_focused()
    expect(held).to_have_count(1)
    press(page, "Not now")
    expect(held).to_have_count(0)
    # A tool that is only looked at speaks of no cut.
    page.locator("[data-how=tool]").click()
    expect(page.get_by_role("heading", name="Which tool do you hold?", exact=True)).to_be_visible()
