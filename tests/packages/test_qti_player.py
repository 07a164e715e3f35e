"""Every item of every demo quiz, played by an independent player in both languages."""

from __future__ import annotations

import itertools
import random
from collections.abc import Iterator
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from browser import DESKTOP, watched_page
from pencilwood.packages.qti.markup import identifier
from pencilwood.quiz.compiled import compile_quiz
from pencilwood.quiz.made import Choices, MadeQuestion, Ordering, Pruning, Tapping
from qti_demo import (
    LANGUAGES,
    QUIZZES,
    Packed,
    Point,
    all_packed,
    is_within,
    packed,
    place_to_tap,
    polygons,
)
from qti_player import Marked, Player

pytestmark = pytest.mark.browser
RANDOM_ANSWERS = 12
LEAST_ON_WOOD = 0.25


@pytest.fixture(scope="module")
def player(browser: Browser, npm: str) -> Iterator[Player]:
    """One page for all items; a script error or a foreign request fails the last test."""
    for page in watched_page(browser, viewport=DESKTOP):
        yield Player(page, all_packed())


@pytest.fixture(params=[(quiz, spoken) for quiz in QUIZZES for spoken in LANGUAGES], ids="-".join)
def one(request: pytest.FixtureRequest) -> Packed:
    return packed(*request.param)


def test_every_answer_is_marked_and_explained_as_in_the_handbook(
    player: Player, one: Packed
) -> None:
    compiled = {q["id"]: q for q in compile_quiz(one.made, one.language)["questions"]}  # type: ignore[attr-defined]
    for slug, root in one.items():
        question = one.question(slug)
        assert player.play(one, f"items/{slug}.xml") == root.attrib["identifier"]
        if isinstance(question.body, Pruning):
            continue
        answers = [*possible_answers(question), None]
        ours = player.ours(compiled[slug], answers)
        marked = player.answer([in_the_item(question, answer) for answer in answers])
        for answer, right, found in zip(answers, ours, marked, strict=True):
            assert found.score == (1 if right else 0), (slug, answer)
            assert len(found.shown) == 1, (slug, answer)
            for text in expected(question, answer, right):
                assert flat(text) in found.shown[0], (slug, answer)
        assert sum(ours) >= 1
        assert not ours[-1], "no answer is never right"


def possible_answers(question: MadeQuestion) -> list[Any]:
    """All answers in the handbook's terms; of orders the right one and some others."""
    body = question.body
    if isinstance(body, Choices):
        return list(range(len(body.options)))
    if isinstance(body, Tapping):
        return [target.name for target in body.targets]
    assert isinstance(body, Ordering)
    chance = random.Random(question.slug)
    orders = [list(order) for order in itertools.permutations(range(len(body.items)))]
    return [list(body.order), *chance.sample(orders, RANDOM_ANSWERS)]


def in_the_item(question: MadeQuestion, answer: Any) -> Any:
    """The same answer as a response of the item."""
    if answer is None:
        return None
    if isinstance(question.body, Choices):
        return f"choice-{answer + 1}"
    if isinstance(question.body, Ordering):
        return [f"step-{number + 1}" for number in answer]
    return identifier(answer)


def expected(question: MadeQuestion, answer: Any, right: bool) -> Iterator[str]:
    """What must be said after an answer."""
    body = question.body
    if isinstance(body, Choices):
        yield body.options[body.right].why
        if answer is not None:
            yield body.options[answer].why
    elif isinstance(body, Ordering):
        yield from (body.items[number].why for number in body.order)
    elif isinstance(body, Tapping):
        yield body.why
        if answer is not None and not right:
            yield next(body.whys[t.kind] for t in body.targets if t.name == answer)


def flat(text: str) -> str:
    return " ".join(text.split())


