"""Plates of a whole vine, made from measured wood like every other vine of the handbook."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from pencilwood.drawing.ink.looks import PENCIL
from pencilwood.drawing.ink.points import Point
from pencilwood.drawing.ink.shapes import Attributes, Ink, Run, Thing
from pencilwood.drawing.plate import Plate
from pencilwood.drawing.plates.board import (
    WIDTH,
    Board,
    Scene,
    enlarged,
    ground,
    line,
    number_sign,
    pointer,
    right_sign,
    words,
    wrong_sign,
)
from pencilwood.drawing.scene.cut_marks import draw_cut_marks
from pencilwood.drawing.scene.lighten import without_hidden
from pencilwood.drawing.scene.stages import GONE, Stage, Stages, stages_of_passes
from pencilwood.drawing.scene.wood_drawing import draw_parts
from pencilwood.drawing.wood.canes import bud_middle
from pencilwood.drawing.wood.frame import draw_frame
from pencilwood.vine.forms.cordon import ONE_ARM_RIGHT, TWO_ARM_CORDON
from pencilwood.vine.model import Arm, Form, Piece, Position, Side, Trellis, Vine
from pencilwood.vine.passes import DoneCut, Pass, Tool, after_cuts
from pencilwood.vine.wood import Cut, Parts, Shortening, ThinningOut, divide, uncut

_TRELLIS = Trellis(900, (1200, 1500), 1800, 2150)
_BESIDE_BUD_MM = 15.0
"""So far from the middle of a bud a dot touches it and covers nothing of it."""


def _cane(letter: str, buds: int, at_mm: int, thick_mm: int = 9, **more: int) -> Piece:
    length = more.get("length_mm", buds * 70 + 40)
    return Piece(letter, 1, length, thick_mm, "m", at_mm, buds=buds, internode_mm=70)


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
        Position("R2", Side.RIGHT, 320, (_old(40), _cane("a", 2, 36, length_mm=156))),
        Position("R3", Side.RIGHT, 480, (_old(30), _cane("a", 7, 26))),
    ))  # fmt: skip
    return _vine(TWO_ARM_CORDON, (left, right))


def _wood(
    parts: Parts, prefix: str, stages: Stages | None = None, cuts: Sequence[DoneCut] = ()
) -> list[Thing]:
    plate = Plate(parts)
    unnamed: Mapping[str, Sequence[Thing]] = dict.fromkeys(plate.stems, ())
    things: list[Thing] = list(draw_parts(plate, prefix, stages or Stages(), unnamed))
    things.append(draw_frame(parts.vine, prefix))
    if cuts:
        things.append(draw_cut_marks(plate, cuts))
    return things


def _wire(left: float, right: float, height_mm: float) -> Ink:
    look: Attributes = {
        "class": "pw-trellis-wire", "fill": "none", "stroke": PENCIL, "stroke-width": 4.0,
    }  # fmt: skip
    return Ink((Run((Point(left, -height_mm), Point(right, -height_mm))),), look)


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
    wood = [*wires, *_wood(parts, board.prefix)]
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


def three_passes(board: Board) -> Scene:
    """One arm in the rough, the thinning-out and the fine pass, one under the other."""
    places = ((200, 8), (390, 7), (580, 8), (770, 7))
    arm = Arm(Side.RIGHT, 860, 36, tuple(
        Position(f"R{n}", Side.RIGHT, at, (_old(70), _cane("a", buds, 22), _cane("b", 8, 66)))
        for n, (at, buds) in enumerate(places, start=1)
    ))  # fmt: skip
    parts = _vine(ONE_ARM_RIGHT, (arm,))
    cuts = _done([cut for n in range(1, 5) for cut in _place_cuts(f"R{n}")])
    stages = stages_of_passes(parts, cuts)
    things: list[Thing] = []
    foot = 0.0
    rows = ((Pass.ROUGH, "rough", 640.0), (Pass.THINNING_OUT, "thinning", 470.0),
            (Pass.FINE, "fine", 470.0))  # fmt: skip
    for number, (in_pass, key, height) in enumerate(rows, start=1):
        foot += height
        wood = _wood_in_pass(_wood(parts, f"{board.prefix}-{number}", stages, cuts), in_pass)
        # The trunk would reach into the next row; a row shows the arm and what stands on it.
        shown = enlarged(wood, 60, foot - 60 + 900 * 0.75, 0.75, f"pw-show-{in_pass}")
        things.append(shown)
        if number < len(rows):
            things.append(_cover(foot, rows[number][2]))
        things.append(number_sign(Point(40, foot - height + 40), str(number)))
        things.append(words(Point(80, foot - height + 52), board.say(key)))
    things.append(_cover(foot, 900))
    return Scene(foot, things)


def _wood_in_pass(wood: Sequence[Thing], in_pass: Pass) -> Sequence[Thing]:
    """Without what went in earlier passes, marks of other passes, and what ghosts never show."""
    order = (Pass.ROUGH, Pass.THINNING_OUT, Pass.FINE)
    gone = {f"pw-off-{earlier}" for earlier in order[: order.index(in_pass)]}
    marks = {f"pw-cut-{other}" for other in order if other != in_pass}
    return tuple(without_hidden(wood, gone | marks, {f"pw-off-{in_pass}"}))


def _cover(top: float, height: float) -> Thing:
    """Paper over what hangs below a row."""
    look: Attributes = {"class": "pw-paper", "fill": "#fbf6ea", "stroke": "none"}
    corners = (Point(0, top), Point(WIDTH, top), Point(WIDTH, top + height), Point(0, top + height))
    return Ink((Run(corners, closed=True, smooth=False),), look)


def which_cane(board: Board) -> Scene:
    """Two canes on one foot: the low one becomes the spur, the wood above it goes."""
    position = Position("R1", Side.RIGHT, 170, (_old(110), _cane("a", 5, 26), _cane("b", 5, 106)))
    parts = _vine(ONE_ARM_RIGHT, (Arm(Side.RIGHT, 360, 36, (position,)),))
    cuts = _done(_place_cuts("R1")[2:])
    plate = Plate(parts)
    times, x = 1.75, 90.0
    foot = 790.0 + 900 * times
    low, high = plate.stems["R1a"], plate.stems["R1b"]

    def at(point: Point) -> Point:
        return Point(x + point.x * times, foot + point.y * times)

    left = after_cuts(uncut(parts), cuts)
    wood = _wood(parts, board.prefix, Stages((Stage(GONE, left),)))
    marks = draw_cut_marks(plate, cuts)
    kept, gone = at(low.curve.at(75)), at(high.curve.at(150))
    side = 1 if kept.x > gone.x else -1
    kept_x, gone_x = (640.0, 130.0) if side > 0 else (130.0, 640.0)
    things: list[Thing] = [
        enlarged((*wood, marks), x, foot, times),
        _cover(880, 2000),
        wrong_sign(Point(gone_x, 110)),
        words(Point(gone_x, 180), board.say("high"), anchor="middle"),
        line(Point(gone_x + side * 90, 190), gone, width=2.4),
        right_sign(Point(kept_x, 480)),
        words(Point(kept_x, 550), board.say("low"), anchor="middle"),
        line(Point(kept_x - side * 90, 545), kept, width=2.4),
        words(Point(WIDTH / 2, 925), board.say("arm"), anchor="middle"),
    ]
    return Scene(950, things)
