"""An arm that is sawn off at the head: its edge alone, dotted, over the wood of the frame."""

from __future__ import annotations

from dataclasses import dataclass, replace

from pencilwood.drawing.frame import arm_limb, arm_thickness_mm, outline_of, outward
from pencilwood.drawing.looks import FACE, INK, PAPER, PENCIL
from pencilwood.drawing.points import Point
from pencilwood.drawing.shapes import Attributes, Group, Ink, Run
from pencilwood.vine.model import Side, Vine


@dataclass(frozen=True)
class Sawn:
    """The arm that comes off, and how much of it stays as a stump."""

    side: Side
    stump_mm: int
    is_shown: bool
    """Whether it is off already; else the page's script shows it when that is chosen."""


def draw_sawn(vine: Vine, sawn: Sawn) -> Group:
    """Paper over the arm, its edge dotted, and the cut face of the stump."""
    arm = vine.arm_on(sawn.side)
    limb = replace(arm_limb(vine, arm), start_mm=float(sawn.stump_mm))
    gone: Attributes = {
        "class": "pw-sawn-off",
        "fill": PAPER,
        "stroke": PENCIL,
        "stroke-width": 2.6,
        "stroke-dasharray": "3 9",
    }
    look: dict[str, str | float] = {"class": "pw-sawn", "data-side": str(sawn.side)}
    if not sawn.is_shown:
        look["display"] = "none"
    x, half = outward(sawn.side) * sawn.stump_mm, arm_thickness_mm(arm, sawn.stump_mm) / 2
    middle = half - vine.cordon_height_mm
    face = tuple(
        Point(x + outward(sawn.side) * aside * half * 0.4, middle + down * half)
        for aside, down in (
            (0, -1),
            (0.7, -0.7),
            (1, 0),
            (0.7, 0.7),
            (0, 1),
            (-0.4, 0.7),
            (-0.6, 0),
            (-0.4, -0.7),
        )
    )
    cut: Attributes = {"class": "pw-face", "fill": FACE, "stroke": INK, "stroke-width": 2.6}
    return Group((Ink((outline_of(limb),), gone), Ink((Run(face, closed=True),), cut)), look)
