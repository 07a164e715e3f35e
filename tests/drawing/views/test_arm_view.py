"""The view of the arms shows every piece that is left, and leaves the trunk out."""

from __future__ import annotations

import random

import pytest

from cane_vines import cane_vine
from pencilwood.drawing import window_on_arms
from pencilwood.drawing.scene.tied_canes import laid_canes
from pencilwood.drawing.scene.wood_text import plate_of
from pencilwood.vine.model import Side
from pencilwood.vine.passes import DoneCut, Pass
from pencilwood.vine.wood import ThinningOut, Tie, WoodLeft, divide, uncut
from vines import SAMPLES, random_vine


def in_view(left: WoodLeft) -> None:
    window = window_on_arms(left)
    plate = plate_of(left.parts)
    for part, state in zip(left.parts.parts, left.states, strict=True):
        if state:
            foot = plate.stem(part).curve.points[0]
            assert window.left < foot.x < window.right
            assert window.top < foot.y < window.bottom


@pytest.mark.parametrize("name", SAMPLES)
def test_all_wood_left_is_in_view_and_the_ground_is_not(name: str) -> None:
    left = uncut(divide(SAMPLES[name]()))
    in_view(left)
    assert window_on_arms(left).bottom < plate_of(left.parts).frame.bottom


@pytest.mark.parametrize("seed", range(25))
def test_any_pruned_vine_is_in_view(seed: int) -> None:
    rng = random.Random(seed)
    left = uncut(divide(random_vine(rng)))
    for part in left.parts.parts:
        if left.state(part.name) and rng.random() < 0.4:
            left = left.cut(ThinningOut(part.name))
    in_view(left)


def test_a_bare_vine_has_a_view_too() -> None:
    parts = divide(SAMPLES["tidy"]())
    bare = WoodLeft(parts, (0,) * len(parts.parts))
    window = window_on_arms(bare)
    assert window.top < window.bottom
    assert window.left < window.right


def test_canes_that_are_tied_are_in_view_to_their_tips() -> None:
    left = uncut(divide(cane_vine()))
    cane = next(part for part in left.parts.parts if part.is_cane)
    for side in Side:
        laid = laid_canes(left, [DoneCut(Tie(cane.name, side), Pass.TIE)])
        window = window_on_arms(left, laid)
        (tip,) = plate_of(left.parts, laid).reaching
        assert window.left < tip.x < window.right
