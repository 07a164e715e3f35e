"""An arm that is sawn off at the head: its edge alone, dotted, over the wood of the frame."""

from __future__ import annotations

from dataclasses import dataclass, replace

from pencilwood.drawing.ink.looks import PAPER, PENCIL
from pencilwood.drawing.ink.shapes import Attributes, Group, Ink
from pencilwood.drawing.wood.frame import arm_limb, outline_of, sawn_face
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
    face = sawn_face(vine, arm, float(sawn.stump_mm))
    return Group((Ink((outline_of(limb),), gone), face), look)
