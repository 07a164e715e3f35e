"""How a learner goes through the exercise and the quiz of a package, in any language."""

import json
import re
from typing import Any

from playwright.sync_api import FrameLocator, Locator, Page, expect

from pencilwood.cases.case import AnswerCut
from pencilwood.vine.passes import CUTTING_PASSES, Pass
from pencilwood.vine.wood import Shortening
from pencilwood.words import say
from scorm_sample import VINE, sample

Part = FrameLocator | Page
"""The page of a package, in the frame of a learning system or alone."""


def state(part: Part) -> Locator:
    """The line that says how it stands with the learning system."""
    return part.locator("[data-pencilwood-package]")


def step_on(part: Part) -> None:
    """The next pass, or done."""
    part.locator(".pw-step .pw-main:visible").click()


def answer(in_pass: Pass | None = None) -> list[AnswerCut]:
    """The trainer's cuts, of one pass or of all."""
    cuts = sample().case_by_slug[VINE].case.answer
    return [one for one in cuts if in_pass in (None, one.done.in_pass)]


def cut(part: Part, one: AnswerCut, language: str = "en") -> None:
    """One cut, by the list of pieces."""
    parts = sample().case_by_slug[VINE].parts
    wood = parts.parts[parts.index[one.done.cut.part]]
    for name, value in (("tool", one.done.tool), ("stub", "right")):
        part.locator(f".pw-how-open[data-how={name}]").click()
        part.locator(f".pw-how-question button[data-value={value}]").click()
    at = [position.name for position in parts.positions].index(wood.position.name)
    part.locator(".pw-nav select").select_option(str(at))
    part.locator(f'.pw-pieces [data-piece="{wood.name}"]').click()
    row = part.locator(f'.pw-piece[data-piece="{wood.name}"]')
    if not isinstance(one.done.cut, Shortening):
        row.get_by_role("button", name=say(language, "exercise.cut.off")).click()
        return
    buds = one.done.cut.buds
    count = "one" if buds == 1 else "many"
    leave = say(language, f"exercise.cut.leave.{count}", n=buds)
    usual = row.get_by_role("button", name=leave)
    if usual.count():
        usual.click()
    else:
        row.locator("select").select_option(str(buds))
        row.get_by_role("button", name=say(language, "exercise.cut.other-press")).last.click()


def prune(part: Part, language: str = "en") -> None:
    """Everything that the trainer cuts, pass by pass, and done."""
    for in_pass in CUTTING_PASSES:
        for one in answer(in_pass):
            cut(part, one, language)
        step_on(part)


def give_up(part: Part) -> None:
    """Done without a cut."""
    for _ in CUTTING_PASSES:
        step_on(part)


def shown_score(part: Part) -> int:
    """The score that the page shows."""
    words = part.locator(".pw-result h3").first.inner_text()
    found = re.search(r": (\d+) ", words)
    assert found is not None, words
    return int(found[1])


def questions(part: Part) -> list[dict[str, Any]]:
    """What the quiz of the page asks."""
    data = json.loads(part.locator("script.pw-quiz-data").inner_text())
    found: list[dict[str, Any]] = data["questions"]
    return found


def press(part: Part, key: str, language: str = "en") -> None:
    """Press the first button with these words of the quiz."""
    name = say(language, f"quiz.{key}")
    part.get_by_role("button", name=name, exact=True).first.click()


def answer_question(part: Part, one: dict[str, Any], right: bool, language: str = "en") -> None:
    """Answer the question that is shown."""
    if one["kind"] == "choice":
        at = [choice["right"] for choice in one["choices"]].index(right)
        part.locator(".pw-ask-choices input").nth(at).check()
    elif one["kind"] == "part":
        names = [target["name"] for target in one["targets"]]
        name = next(name for name in names if (name in one["right"]) is right)
        part.locator(".pw-ask-part select").select_option(name)
    elif one["kind"] == "order":
        wanted = [one["items"][place]["text"] for place in one["order"]]
        sort_items(part, wanted if right else wanted[::-1])
    elif right:
        prune(part, language)
    else:
        give_up(part)


def sort_items(part: Part, wanted: list[str]) -> None:
    """Bring the steps into this order, the first one first."""
    for place, text in enumerate(wanted):
        rows = part.locator(".pw-ask-order li")
        now = rows.all_inner_texts()
        at = next(number for number, row in enumerate(now) if text in row)
        for number in range(at, place, -1):
            rows.nth(number).locator("button").first.click()
    expect(part.locator(".pw-ask-order li").first).to_contain_text(wanted[0])


def practise(part: Part) -> None:
    """Answer and check every question but the last, a vine, and go to the end."""
    press(part, "start.practice")
    for one in questions(part)[:-1]:
        answer_question(part, one, True)
        press(part, "go.check")
        press(part, "go.next")
    press(part, "go.end")
    press(part, "hand-in.yes")


def take_test(part: Part, wrong: tuple[str, ...] = (), language: str = "en") -> None:
    """Answer every question, these ones wrong, and hand in."""
    press(part, "start.test", language)
    asked = questions(part)
    for number, one in enumerate(asked):
        answer_question(part, one, one["id"] not in wrong, language)
        last = number == len(asked) - 1
        press(part, "go.hand-in" if last else "go.next", language)
    press(part, "hand-in.yes", language)
