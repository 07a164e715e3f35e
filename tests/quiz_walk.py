"""How a learner goes through the small quiz of the tests."""

from playwright.sync_api import Page, expect

from exercise_page import choose, pick
from quiz_page import QuizPage

# The places of the right answers among the choices of the small quiz.
RIGHT_COUNT, RIGHT_SAFE = 1, 2


def press(page: Page, name: str) -> None:
    """Press the first button with this name."""
    page.get_by_role("button", name=name, exact=True).first.click()


def start(page: Page, way: str = "Take the test") -> None:
    """Go through the quiz's door."""
    press(page, way)
    expect(page.locator(".pw-ask h2")).to_have_text("1 of 5: Count")


def choice(page: Page, number: int) -> None:
    """Choose one of the answers."""
    page.locator(".pw-ask-choices input").nth(number).check()


def put_in_order(page: Page) -> None:
    """From fine, rough, thinning out to the right order."""
    press(page, "Down Fine pass: cut each cane that stays to a short spur")
    press(page, "Down Fine pass: cut each cane that stays to a short spur")


def prune_as_planned(page: Page, quiz: QuizPage) -> None:
    """Make every cut of the plan in the exercise of the quiz."""
    choose(page)
    sheet = quiz.exercise.sheet_json()
    positions = [one["name"] for one in sheet["positions"]]
    for in_pass in ("rough", "thinning-out", "fine"):
        for done in quiz.exercise.plan_cuts:
            if str(done.in_pass) != in_pass:
                continue
            part = done.cut.part
            position = part.rstrip("abcdefghijklmnopqrstuvwxyz") if " " not in part else part[:2]
            assert position in positions
            page.locator(".pw-nav select:visible").select_option(label=position)
            buds = getattr(done.cut, "buds", None)
            cut_in_list(page, part, buds)
        page.locator(".pw-step .pw-main:visible").click()


def cut_in_list(page: Page, part: str, buds: int | None) -> None:
    """Cut one piece of the position that is looked at, by the controls of the list."""
    pick(page, part)
    if buds is None:
        press(page, f"Cut off here {part}")
        return
    leave = page.get_by_role("button", name=f"Leave {buds} {'bud' if buds == 1 else 'buds'} {part}")
    if leave.count() > 0:
        leave.first.click()
        return
    page.get_by_label(f"Buds to leave {part}", exact=True).select_option(str(buds))
    press(page, f"Cut {part}")


def answer_all(page: Page, quiz: QuizPage, *, right: bool = True) -> None:
    """Answer the test, up to the last look before it is handed in."""
    choice(page, RIGHT_COUNT if right else 0)
    press(page, "Next question")
    page.locator(".pw-ask-part select").select_option("L6a" if right else "L6m")
    press(page, "Next question")
    if right:
        put_in_order(page)
    press(page, "Next question")
    choice(page, RIGHT_SAFE if right else 0)
    press(page, "Next question")
    if right:
        prune_as_planned(page, quiz)
    press(page, "Hand in")
