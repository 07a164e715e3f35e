"""An arm that was sawn off at the head."""

from __future__ import annotations

from dataclasses import replace

from pencilwood.drawing.wood.frame import draw_frame, is_stump
from pencilwood.site.handbook import read_one_case
from pencilwood.vine.new_arm import STUMP_MM
from workshop import PROJECT


def test_it_ends_in_a_face_and_bends_out_of_no_trunk() -> None:
    case = read_one_case(PROJECT, "a-worn-out-arm")[1]
    assert case is not None
    arm, *others = case.vine.arms
    stump = replace(arm, length_mm=STUMP_MM, positions=())
    sawn = replace(case.vine, arms=(stump, *others))
    assert is_stump(sawn, stump)
    assert not is_stump(case.vine, arm)
    whole, left = (repr(draw_frame(vine, "one")) for vine in (case.vine, sawn))
    assert "pw-face" not in whole
    assert left.count("pw-face") == 1