def test_what_must_come_off_is_right_only_as_a_whole(player: Player) -> None:
    pruned = [
        (one, slug, set(polygons(root)))
        for one in all_packed()
        for slug, root in one.items()
        if isinstance(one.question(slug).body, Pruning)
    ]
    assert pruned, "no demo quiz has a vine of which something must come off"
    chance = random.Random(5)
    for one, slug, names in pruned:
        # Diseased and dead wood is what a must-rule forbids to keep; see the rule's own tests.
        vine = one.handbook.case_by_slug[slug]
        sick = {p.name for p in vine.parts.parts if p.piece.condition in ("diseased", "dead")}
        right = sorted({identifier(name) for name in sick} & names)
        tries: list[list[str]] = [right, right[::-1], right[1:], [*right, *(names - set(right))]]
        tries += [chance.sample(sorted(names), len(right)) for _ in range(RANDOM_ANSWERS)]
        player.play(one, f"items/{slug}.xml")
        for given, found in zip(tries, player.answer(tries), strict=True):
            assert found.score == (1 if set(given) == set(right) else 0), given
            assert len(found.shown) == 1
        assert player.answer([None])[0].score == 0


def test_a_click_on_the_screen_counts(player: Player) -> None:
    """The right answer of each item, clicked; and some wrong ones."""
    one = packed("before-the-first-day", "en")
    for slug, root in one.items():
        body = one.question(slug).body
        player.play(one, f"items/{slug}.xml")
        if isinstance(body, Choices):
            for number, option in enumerate(body.options, start=1):
                player.page.locator(f"qti-simple-choice[identifier=choice-{number}]").click()
                found = player.mark()
                player.close_feedback()
                assert (found.response, found.score) == (f"choice-{number}", int(option.right))
        if isinstance(body, Tapping):
            hotspots = polygons(root)
            right = {identifier(name) for name in body.right}
            for name in [*sorted(right), *sorted(set(hotspots) - right)[:4]]:
                place = place_to_tap(name, hotspots, alone=True)
                found = clicked(player, place)
                assert (found.response, found.score) == (name, int(name in right))


def test_steps_dragged_into_their_places_are_right(player: Player) -> None:
    one = packed("before-the-first-day", "es")
    body = one.question("order-of-the-passes").body
    assert isinstance(body, Ordering)
    player.page.set_viewport_size({"width": 1000, "height": 1600})  # all places on the screen
    player.play(one, "items/order-of-the-passes.xml")
    for place, number in enumerate(body.order):
        drag(player.page, f"step-{number + 1}", place)
    found = player.mark()
    assert found.score == 1
    assert found.response == [f"step-{number + 1}" for number in body.order]


def drag(page: Page, step: str, place: int) -> None:
    """Drag a step into a place; again when the player, still sliding things about, lost it."""
    for _ in range(4):
        page.wait_for_timeout(350)  # the player slides the other steps together
        drag_once(page, step, place)
        page.wait_for_timeout(350)
        if page.evaluate(IN_PLACE, [step, place]):
            return
    page.wait_for_function(IN_PLACE, arg=[step, place], timeout=3000)


IN_PLACE = (
    "([step, place]) => item.variables.find((one) => one.identifier === 'RESPONSE')"
    ".value?.[place] === step"
)


def drag_once(page: Page, step: str, place: int) -> None:
    start = page.locator(f"qti-simple-choice[identifier={step}]").first.bounding_box()
    end = page.locator("drop-list").nth(place).bounding_box()
    assert start is not None
    assert end is not None
    middle = start["x"] + start["width"] / 2, start["y"] + start["height"] / 2
    page.mouse.move(*middle)
    page.mouse.down()
    page.mouse.move(middle[0] + 10, middle[1] + 5, steps=3)
    page.mouse.move(end["x"] + end["width"] / 2, end["y"] + end["height"] / 2, steps=12)
    page.mouse.up()


