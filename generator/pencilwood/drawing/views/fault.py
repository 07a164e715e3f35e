"""A fault at a glance: the wood around it, as small as a stamp, with a ring around what is wrong.

It is drawn for lists, in a few hundred bytes: outlines, buds, and what tells the condition of the
wood. Colours come from the page's styles, so it is light, dark or on paper as the page is.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Literal

from pencilwood.drawing.ink.curves import outline, steps
from pencilwood.drawing.ink.points import XY, Point
from pencilwood.drawing.ink.shapes import Group, Ink, Run, Thing
from pencilwood.drawing.ink.writer import SMALL, element, number, write
from pencilwood.drawing.plate import Frame, Plate, frame_around_all
from pencilwood.drawing.scene.tied_canes import Laid, laid_canes, lay_down
from pencilwood.drawing.scene.wood_drawing import drawn_from_mm, drawn_to_mm
from pencilwood.drawing.scene.wood_text import plate_of
from pencilwood.drawing.views.fault_window import (
    above,
    around_spots,
    around_wood,
    box_around,
    bracket,
    ring,
    tool_sign,
    whole_wood,
)
from pencilwood.drawing.wood.bark import older_wood_with_end
from pencilwood.drawing.wood.canes import cut_face, cut_place_mm, stretches
from pencilwood.drawing.wood.marks import condition_marks
from pencilwood.drawing.wood.stems import Stem
from pencilwood.kept import kept_text, name_of
from pencilwood.vine.model import Lean
from pencilwood.vine.passes import DoneCut, Stub, Tool, after_cuts
from pencilwood.vine.wood import Part, Parts, Shortening, WoodLeft, uncut

FAULT = "pw-fault"
"""The class of such a picture."""
RING = "pw-fault-ring"
_GHOST = "pw-fault-ghost"
_GHOST_MM = 330.0
"""So much is seen of wood that is gone: it runs out of the picture."""
_LONG_STUB = 0.8
"""How far a stub that is too long goes toward the next bud."""
_FOOT_MM = 40.0
_LOOSE_FROM_MM, _LOOSE_MM = 400.0, 300.0
"""Of a cane so long that it should lie so much is looked at; the rest may be outside."""
_AROUND_HEAD_MM = 300.0
"""So much of the wire is seen on each side that canes are tied to."""
_BELOW_ARM_MM = 90.0


@dataclass(frozen=True)
class Spot:
    """Where something is wrong."""

    names: tuple[str, ...]
    """Parts, or the two positions that stand beside it."""
    at: Literal["wood", "between", "cut"] = "wood"
    """All that is left there, the stretch from one position to the other, or the cut."""
    near: bool = False
    """Whether it is so fine that nothing else is shown."""
    tool: Tool | None = None
    """What the cut was made with, where that is what is wrong; one of the spots has it."""


def draw_fault(parts: Parts, cuts: Sequence[DoneCut], spots: Sequence[Spot]) -> str:
    """A pruned vine around these spots as SVG text; without any, all of it with a bracket."""
    facts = [name_of(parts.vine), list(cuts), list(spots)]
    return kept_text("fault", facts, lambda: _Fault(parts, tuple(cuts), tuple(spots)).drawn())


@dataclass(frozen=True)
class _Fault:
    parts: Parts
    cuts: tuple[DoneCut, ...]
    spots: tuple[Spot, ...]

    def drawn(self) -> str:
        frames = [self._around(spot) for spot in self.spots]
        window = self._window(frames)
        whole = [] if self.laid else [bracket(self._all_wood())]
        found = [ring(one, window) for one in frames] or whole
        things = (*self._wires(window), *self._wood(), *found)
        root = {
            "class": f"pw-vine {FAULT}",
            "viewBox": " ".join(number(round(side)) for side in window.box),
            # The title beside it says what it shows.
            "aria-hidden": "true",
        }
        tools = (tool_sign(spot.tool, window) for spot in self.spots if spot.tool)
        return element("svg", root, "".join([*(write(one, SMALL) for one in things), *tools]))

    def _window(self, frames: Sequence[Frame]) -> Frame:
        if not frames or self.view is not self._plate:
            return around_wood(frame_around_all([self._all_wood(), *frames]))
        if all(spot.near for spot in self.spots):
            return around_spots(frames, near=True)
        places = [self._place(spot) for spot in self.spots if spot.at != "between"]
        room = [above(one) for one in places if any(spot.tool for spot in self.spots)]
        standing = [box_around(self._edge(one)) for one in self._left if one.name not in self.laid]
        return whole_wood(around_spots([*frames, *places, *room]), standing)

    @cached_property
    def left(self) -> WoodLeft:
        """What is left after the cuts."""
        return after_cuts(uncut(self.parts), self.cuts)

    @cached_property
    def _left(self) -> list[Part]:
        """The parts of which something is left."""
        return [part for part in self.parts.parts if self._state(part)]

    @cached_property
    def laid(self) -> dict[str, Laid]:
        """Canes along the wire by the name of their part."""
        return {one.part: one for one in laid_canes(self.left, self.cuts)}

    @cached_property
    def _plate(self) -> Plate:
        return plate_of(self.parts, tuple(self.laid.values()))

    @cached_property
    def view(self) -> Plate:
        """From above where a form has that view: there no place hides another."""
        return self._plate.second or self._plate

    def _stem(self, part: Part) -> Stem:
        laid = self.laid.get(part.name)
        return lay_down(self.view, laid) if laid else self.view.stem(part)

    def _state(self, part: Part) -> int:
        return self.left.states[self.parts.index[part.name]]

    def _end_mm(self, part: Part) -> float:
        """How far along its stem the wood goes that is left, or where it was cut off."""
        state = self._state(part)
        if state == 0:
            return float(part.start_mm)
        if not part.is_cane or state == part.most:
            return float(part.end_mm)
        stem = self._stem(part)
        stub = {
            done.cut.part: done.stub for done in self.cuts if isinstance(done.cut, Shortening)
        }.get(part.name, Stub.RIGHT)
        bud_mm = state * stem.piece.internode_mm
        if stub is Stub.CLOSE:
            return bud_mm + 1.0
        if stub is Stub.LONG:
            return bud_mm + _LONG_STUB * stem.piece.internode_mm
        return cut_place_mm(stem, state)

    def _wood(self) -> Iterator[Thing]:
        """Behind what is gone, then canes, trunk and arms, and the older wood over their feet."""
        gone = [part for part in self.parts.parts if self._state(part) == 0]
        canes = [part for part in self._left if part.is_cane]
        if gone:
            yield Ink(tuple(self._ghost(part) for part in gone), {"class": _GHOST})
        yield from (self._cane(part) for part in canes if not self._is_over_head(part))
        frame = self.view.looks.frame_wood(self.view.vine)
        yield Ink(frame.runs, {"class": "pw-frame-wood"})
        yield from (self._old(part) for part in self._left if not part.is_cane)
        yield from (self._cane(part) for part in canes if self._is_over_head(part))
        wounds = [
            run
            for part in gone
            if self.left.is_cut_face(self.parts.index[part.name])
            for run in cut_face(self._stem(part), part.start_mm).runs[:1]
        ]
        if wounds:
            yield Ink(tuple(wounds), {"class": "pw-face"})

    def _is_over_head(self, part: Part) -> bool:
        """Seen from above, what leans inward hides the arm that it grows from."""
        return self.view is not self._plate and part.piece.lean is Lean.IN

    def _ghost(self, part: Part) -> Run:
        stem = self._stem(part)
        end = min(part.end_mm, part.start_mm + _GHOST_MM)
        along = steps(part.start_mm, end, 60)
        return Run(tuple(outline(stem.curve, along, stem.half_mm)), closed=True, open_foot=True)

    def _cane(self, part: Part) -> Thing:
        stem, end, buds = self._stem(part), self._end_mm(part), self._state(part)
        step = stem.piece.internode_mm / 2
        along = [0.0, *(step * n for n in range(1, 2 * buds + 1)), end]
        wood = Run(tuple(outline(stem.curve, along, stem.half_mm)), closed=True)
        marks = condition_marks(stem, 0.0, min(end, 160.0), stem.half_mm)
        pointed = tuple(
            run
            for stretch in stretches(stem, lambda _: "")[:buds]
            for thing in stretch.things
            if isinstance(thing, Ink) and thing.attributes.get("class") == "pw-bud"
            for run in thing.runs
        )
        things: list[Thing] = [Ink((wood,)), *marks, Ink(pointed, {"class": "pw-bud"})]
        if buds < part.most:
            things.append(Ink(cut_face(stem, end).runs[:1], {"class": "pw-face"}))
        return Group(tuple(things), {"class": f"pw-part pw-cane pw-{part.piece.condition}"})

    def _old(self, part: Part) -> Thing:
        stem, start, end = self._stem(part), drawn_from_mm(part), drawn_to_mm(part)
        edge = older_wood_with_end(stem.curve, start, end, stem.half_mm, goes_on=part.start_mm > 0)
        marks = condition_marks(stem, start, end, stem.half_mm)
        look = {"class": f"pw-part pw-old pw-{part.piece.condition}"}
        return Group((Ink((edge,)), *marks), look)

    def _wires(self, window: Frame) -> Iterator[Ink]:
        trellis = self.view.vine.trellis
        if self.view is not self._plate or trellis.has_no_wire:
            return
        heights = [trellis.fruiting_wire_mm, *trellis.catch_wires_mm]
        runs = [
            Run((Point(window.left, -height_mm), Point(window.right, -height_mm)))
            for height_mm in heights
            if window.top < -height_mm < window.bottom
        ]
        if runs:
            yield Ink(tuple(runs), {"class": "pw-trellis"})

    def _around(self, spot: Spot) -> Frame:
        """The room that a spot takes."""
        if spot.at == "between":
            return box_around(self._between(*spot.names))
        if spot.at == "cut":
            parts = [part for part in self.parts.parts if part.name in spot.names]
            return box_around([point for part in parts for point in self._last_cut(part)])
        return box_around([point for part in self._named(spot) for point in self._at_fault(part)])

    def _named(self, spot: Spot) -> list[Part]:
        """Its parts, or all wood that is left of its positions."""
        return [
            part
            for part in self.parts.parts
            if part.name in spot.names or (part.position.name in spot.names and self._state(part))
        ]

    def _place(self, spot: Spot) -> Frame:
        """The whole place with wood that a spot belongs to, so that its arm is seen too."""
        here = {part.position.name for part in self._named(spot)}
        feet = [self.view.foot(one) for one in self.parts.positions if one.name in here]
        left = [one for one in self._left if one.position.name in here]
        edges = [point for part in left for point in self._edge(part)]
        return box_around([*feet, *edges]) if feet else self._around(spot)

    def _between(self, first: str, *last: str) -> list[XY]:
        """Feet from one position to the other; around a head those that lost their wood."""
        names = [one.name for one in self.parts.positions]
        feet = {one.name: self.view.foot(one) for one in self.parts.positions}
        if not self.view.vine.is_ring or not last:
            return [feet[one] for one in (first, *last)]
        start, count = names.index(first), len(names)
        passed = [names[(start + n) % count] for n in range(1, count)]
        bare = passed[: passed.index(last[0])]
        lost = [part for part in self.parts.parts if part.position.name in bare]
        ends: list[XY] = [feet[first], feet[last[0]]]
        return [point for part in lost for point in self._edge(part)] or ends

    def _last_cut(self, part: Part) -> list[XY]:
        """The end of what is left, and the bud below it."""
        stem, end = self._stem(part), self._end_mm(part)
        bud_mm = self._state(part) * stem.piece.internode_mm if part.is_cane else end
        return outline(stem.curve, [min(bud_mm, end), end], stem.half_mm)

    def _at_fault(self, part: Part) -> list[XY]:
        """The edge of a part; of a cane along the wire that of what stands above it, if it does."""
        number = self.parts.index[part.name]
        standing = [
            self.parts.parts[one]
            for one in (self.parts.above[number] if part.name in self.laid else ())
            if self.left.states[one] and self.parts.parts[one].name not in self.laid
        ]
        return [point for one in standing or [part] for point in self._edge(one)]

    def _edge(self, part: Part) -> list[XY]:
        """Places on the edge of what is left of a part; its foot, where it is gone or laid."""
        stem, end = self._stem(part), self._end_mm(part)
        if part.name in self.laid or end <= part.start_mm:
            end = part.start_mm + _FOOT_MM
        elif self.laid and end > _LOOSE_FROM_MM:
            end = _LOOSE_MM
        return outline(stem.curve, steps(part.start_mm, end, 40), stem.half_mm)

    def _all_wood(self) -> Frame:
        """All wood that stands, and the arms; of the wire as much as tells what lies there."""
        vine = self.view.vine
        points: list[XY] = [self.view.foot(one) for one in self.parts.positions]
        if self.view is self._plate:
            most = _AROUND_HEAD_MM if self.laid else math.inf
            signs = {"left": -1.0, "right": 1.0}
            tips = [signs.get(arm.side, 0.0) * min(arm.length_mm, most) for arm in vine.arms]
            points += [(x, -float(vine.cordon_height_mm) + _BELOW_ARM_MM) for x in (0.0, *tips)]
        standing = [part for part in self._left if part.name not in self.laid]
        return box_around([*points, *(edge for part in standing for edge in self._edge(part))])
