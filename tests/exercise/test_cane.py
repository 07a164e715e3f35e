"""A cane-pruned vine chosen, cut and tied in Chromium: by fingers on a phone, by keys on a desk."""

import re
from pathlib import Path

import pytest
from playwright.sync_api import Locator, Page, expect

from cane_vines import cane_vine
from exercise_page import ExercisePage, choose, pick, said, stored
from pencilwood.vine.model import Pass
from pencilwood.vine.passes import DoneCut
from pencilwood.vine.wood import Shortening, Tie
from vines import SAMPLES

pytestmark = pytest.mark.browser


class Hand:
    """Somebody at the exercise, who taps or presses Enter."""

    def __init__(self, page: Page, made: ExercisePage, *, taps: bool) -> None:
        self.page, self.made, self.taps = page, made, taps
        self.words = made.words()["strings"]

    def press(self, button: Locator) -> None:
        if self.taps:
            button.tap()
        else:
            button.press("Enter")

    def go_on(self) -> None:
        self.press(self.page.locator(".pw-step .pw-main:visible"))

    def do(self, done: DoneCut) -> None:
        part = self.made.parts.parts[self.made.parts.index[done.cut.part]]
        row = pick(self.page, part.name, part.position.name)
        if isinstance(done.cut, Shortening) and done.cut.buds > 5:
            # So many buds are chosen from a list.
            row.locator("select").select_option(value=str(done.cut.buds))
            self.press(row.locator(".pw-other-cut button"))
        else:
            # The name of the piece follows, in words of the language.
            label = self.label(done).replace("\u00a0", " ")
            name = re.compile(f"^{re.escape(label)} ")
            self.press(row.get_by_role("button", name=name))

    def label(self, done: DoneCut) -> str:
        cut = done.cut
        if isinstance(cut, Tie):
            return str(self.words[f"exercise.tie.to.{cut.side}"])
        if isinstance(cut, Shortening):
            key = f"exercise.cut.leave.{'one' if cut.buds == 1 else 'many'}"
            return str(self.words[key].format(n=cut.buds))
        return str(self.words["exercise.cut.off"])

    def prune(self) -> None:
        for one in (Pass.THINNING_OUT, Pass.FINE):
            for done in (cut for cut in self.made.plan_cuts if cut.in_pass is one):
                choose(self.page, str(done.tool), str(done.stub))
                self.do(done)
            self.go_on()

    def tied_in(self, stage: str) -> Locator:
        """The canes that lie along the wire there, each without its bend."""
        return self.page.locator(f".pw-stage-{stage} .pw-tied-now:not(.pw-bend)")


