"""Questions of vines that are not trained as cordons on a trellis."""

import pytest

from pencilwood.cases.quiz import (
    Find,
    NamePart,
    WhichCane,
)
from pencilwood.drawing.scene.wood_text import plate_of
from pencilwood.drawing.views.close_up import window_on_place
from pencilwood.quiz.made import Choices, Picture, Tapping
from pencilwood.quiz.pictures import wood_shown
from quiz_demo import Demo
from quiz_questions import common, made_one, right_text, seen, texts


def test_who_ties_canes_is_asked_what_each_stays_as(demo: Demo) -> None:
    question = made_one(demo, WhichCane(common(), seen("two-new-canes", "L1")))
    assert right_text(question) == "L1a as a renewal spur and L1b as a fruiting cane"
    assert "L1a as a fruiting cane and L1b as a renewal spur" in texts(question)
    assert isinstance(question.body, Choices)
    whys = {option.text: option.why for option in question.body.options}
    assert "above the head" in whys["L1a as a renewal spur and L1b as a fruiting cane"]
    turned = whys["L1a as a fruiting cane and L1b as a renewal spur"]
    assert "Wood is left above this fruiting cane" in turned
    # The plan leaves just that, so the question and the plan agree.
    vine = demo.vines["two-new-canes"]
    assert vine.plan.left.state("L1a") <= 2 < vine.plan.left.state("L1b")


def test_a_strong_cane_around_a_head_may_stay_with_three_buds(demo: Demo) -> None:
    vine = demo.vines["strong-and-weak-places"]
    three = [p for p in vine.parts.parts if p.is_cane and vine.plan.left.state(p.name) == 3]
    assert three
    for part in three:
        asked = WhichCane(common(), seen("strong-and-weak-places", part.position.name))
        assert right_text(made_one(demo, asked)) == f"Cane {part.name}"


def test_the_window_on_a_place_holds_the_feet_of_its_wood(demo: Demo) -> None:
    """Also around a head, where the place on the tape is not the place on the drawing."""
    for vine in demo.vines.values():
        for position in vine.parts.positions:
            window = window_on_place(vine.parts, position.name)
            shown, _ = wood_shown(Picture(vine.case.slug, "before", position.name), vine)
            foot = plate_of(shown).foot(position)
            assert window.left < foot.x < window.right, (vine.case.slug, position.name)
            assert window.top < foot.y < window.bottom, (vine.case.slug, position.name)


FOUND = [
    ("hanging-spurs", "L3", Find.UPRIGHT_CANE, "L3a"),
    ("the-middle-stays-open", "H1", Find.INWARD_CANE, "H1a"),
    ("two-new-canes", "L1", Find.LAST_YEARS_SPUR, "L1m"),
    # On a high cordon near the arm is up: of R2's canes a stands nearest.
    ("far-hanging-spurs", "R2", Find.LOWEST_CANE, "R2a"),
]


@pytest.mark.parametrize(("slug", "at", "find", "name"), FOUND)
def test_what_only_some_forms_have_is_found(
    demo: Demo, slug: str, at: str, find: Find, name: str
) -> None:
    body = made_one(demo, NamePart(common(), seen(slug, at), find)).body
    assert isinstance(body, Tapping)
    assert name in body.right
    assert {one.name for one in body.targets} > set(body.right)


@pytest.mark.parametrize("slug", ["far-hanging-spurs", "two-new-canes"])
def test_what_is_right_on_a_form_is_called_no_fault_there(demo: Demo, slug: str) -> None:
    """Hanging wood on a high cordon, a cane near the head where canes are tied."""
    body = made_one(demo, NamePart(common(), seen(slug), Find.TRUNK)).body
    assert isinstance(body, Tapping)
    assert not {"wood-below-the-arm", "cane-on-the-head"} & set(body.whys)


def test_where_no_arm_is_drawn_none_can_be_tapped(demo: Demo) -> None:
    body = made_one(demo, NamePart(common(), seen("two-new-canes"), Find.TRUNK)).body
    assert isinstance(body, Tapping)
    names = {one.name for one in body.targets}
    assert {"trunk", "head"} < names
    assert "left arm" not in names
    assert body.whys["head"] == "No. This is the head. New canes should begin near it."
