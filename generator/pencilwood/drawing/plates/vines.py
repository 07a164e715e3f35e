"""Plates of a whole vine, made from measured wood like every other vine of the handbook."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from pencilwood.drawing.ink.grain import Grain
from pencilwood.drawing.ink.looks import FRAME, INK, PENCIL
from pencilwood.drawing.ink.points import XY, Point, between
from pencilwood.drawing.ink.shapes import Attributes, Group, Ink, Run, Thing
from pencilwood.drawing.plate import Plate
from pencilwood.drawing.plates.board import (
    Board,
    Scene,
    enlarged,
    ground,
    number_sign,
    pointer,
    words,
)
from pencilwood.drawing.plates.pen import penned, swelling
from pencilwood.drawing.scene.cut_marks import draw_cut_marks
from pencilwood.drawing.scene.lighten import without_hidden
from pencilwood.drawing.scene.stages import Stages, stages_of_passes
from pencilwood.drawing.scene.wood_drawing import draw_parts
from pencilwood.drawing.wood.bark import bark, older_wood
from pencilwood.drawing.wood.canes import bud_middle
from pencilwood.drawing.wood.frame import arm_limb, draw_frame
from pencilwood.vine.forms.cordon import ONE_ARM_RIGHT, TWO_ARM_CORDON
from pencilwood.vine.model import Arm, Form, Piece, Position, Side, Trellis, Vine
from pencilwood.vine.passes import DoneCut, Pass, Tool
from pencilwood.vine.wood import Cut, Parts, Shortening, ThinningOut, divide

_TRELLIS = Trellis(900, (1200, 1500), 1800, 2150)
_PEN_TIMES = 2.2
"""How much fuller a stroke of bark is than the thin line that a whole vine has."""
_WIRE_HALF = 1.7
"""A wire is a thin double line."""
_BESIDE_BUD_MM = 15.0
"""So far from the middle of a bud a dot touches it and covers nothing of it."""


def _cane(letter: str, buds: int, at_mm: int, thick_mm: int = 9, **more: int) -> Piece:
    # No two canes of a vine have grown alike.
    internode = 62 + (buds * 7 + at_mm) % 17
    length = more.get("length_mm", buds * internode + 24 + at_mm % 19)
    return Piece(letter, 1, length, thick_mm, "m", at_mm, buds=buds, internode_mm=internode)


def _old(length_mm: int = 60) -> Piece:
    return Piece("m", 2, length_mm, 16)


def _vine(form: Form, arms: Sequence[Arm]) -> Parts:
    return divide(Vine(form, 60, 900, _TRELLIS, tuple(arms)))


def _two_arm_vine() -> Parts:
    """Five places still uncut, and one (R2) cut to a spur."""
    left = Arm(Side.LEFT, 560, 36, tuple(
        Position(f"L{n}", Side.LEFT, at, (_old(), _cane("a", buds, 18), _cane("b", buds - 1, 55)))
        for n, (at, buds) in enumerate(((150, 7), (320, 8), (480, 6)), start=1)
    ))  # fmt: skip
    right = Arm(Side.RIGHT, 560, 36, (
        Position("R1", Side.RIGHT, 150, (_old(), _cane("a", 6, 20), _cane("b", 8, 55))),
        Position("R2", Side.RIGHT, 320, (_old(40), _cane("a", 2, 36, length_mm=178))),
        Position("R3", Side.RIGHT, 480, (_old(30), _cane("a", 7, 26))),
    ))  # fmt: skip
    return _vine(TWO_ARM_CORDON, (left, right))


def _by_pen(thing: Thing) -> Thing:
    """Strokes of bark swell and end in points, as on the plates of wood from near."""
    if isinstance(thing, Group):
        return replace(thing, things=tuple(map(_by_pen, thing.things)))
    if not isinstance(thing, Ink) or thing.attributes.get("class") != "pw-bark":
        return thing
    width = float(thing.attributes["stroke-width"]) * _PEN_TIMES
    return penned((swelling(_few(run.points), width) for run in thing.runs), on_wood=True)


def _few(points: Sequence[XY]) -> Sequence[XY]:
    """As many places as a swelling stroke needs: it is fullest in its middle."""
    first, last = points[0], points[-1]
    middle = points[1:-1:2] or [between(first, last, 0.5)]
    return [first, *middle, last]


def _wood(
    parts: Parts,
    frame: Thing,
    prefix: str,
    stages: Stages | None = None,
    cuts: Sequence[DoneCut] = (),
) -> list[Thing]:
    plate = Plate(parts)
    unnamed: Mapping[str, Sequence[Thing]] = dict.fromkeys(plate.stems, ())
    things: list[Thing] = list(draw_parts(plate, prefix, stages or Stages(), unnamed))
    things.append(frame)
    if cuts:
        things.append(draw_cut_marks(plate, cuts))
    return list(map(_by_pen, things))


def _wire(left: float, right: float, height_mm: float) -> Ink:
    look: Attributes = {
        "class": "pw-trellis-wire", "fill": "none", "stroke": PENCIL, "stroke-width": 2.0,
    }  # fmt: skip
    runs = (
        Run((Point(left, off - height_mm), Point(right, off - height_mm)))
        for off in (-_WIRE_HALF, _WIRE_HALF)
    )
    return Ink(tuple(runs), look)


def parts_of_the_vine(board: Board) -> Scene:
    """A two-arm vine with the names of its parts."""
    parts = _two_arm_vine()
    times, x, ground_y = 0.53, 400.0, 900.0

    def at(x_mm: float, height_mm: float) -> Point:
        return Point(x + x_mm * times, ground_y - height_mm * times)

    plate = Plate(parts)
    spur = plate.stems["R2a"].curve.at(60)
    bud = Point(*bud_middle(plate.stems["R3a"], 5))
    cane = plate.stems["L3a"].curve.at(330)
    wires = [_wire(-750, 750, height) for height in (900, 1200, 1500)]
    wood = [*wires, *_wood(parts, draw_frame(parts.vine, board.prefix), board.prefix)]
    things: list[Thing] = [
        *ground(ground_y, soft=True),
        enlarged(wood, x, ground_y, times),
        pointer(Point(230, 60), board.say("cane"), at(cane.x, -cane.y), anchor="end"),
        pointer(Point(700, 60), board.say("bud"), at(bud.x + _BESIDE_BUD_MM, -bud.y)),
        pointer(Point(523, 250), board.say("spur"), at(spur.x + 10, -spur.y)),
        pointer(Point(140, 570), board.say("arm"), at(-400, 866), anchor="end"),
        pointer(Point(240, 690), board.say("old"), at(-342, 925), anchor="end"),
        pointer(Point(560, 560), board.say("head"), at(20, 870)),
        pointer(Point(560, 720), board.say("trunk"), at(34, 380)),
        pointer(Point(716, 500), board.say("wire"), at(690, 900), anchor="middle"),
    ]
    return Scene(960, things)


def _place_cuts(name: str) -> list[tuple[Pass, Cut]]:
    return [
        (Pass.ROUGH, Shortening(f"{name}a", 5)),
        (Pass.ROUGH, Shortening(f"{name}b", 5)),
        (Pass.THINNING_OUT, ThinningOut(f"{name}m above a")),
        (Pass.FINE, Shortening(f"{name}a", 2)),
    ]


def _done(cuts: Sequence[tuple[Pass, Cut]]) -> tuple[DoneCut, ...]:
    return tuple(DoneCut(cut, in_pass, Tool.SHEARS) for in_pass, cut in cuts)


ROWS = ((Pass.ROUGH, "rough", 620.0), (Pass.THINNING_OUT, "thinning", 480.0),
        (Pass.FINE, "fine", 450.0))  # fmt: skip
"""The rows of the passes with the height of each; chapters.css sets them side by side by it."""
_ARM_TIMES, _FROM_MM, _LEFT = 0.86, 130.0, 46.0
"""How large the arm is, from where on it is seen, and how far from the edge that stands."""


def three_passes(board: Board) -> Scene:
    """One arm in the rough, the thinning-out and the fine pass, one under the other.

    Each row is a group of its own: where there is room, the page sets them side by side.
    """
    places = ((250, 8), (450, 7), (660, 8), (860, 7))
    arm = Arm(Side.RIGHT, 960, 36, tuple(
        Position(f"R{n}", Side.RIGHT, at, (
            _old(64), _short(at, "a", buds, 20), _short(at, "b", 8, 60),
        ))
        for n, (at, buds) in enumerate(places, start=1)
    ))  # fmt: skip
    parts = _vine(ONE_ARM_RIGHT, (arm,))
    cuts = _done([cut for n in range(1, 5) for cut in _place_cuts(f"R{n}")])
    stages = stages_of_passes(parts, cuts)
    things: list[Thing] = []
    foot = 0.0
    for number, (in_pass, key, height) in enumerate(ROWS, start=1):
        foot += height
        wood = _wood(parts, _arm_alone(parts), f"{board.prefix}-{number}", stages, cuts)
        seen = _wood_in_pass(wood, in_pass)
        heading = (
            number_sign(Point(40, foot - height + 40), str(number)),
            words(Point(80, foot - height + 52), board.say(key)),
        )
        row = (
            enlarged(seen, _LEFT - _FROM_MM * _ARM_TIMES, foot - 74 + 900 * _ARM_TIMES, _ARM_TIMES,
                     f"pw-show-{in_pass}"),
            Group(heading, {"class": "pw-plate-heading"}),
        )  # fmt: skip
        things.append(Group(row, {"class": f"pw-plate-row pw-plate-row-{number}"}))
    return Scene(foot, things, rows=True)


def _arm_alone(parts: Parts) -> Group:
    """A stretch of arm to its tip; where it goes on to the head it ends in a wavy break."""
    limb = arm_limb(parts.vine, parts.vine.arms[0])
    edge = older_wood(limb.curve, _FROM_MM, limb.end_mm, limb.half_mm)
    half = limb.half_mm(_FROM_MM)
    broken = [
        limb.curve.beside(_FROM_MM + along, half * aside)
        for aside, along in ((0.6, 7.0), (0.2, 9.0), (-0.2, -7.0), (-0.6, -9.0))
    ]
    wood: Attributes = {"class": "pw-frame-wood", "stroke-width": 3.6, "fill": FRAME}
    strokes = bark(limb.curve, _FROM_MM + 6, limb.end_mm, limb.half_mm, Grain(limb.name))
    body = Ink((replace(edge, points=(*edge.points, *broken)),), wood)
    return Group((body, *strokes), {"class": "pw-frame", "stroke": INK})


def _short(at_mm: int, letter: str, buds: int, from_mm: int) -> Piece:
    """A cane whose buds sit near to each other, so that a row is low."""
    internode = 52 + (at_mm // 10 + from_mm) % 5
    return Piece(
        letter, 1, buds * internode + 34, 9, "m", from_mm, buds=buds, internode_mm=internode
    )


def _wood_in_pass(wood: Sequence[Thing], in_pass: Pass) -> Sequence[Thing]:
    """Without what went in earlier passes, marks of other passes, and what ghosts never show."""
    order = (Pass.ROUGH, Pass.THINNING_OUT, Pass.FINE)
    gone = {f"pw-off-{earlier}" for earlier in order[: order.index(in_pass)]}
    marks = {f"pw-cut-{other}" for other in order if other != in_pass}
    return tuple(without_hidden(wood, gone | marks, {f"pw-off-{in_pass}"}))