def clicked(player: Player, place: Point | None) -> Marked:
    assert place is not None
    image = player.page.locator("qti-hotspot-interaction img").first
    image.scroll_into_view_if_needed()
    box = image.bounding_box()
    assert box is not None
    x, y = box["x"] + place[0], box["y"] + place[1]
    size = player.page.viewport_size
    assert size is not None
    if not 0 <= y < size["height"]:
        player.page.mouse.wheel(0, y - size["height"] / 2)
        player.page.wait_for_timeout(100)
        box = image.bounding_box()
        assert box is not None
        x, y = box["x"] + place[0], box["y"] + place[1]
    player.page.mouse.click(x, y)
    found = player.mark()
    player.close_feedback()
    return found


ON_THE_WOOD = """([svg, hotspots]) => {
  document.body.innerHTML = svg;
  const drawing = document.querySelector("svg");
  const [left, top, width] = drawing.getAttribute("viewBox").split(" ").map(Number);
  const scale = width / Number(drawing.getAttribute("width"));
  const woods = Object.groupBy(drawing.querySelectorAll("[data-part] .pw-wood"),
    (one) => one.closest("[data-part]").getAttribute("data-part").replaceAll(" ", "-"));
  const isOn = (name, [x, y]) => {
    const point = new DOMPoint(left + x * scale, top + y * scale);
    return (woods[name] ?? []).some((wood) => wood.isPointInFill(point));
  };
  return hotspots.map(([name, places]) =>
    places.filter((place) => isOn(name, place)).length / places.length);
}"""


def test_hotspots_lie_on_the_wood_that_they_are_called_after(player: Player) -> None:
    """Where the hotspots are, the drawing has that piece and not its neighbour."""
    for one in [packed("before-the-first-day", "en"), packed("first-week", "es")]:
        for slug, root in one.items():
            wood = {
                name: spread_over(points)
                for name, points in polygons(root).items()
                if name[0] in "LR"
            }
            if not wood:
                continue
            image = next(node for node in root.iter() if node.tag.endswith("}img"))
            svg = one.files[image.attrib["src"].removeprefix("../")].decode()
            shares = player.page.evaluate(ON_THE_WOOD, [svg, list(wood.items())])
            for name, share in zip(wood, shares, strict=True):
                # For the finger canes are wider than drawn, spindly ones more than twice.
                assert share > LEAST_ON_WOOD, (slug, name, share)


def spread_over(polygon: list[Point]) -> list[Point]:
    """Places all over a polygon."""
    xs, ys = zip(*polygon, strict=True)
    places = itertools.product(range(min(xs), max(xs), 4), range(min(ys), max(ys), 4))
    return [place for place in places if is_within(place, polygon)]


def test_drawings_are_seen(player: Player) -> None:
    """An SVG file in an image has the size that the item gives it."""
    one = packed("first-week", "es")
    seen = 0
    for slug, root in one.items():
        if not any(node.tag.endswith("}img") for node in root.iter()):
            continue
        player.play(one, f"items/{slug}.xml")
        size = player.page.evaluate(
            "() => { const one = item.querySelector('img');"
            " return [one.naturalWidth, one.naturalHeight, one.width, one.height]; }"
        )
        image = next(node for node in root.iter() if node.tag.endswith("}img"))
        given = [int(image.attrib["width"]), int(image.attrib["height"])]
        assert size[:2] == given, slug
        assert size[2] > 0, slug
        seen += 1
    assert seen


def test_the_player_takes_the_whole_test(player: Player) -> None:
    one = packed("crew-leader", "en")
    page: Page = player.page
    page.evaluate(
        """() => { document.body.innerHTML = '<qti-test navigate="item"><test-navigation>'
        + '<test-container test-url="/crew-leader-en/assessment.xml"></test-container>'
        + '</test-navigation></qti-test>'; }"""
    )
    shown = page.locator("qti-assessment-item")
    shown.first.wait_for(state="attached")
    first = next(slug for slug, _ in one.items())
    assert shown.first.get_attribute("identifier") == identifier(
        "pencilwood", "crew-leader", first, "en"
    )
    assert page.locator("qti-assessment-item-ref").count() == len(list(one.items()))
