"""The plate of the tools, each beside the wood it is for, all thicknesses to one scale."""

from __future__ import annotations

from pencilwood.drawing.looks import FACE, INK, OLD
from pencilwood.drawing.plates.board import Board, Scene, line, on_wood, shape, words
from pencilwood.drawing.points import Point
from pencilwood.drawing.shapes import Attributes, Dot, Thing

# Diameters on the plate; how thick each tool may cut stands in the text, from the profile.
_WOOD = (("shears", 40.0), ("loppers", 100.0), ("saw", 190.0))


def tool_sizes(board: Board) -> Scene:
    """Hand shears, loppers and saw, with the cut end of thin, thicker and thick wood."""
    things: list[Thing] = []
    tops = (20.0, 310.0, 600.0)
    drawers = (_shears, _loppers, _saw)
    for number, (key, across) in enumerate(_WOOD):
        top, draw = tops[number], drawers[number]
        middle_y = top + 110
        things.extend(_end_of_wood(Point(120, middle_y), across / 2))
        things.extend(draw(Point(250, middle_y)))
        foot_y = max(top + 240, middle_y + across / 2 + 62)
        things.append(words(Point(24, foot_y), board.say(key), bold=True))
        if number:
            things.append(line(Point(20, top - 24), Point(780, top - 24), width=1.6))
    return Scene(905, things)


def _end_of_wood(middle: Point, radius: float) -> list[Thing]:
    edge: Attributes = {"stroke": INK, "stroke-width": 2.0}
    bark = Dot(middle, radius, {"class": "pw-plate-bark", "fill": OLD, **edge})
    within = radius - max(4.0, radius * 0.12)
    face = Dot(middle, within, {"class": "pw-plate-face", "fill": FACE, **edge})
    rings = [
        Dot(
            middle,
            radius * share,
            {"class": "pw-plate-ring", "fill": "none", "stroke": INK, "stroke-width": 1.4},
        )
        for share in (0.62, 0.34)
        if radius > 30
    ]
    return [bark, face, *rings]


def _moved(corner: Point, *places: tuple[float, float]) -> tuple[Point, ...]:
    return tuple(Point(corner.x + x, corner.y + y) for x, y in places)


def _shears(at: Point) -> list[Thing]:
    """Short blades, a bolt, two handles and a spring."""
    blade = _moved(at, (10, -24), (60, -44), (120, -40), (160, -10), (150, 8), (90, -6), (40, -12))
    hook = _moved(at, (24, 30), (40, 52), (100, 48), (150, 22), (160, 4), (140, 0), (90, 24))
    upper = _moved(at, (150, 2), (170, -14), (250, -44), (380, -58), (392, -40), (380, -26),
                   (260, -8), (176, 20))  # fmt: skip
    lower = _moved(at, (150, 0), (172, 22), (250, 50), (380, 68), (394, 50), (384, 34),
                   (270, 14), (178, -14))  # fmt: skip
    spring = [(200 + 9 * n, -8 if n % 2 else 20) for n in range(6)]
    return [
        shape(*lower, smooth=False), shape(*upper, smooth=False), shape(*hook), shape(*blade),
        line(*_moved(at, *spring), width=2.4),
        Dot(Point(at.x + 160, at.y + 3), 9, {"class": "pw-plate-ink", "fill": INK}),
    ]  # fmt: skip


def _loppers(at: Point) -> list[Thing]:
    """The same blades on two long handles."""
    blade = _moved(at, (0, -24), (50, -44), (100, -38), (130, -8), (110, 4), (60, -10), (20, -14))
    hook = _moved(at, (10, 30), (30, 52), (90, 46), (128, 18), (110, 2), (70, 24))
    upper = _moved(at, (120, -4), (136, -18), (350, -62), (356, -44), (140, 8))
    lower = _moved(at, (120, 4), (138, 20), (350, 66), (356, 48), (142, -8))
    grips = [
        shape(*_moved(at, (350, -70), (510, -106), (520, -82), (358, -40)), fill=INK),
        shape(*_moved(at, (350, 74), (510, 110), (520, 86), (358, 44)), fill=INK),
    ]
    return [
        shape(*lower), shape(*upper), *grips, shape(*hook), shape(*blade),
        Dot(Point(at.x + 128, at.y), 9, {"class": "pw-plate-ink", "fill": INK}),
    ]  # fmt: skip


def _saw(at: Point) -> list[Thing]:
    """A curved pull saw with its handle."""
    teeth: list[tuple[float, float]] = []
    for number in range(24):
        x = 14.0 * number
        sag = 26 * (1 - ((x - 168) / 168) ** 2)
        teeth.append((x, 26 + sag * 0.5 + (0 if number % 2 else 12)))
    back = [(336.0, -14.0), (220.0, -18.0), (100.0, -10.0), (0.0, 18.0)]
    handle = _moved(at, (326, -26), (326, -26), (372, -34), (440, -28), (492, -10), (524, 26),
                    (516, 54), (494, 58), (470, 36), (436, 26), (388, 34), (352, 42), (326, 40),
                    (326, 40))  # fmt: skip
    ferrule = _moved(at, (352, -30), (352, 40))
    rivets = [
        Dot(Point(at.x + right, at.y + 2), 6, {"class": "pw-plate-face", "fill": FACE,
                                               "stroke": INK, "stroke-width": 2.6})
        for right in (384.0, 440.0)
    ]  # fmt: skip
    return [
        shape(*_moved(at, *teeth, *back), width=2.6),
        shape(*handle, fill=FACE, smooth=True),
        on_wood(*ferrule, width=3.0),
        *rivets,
    ]
