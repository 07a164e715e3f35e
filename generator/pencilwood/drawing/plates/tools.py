"""The plate of the tools, each beside the wood it is for, all thicknesses to one scale."""

from __future__ import annotations

from pencilwood.drawing.looks import FACE, INK, OLD
from pencilwood.drawing.plates.board import Board, Scene, line, on_wood, shape, words
from pencilwood.drawing.points import Point
from pencilwood.drawing.shapes import Attributes, Dot, Thing

# Diameters on the plate; how thick each tool may cut stands in the text, from the profile.
_BOLT = 176.0
_INKED: Attributes = {"class": "pw-plate-ink", "fill": INK}
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


def _blades(at: Point, size: float) -> list[Thing]:
    """A curved blade that passes a hooked one; they meet at a bolt, `_BOLT` from the tip."""

    def scaled(*places: tuple[float, float]) -> tuple[Point, ...]:
        return _moved(at, *((x * size, y * size) for x, y in places))

    # A place named twice is a corner; the line bends smoothly past all others.
    blade = scaled((2, -4), (2, -4), (38, -36), (92, -52), (146, -44), (188, -22), (196, 6),
                   (172, 18), (150, 4), (100, -6), (52, -8))  # fmt: skip
    hook = scaled((16, 22), (16, 22), (44, 46), (96, 58), (150, 50), (190, 26), (196, -6),
                  (172, -16), (148, 12), (100, 26), (56, 28))  # fmt: skip
    edge = scaled((26, -12), (60, -18), (104, -16), (150, -6))
    return [
        shape(*hook, smooth=True),
        shape(*blade, smooth=True),
        line(*edge, width=1.6, smooth=True),
        Dot(Point(at.x + _BOLT * size, at.y), 13 * size, _INKED),
    ]


def _shears(at: Point) -> list[Thing]:
    """Short blades, two handles to fit a hand, and a spring between them."""
    upper = _moved(at, (168, 12), (186, -14), (232, -34), (300, -54), (380, -66),
                   (438, -66), (462, -54), (446, -40), (384, -36), (304, -24), (240, -4),
                   (198, 20))  # fmt: skip
    lower = _moved(at, (168, -12), (186, 16), (230, 40), (296, 62), (372, 78), (440, 84), (470, 72),
                   (460, 54), (396, 48), (310, 30), (244, 8), (198, -18))  # fmt: skip
    spring = [(208 + 11.0 * turn, -14.0 if turn % 2 else 20.0) for turn in range(8)]
    return [
        line(*_moved(at, *spring), width=2.4, smooth=True),
        shape(*lower, smooth=True),
        shape(*upper, smooth=True),
        line(*_moved(at, (300, -40), (380, -52), (436, -54)), width=1.6, smooth=True),
        line(*_moved(at, (300, 46), (376, 62), (440, 70)), width=1.6, smooth=True),
        *_blades(at, 1.0),
    ]


def _loppers(at: Point) -> list[Thing]:
    """The same blades on two long handles."""
    things: list[Thing] = []
    for up in (1, -1):
        bar = _moved(
            at, *((x, up * y) for x, y in ((132, 4), (150, 20), (352, 64), (358, 46), (156, -2)))
        )
        grip = ((350, 72), (350, 72), (430, 92), (508, 112), (526, 104), (522, 86), (440, 66),
                (358, 40), (358, 40))  # fmt: skip
        things.append(shape(*bar))
        things.append(shape(*_moved(at, *((x, up * y) for x, y in grip)), fill=INK, smooth=True))
    return [*things, *_blades(at, 0.8)]


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
