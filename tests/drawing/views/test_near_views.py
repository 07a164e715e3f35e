"""Seen from near, the wood fills the picture; a vine with two views has two of one scale."""

from __future__ import annotations

import random
from collections.abc import Callable

import pytest

from cane_vines import cane_vine
from heads import head, head_vine, random_head
from high_cordons import high_vine
from pencilwood.drawing import Paper, WoodShown, draw_vine
from pencilwood.drawing.ink.shapes import Group
from pencilwood.drawing.names.crowded_names import CROWDED, NO_LINE, ON_WOOD
from pencilwood.drawing.names.place_names import boxes_of_names, draw_places
from pencilwood.drawing.plate import Plate
from pencilwood.drawing.scene.wood_text import plate_of
from pencilwood.drawing.views.near_views import at_one_scale, names_left_out, near_views, to_compare
from pencilwood.vine.forms.cordon import TWO_ARM_CORDON
from pencilwood.vine.model import Lean, Side, Vine
from pencilwood.vine.wood import Shortening, WoodLeft, divide, uncut
from vines import SAMPLES, arm, cane, random_vine, vine

FORMS: dict[str, Callable[[], Vine]] = {
    **SAMPLES,
    "head": head_vine,
    "high": high_vine,
    "canes": cane_vine,
}


def shortened(left: WoodLeft, buds: int) -> WoodLeft:
    for part in left.parts.parts:
        if part.is_cane and part.most > buds:
            left = left.cut(Shortening(part.name, buds))
    return left


def foot_and_tip(plate: Plate, left: WoodLeft) -> list[tuple[float, float]]:
    return [
        stem.curve.at(along_mm)
        for part, state in zip(left.parts.parts, left.states, strict=True)
        if state
        for stem in (plate.stem(part),)
        for along_mm in (part.start_mm, part.end_mm if state == part.most else part.start_mm)
    ]


@pytest.mark.parametrize("name", FORMS)
@pytest.mark.parametrize("buds", [2, 20])
def test_all_wood_and_every_name_is_in_its_picture(name: str, buds: int) -> None:
    left = shortened(uncut(divide(FORMS[name]())), buds)
    plate = plate_of(left.parts)
    for near, view in zip(near_views(left, left=left), plate.views, strict=True):
        one = near.window
        for x, y in foot_and_tip(view, left):
            assert one.left < x < one.right
            assert one.top < y < one.bottom
        for box in boxes_of_names(view):
            assert one.left < box.left < box.right < one.right
            assert one.top < box.top < box.bottom < one.bottom


@pytest.mark.parametrize("name", ["tidy", "high", "canes", "head"])
def test_the_ground_is_outside(name: str) -> None:
    left = shortened(uncut(divide(FORMS[name]())), 2)
    first, *_ = near_views(left, left=left)
    assert first.window.bottom < 0


@pytest.mark.parametrize(
    ("name", "least"),
    [
        # How much of the picture's width the arms take, or the wood that is laid around a head;
        # of the whole drawing with its words it is two thirds, and an eighth.
        ("tidy", 0.75),
        ("climbing", 0.75),
        ("high", 0.75),
        ("head", 0.4),
    ],
)
def test_what_the_picture_is_about_fills_it(name: str, least: float) -> None:
    left = shortened(uncut(divide(FORMS[name]())), 2)
    *_, near = near_views(left, left=left)
    view = plate_of(left.parts).views[-1]
    xs = [view.foot(position).x for position in left.parts.positions]
    if view.looks.name_foot is None:
        xs += [corner.x for corner in view.looks.corners(left.parts.vine)]
    assert (max(xs) - min(xs)) / (near.window.right - near.window.left) >= least


@pytest.mark.parametrize("seed", range(10))
def test_two_views_have_one_scale(seed: int) -> None:
    left = uncut(divide(random_head(random.Random(seed))))
    row, above = near_views(left, left=left)
    assert row.window.box[2:] == pytest.approx(above.window.box[2:])
    assert row.says[0] == "view.row"
    assert {"view.above", "view.row-side"} <= set(above.says)


