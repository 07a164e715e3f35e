"""Canes that have been tied: up from the foot in a bend, then outward along the wire."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from pencilwood.drawing.ink.curves import Curve, trace
from pencilwood.drawing.ink.looks import INK
from pencilwood.drawing.ink.points import Point
from pencilwood.drawing.ink.shapes import Attributes, Group, Ink, Run, Thing
from pencilwood.drawing.names.labels import LETTER
from pencilwood.drawing.plate import Plate
from pencilwood.drawing.wood.canes import cut_place_mm, stretches
from pencilwood.drawing.wood.headings import heading
from pencilwood.drawing.wood.stems import Stem
from pencilwood.vine.model import Side
from pencilwood.vine.passes import DoneCut
from pencilwood.vine.tying import sides_tied
from pencilwood.vine.wood import WoodLeft

_BEND_RISE = 1.371
"""How far wood rises that turns from upright to level, in units of its turning length: the
integral of sin(u)/u from 0 to a right angle."""
_TIGHTEST_MM = 40.0
"""Turning length of the sharpest bend; a cane that begins too high for it goes over the wire."""
_SINK_AT_MM, _SINK_WITHIN_MM = 190.0, 70.0
"""Where such a cane comes down to the wire again, and over what length."""
_STEEPEST_RAD = 0.95
_BESIDE_MM = 34.0
"""How far below a cane the next one on its side is drawn, so that both can be seen."""
_TIE_BEYOND_MM = 5.0


@dataclass(frozen=True)
class Laid:
    """A cane that lies along the wire."""

    part: str
    side: Side
    buds: int
    """How many are left on it."""
    stage: str = ""
    """The stage that shows it so; empty where it never stands."""
    under: int = 0
    """How many canes lie above it on the same side."""


def laid_canes(left: WoodLeft, done: Iterable[DoneCut], stage: str = "") -> tuple[Laid, ...]:
    """The canes that somebody has tied, as long as they are left."""
    index = left.parts.index
    tied = [(part, side) for part, side in sides_tied(done).items() if left.states[index[part]] > 0]
    return tuple(
        Laid(part, side, left.states[index[part]], stage, [s for _, s in tied[:n]].count(side))
        for n, (part, side) in enumerate(tied)
    )


def with_tied(plate: Plate, standing: Iterable[Group], laid: Sequence[Laid]) -> tuple[Group, ...]:
    """Groups of parts, and behind each cane that is tied the same cane along the wire."""
    shown: list[Group] = []
    for group in standing:
        here = [one for one in laid if one.part == group.attributes.get("data-part")]
        shown.extend(_laid(plate, one, group) for one in here)
        if any(not one.stage for one in here):
            continue
        names = [f" pw-untied-{one.stage}" for one in here]
        css_class = str(group.attributes["class"]) + "".join(names)
        shown.append(replace(group, attributes={**group.attributes, "class": css_class}))
    return tuple(shown)


def is_laid(group: Group) -> bool:
    """Whether a group of those is a cane along the wire."""
    return "pw-laid" in str(group.attributes.get("class", "")).split()


def _laid(plate: Plate, laid: Laid, standing: Group) -> Group:
    """The cane along the wire, in the looks of the standing one but with no name to cut it by."""
    stem = lay_down(plate, laid)
    things: list[Thing] = [*stretches(stem, lambda _: "")[: laid.buds]]
    middle = max(1, (laid.buds + 1) // 2)
    things.extend(_tie(stem, bud) for bud in dict.fromkeys((middle, laid.buds)))
    if not laid.stage:
        # It never stands in this drawing, so its letter is here.
        things.extend(one for one in standing.things if _is_letter(one))
    kept = ("color", "fill", "stroke", "stroke-width")
    look = {name: value for name, value in standing.attributes.items() if name in kept}
    # What is gone from the standing cane is left out here, so its marks of that are not wanted.
    marked = (one for one in str(standing.attributes["class"]).split() if "-off-" not in one)
    look["class"] = " ".join(
        (*marked, "pw-laid", *([f"pw-laid-{laid.stage}"] if laid.stage else []))
    )
    if laid.stage:
        look |= {"display": "none", "data-laid": laid.part}
    return Group(tuple(things), look)


def _is_letter(one: Thing) -> bool:
    return LETTER in str(one.attributes.get("class", "")).split()


def lay_down(plate: Plate, laid: Laid) -> Stem:
    """The stem of a cane after it was bent."""
    standing = plate.stem(plate.parts.parts[plate.parts.index[laid.part]])
    foot = standing.curve.points[0]
    rise_mm = plate.vine.trellis.fruiting_wire_mm + foot.y - laid.under * _BESIDE_MM
    within_mm = max(_TIGHTEST_MM, rise_mm / _BEND_RISE)
    over_mm = within_mm * _BEND_RISE - rise_mm
    # From far above the wire it comes down over a longer way, no steeper.
    sink_within_mm = max(_SINK_WITHIN_MM, over_mm / (_STEEPEST_RAD * math.sqrt(math.pi)))
    sink_rad = over_mm / (sink_within_mm * math.sqrt(math.pi))
    side = -1 if laid.side is Side.LEFT else 1
    bend = heading(
        standing.grain,
        math.pi / 2 * side,
        -math.pi / 2 * side,
        within_mm,
        standing.piece.internode_mm,
    )

    def heading_rad(along_mm: float) -> float:
        beyond = (along_mm - _SINK_AT_MM) / sink_within_mm
        return bend(along_mm) + side * sink_rad * math.exp(-(beyond**2))

    curve: Curve = trace(foot, standing.piece.length_mm, heading_rad)
    return Stem(standing.name, standing.piece, curve)


def laid_stems(plate: Plate, laid: Iterable[Laid]) -> dict[str, Stem]:
    """The stems of canes that lie along the wire and never stand, by name."""
    return {one.part: lay_down(plate, one) for one in laid if not one.stage}


def tips(plate: Plate, laid: Iterable[Laid]) -> tuple[Point, ...]:
    """How far canes reach that are tied, with all that is left of them."""
    stems = ((lay_down(plate, one), one.buds) for one in laid)
    return tuple(stem.curve.at(cut_place_mm(stem, buds)) for stem, buds in stems)


def _tie(stem: Stem, bud: int) -> Ink:
    """A tie around cane and wire, short of a bud."""
    at = min(cut_place_mm(stem, bud), bud * stem.piece.internode_mm) - 16.0
    aside = stem.half_mm(at) + _TIE_BEYOND_MM
    runs = tuple(
        Run((stem.curve.beside(at + off - 3, -aside), stem.curve.beside(at + off + 3, aside)))
        for off in (0.0, 5.0)
    )
    look: Attributes = {"class": "pw-tie", "fill": "none", "stroke": INK, "stroke-width": 3.0}
    return Ink(runs, {**look, "stroke-linecap": "round"})