@pytest.fixture(params=[("phone_page", "es"), ("desktop_page", "en")], ids=lambda one: one[0])
def hand(request: pytest.FixtureRequest, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Hand:
    monkeypatch.setitem(SAMPLES, "canes", cane_vine)
    on, language = request.param
    page: Page = request.getfixturevalue(on)
    made = ExercisePage("canes", language)
    page.goto(made.write(tmp_path))
    return Hand(page, made, taps=on == "phone_page")


def test_the_plan_has_full_points_once_its_canes_are_tied(hand: Hand) -> None:
    hand.prune()
    ties = [one for one in hand.made.plan_cuts if isinstance(one.cut, Tie)]
    assert len(ties) == 2
    for number, done in enumerate(ties, start=1):
        hand.do(done)
        # Where the canes stood there is a cane along the wire, as long as what was left.
        expect(hand.tied_in("near")).to_have_count(number)
    hand.page.locator(".pw-see-whole:visible").click()
    laid = hand.tied_in("whole").first.bounding_box()
    assert laid is not None
    assert laid["width"] > 3 * laid["height"]
    hand.go_on()
    heading = hand.page.locator(".pw-result h3").first
    expect(heading).to_have_text(hand.words["exercise.result.passed"].format(score=100))
    scores = stored(hand.page, "score:canes")
    assert (scores["score"], scores["cutting"], scores["passed"]) == (100, 100, True)


def test_the_chosen_place_is_named_once(hand: Hand) -> None:
    """Names of a cane vine stand beside its head, apart from the wood that they name."""
    whole = hand.page.locator(".pw-stage-whole")
    chosen = whole.locator(".pw-mark-here")
    expect(chosen).to_have_text("L2")
    names = whole.locator(".pw-place-name")
    expect(names.filter(has_text="L2")).to_be_hidden()
    expect(names.filter(has_text="R1")).to_be_visible()


def test_canes_tied_to_one_side_and_loose_ones_are_charged(hand: Hand) -> None:
    hand.prune()
    cuts = (one.cut for one in hand.made.plan_cuts)
    first, second = (cut for cut in cuts if isinstance(cut, Tie))
    for part in (first.part, second.part):
        hand.do(DoneCut(Tie(part, first.side), Pass.TIE))
    hand.go_on()
    scores = stored(hand.page, "score:canes")
    assert (scores["score"], scores["cutting"]) == (100, 92)
    told = hand.made.words()["rules"]["cane-not-tied"]["messages"]["both-to-one-side"]
    expect(hand.page.locator(".pw-result")).to_contain_text(told)


def test_nothing_is_cut_while_canes_are_tied(hand: Hand) -> None:
    hand.prune()
    tie = next(one for one in hand.made.plan_cuts if isinstance(one.cut, Tie))
    part = hand.made.parts.parts[hand.made.parts.index[tie.cut.part]]
    pick(hand.page, part.name, part.position.name)
    near = hand.page.locator(".pw-stage-near")
    expect(near).to_be_visible()
    expect(near.locator(".pw-offered")).to_have_count(0)
    expect(hand.page.locator(".pw-how")).to_be_hidden()
    near.click(position={"x": 4, "y": 4})
    assert said(hand.page) == hand.words["exercise.tie.missed"]


def test_wrong_cuts_are_told_by_the_rules_of_the_form(hand: Hand) -> None:
    """Three canes kept at full length far out, no spur, none tied."""
    kept = {"L2d": 10, "R3c": 10, "R3b": 10}
    done = [Shortening(part, buds) for part, buds in kept.items()]
    choose(hand.page, "shears", "right")
    hand.go_on()
    for cut in done:
        hand.do(DoneCut(cut, Pass.FINE))
    hand.go_on()
    hand.go_on()
    scores = stored(hand.page, "score:canes")
    assert not scores["passed"]
    result = hand.page.locator(".pw-result")
    rules = hand.made.words()["rules"]
    for name in ("wrong-cane-count", "wrong-spur-count", "cane-far-from-head", "cane-not-tied"):
        expect(result).to_contain_text(rules[name]["title"])


LARGE_ENOUGH_PX_PER_MM = 0.4
"""So a cane, drawn twice as thick as it is, takes some 8 px, and its neighbour 6 cm off 24."""


def test_the_close_up_begins_near_the_head_where_pieces_are_told_apart(hand: Hand) -> None:
    pick(hand.page, "L1a", "L1")
    near = hand.page.locator(".pw-stage-near svg")
    assert near.evaluate("svg => svg.getScreenCTM().a") > LARGE_ENOUGH_PX_PER_MM


OUT_OF_THE_PICTURE_OR_UNDER_WORDS = """
stage => {
  const box = stage.getBoundingClientRect();
  const seen = one => one.checkVisibility({ visibilityProperty: true }) && !one.closest(".pw-gone");
  const laid = [...stage.querySelectorAll(".pw-tied-now:not(.pw-bend) .pw-wood")].filter(seen)
    .map(one => one.getBoundingClientRect());
  const words = [...stage.querySelectorAll(".pw-wire-name, .pw-wire-height")].filter(seen)
    .map(one => one.getBoundingClientRect()).filter(one => one.left < box.right);
  const over = (a, b) =>
    a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
  return [
    laid.length > 10,
    laid.filter(one => one.left < box.left || one.right > box.right).length,
    laid.filter(one => words.some(other => over(one, other))).length,
    words.filter(one => one.right > box.right).length,
  ];
}
"""


def test_the_result_shows_tied_canes_to_their_tips_and_no_words_over_them(hand: Hand) -> None:
    hand.prune()
    for done in (one for one in hand.made.plan_cuts if isinstance(one.cut, Tie)):
        hand.do(done)
    hand.go_on()
    stage = hand.page.locator(".pw-stage-compare")
    assert stage.evaluate(OUT_OF_THE_PICTURE_OR_UNDER_WORDS) == [True, 0, 0, 0]


def test_loose_canes_are_told_of_together_in_words_for_one_and_for_many(hand: Hand) -> None:
    hand.prune()
    hand.go_on()
    told = hand.made.words()["rules"]["cane-not-tied"]["messages"]["not-tied"]
    canes = [one.cut.part for one in hand.made.plan_cuts if isinstance(one.cut, Tie)]
    line = hand.page.locator(".pw-result li").filter(has_text=told)
    expect(line).to_have_count(1)
    for name in canes:
        expect(line).to_contain_text(name)
    reasons = hand.page.locator(".pw-reasons li strong").all_text_contents()
    several = [one for one in reasons if "," in one]
    assert several
    if hand.made.language == "es":
        assert all(re.search(r" se \w+aron\b", one) for one in several)