def test_the_view_from_the_row_says_where_the_names_are_that_it_leaves_out() -> None:
    """A name that the trunk pushes aside has no line there; two at the sides stand below theirs."""
    sides = divide(head(1200, (300, [cane("a", 6)]), (900, [cane("a", 6)])))
    around = divide(head(1200, *((at, [cane("a", 6)]) for at in (10, 300, 600, 900))))
    told = [
        "view.more-names" in near_views(uncut(one), left=uncut(one))[0].says
        for one in (sides, around)
    ]
    assert told == [False, True]


def test_of_names_on_one_another_the_view_from_the_row_gives_that_of_the_wood_in_front() -> None:
    """Six places around: the two at each side stand behind each other, as seen from the row."""
    left = uncut(divide(head(1200, *((100 + 200 * at, [cane("a", 6)]) for at in range(6)))))
    plate = plate_of(left.parts)
    places = [one.attributes for one in draw_places(plate).things if isinstance(one, Group)]
    told = {one["data-position"] for one in places if NO_LINE not in str(one["class"])}
    behind = {one.name for one in plate.parts.positions if plate.looks.is_behind(one, plate.vine)}
    assert len(told) == 2
    assert not told & behind


@pytest.mark.parametrize("names", [("tidy", "head"), ("head", "tidy"), ("tidy", "climbing")])
def test_vines_of_any_forms_can_be_compared(names: tuple[str, str]) -> None:
    """A trainer's good example may be a head, and the bad one beside it a vine with arms."""
    own = []
    for name in names:
        left = uncut(divide(FORMS[name]()))
        own.append(near_views(left, left=left))
    compared = to_compare(own)
    sizes = {
        tuple(round(mm, 3) for mm in one.window.box[2:]) for views in compared for one in views
    }
    assert len(sizes) == 1
    for before, after in zip(own, compared, strict=True):
        for one, wider in zip(before, after, strict=True):
            assert wider.view == one.view
            assert wider.window.left <= one.window.left < one.window.right <= wider.window.right
            assert wider.window.top <= one.window.top < one.window.bottom <= wider.window.bottom


@pytest.mark.parametrize("seed", range(10))
def test_ghosts_end_a_little_beyond_the_wood_that_is_left(seed: int) -> None:
    before = uncut(divide(random_vine(random.Random(seed))))
    after = shortened(before, 1)
    (near,) = near_views(before, left=after, beyond_mm=50)
    (all_of_it,) = near_views(before, left=before)
    (rest,) = near_views(after, left=after)
    assert all_of_it.window.top <= near.window.top
    assert near.window.top >= rest.window.top - 50.1
    # Both arms are always seen from tip to tip.
    assert near.window.left == all_of_it.window.left


@pytest.mark.parametrize("name", ["tidy", "climbing"])
def test_states_of_a_vine_with_arms_are_to_one_scale(name: str) -> None:
    whole = uncut(divide(FORMS[name]()))
    left = shortened(whole, 2)
    uncut_views = near_views(whole, left=whole)
    states = (near_views(one, left=one) for one in (whole, left))
    first, second = (at_one_scale(one, uncut_views)[0].window for one in states)
    assert (first.left, first.right) == (second.left, second.right)
    assert second.top >= first.top, "what was cut needs no room"


def test_a_picture_tells_where_names_are_left_out_unless_another_view_has_them() -> None:
    told = set()
    hanging = arm(Side.LEFT, 600, (300, [cane("a", 9, lean=Lean.DOWN)]))
    on_wood = vine(TWO_ARM_CORDON, hanging, arm(Side.RIGHT, 600))
    for one in (on_wood, *(make() for make in FORMS.values())):
        shown = WoodShown(divide(one))
        svg = draw_vine(shown, Paper("p", "en", title="t", description="d"))
        has_views = len(plate_of(shown.parts).views) > 1
        expected = "everywhere" if ON_WOOD in svg else "phones" if CROWDED in svg else ""
        assert names_left_out(shown) == ("" if has_views else expected)
        told.add((has_views, expected))
    assert told == {(False, ""), (False, "phones"), (False, "everywhere"), (True, "phones")}
