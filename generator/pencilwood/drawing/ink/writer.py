"""Writes a scene as SVG text: every text escaped, every length rounded once.

Lengths are rounded to 0.1 mm, the points of pen strokes to half a millimetre where the drawing of
a whole vine asks for it: less than the pen is wide, and a quarter of the bytes.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from functools import lru_cache

from pencilwood.drawing.ink.points import XY
from pencilwood.drawing.ink.shapes import Attributes, Box, Dot, Group, Ink, Run, Thing, Words

_ESCAPES = {"&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "'": "&#39;"}
# What must be escaped, and whatever is not a character of XML 1.0. Nearly all text is neither.
_TO_CHANGE = re.compile("[&<>\"']|[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")


def escape(text: str) -> str:
    """The text as it may stand in an element or between the quotes of an attribute.

    Characters that XML 1.0 forbids are replaced, so that no text can spoil a page.
    """
    return _TO_CHANGE.sub(lambda sign: _ESCAPES.get(sign[0], "�"), text)


Pair = tuple[int, int]
"""A point or a way, in tenths of a millimetre."""

FINE, COARSE, SMALL = 1, 5, 10
"""What points of pen strokes are rounded to, in tenths of a millimetre."""


def tenths(value: float, grid: int = FINE) -> int:
    """A length in tenths of a millimetre; a drawing rounds here and in `_on_grid` only."""
    return round(value * 10 / grid) * grid


def _on_grid(points: Sequence[XY], grid: int) -> list[Pair]:
    """The same for all points of a stroke; a vine has tens of thousands of them."""
    return [(round(x * 10 / grid) * grid, round(y * 10 / grid) * grid) for x, y in points]


def number(value: float) -> str:
    """A length as SVG writes it."""
    return _SHORT[tenths(value)]


class _Written(dict[int, str]):
    """Lengths as they are written, by tenths of a millimetre: a vine has thousands, few unlike."""

    def __init__(self, *, may_follow: bool) -> None:
        super().__init__()
        self._may_follow = may_follow

    def __missing__(self, value_tenths: int) -> str:
        whole, rest = divmod(abs(value_tenths), 10)
        # A minus sign parts a number well enough from the one that it follows.
        sign = "-" if value_tenths < 0 else " " if self._may_follow else ""
        if len(self) >= _MOST_WRITTEN:
            self.clear()
        self[value_tenths] = written = f"{sign}{whole}.{rest}" if rest else f"{sign}{whole}"
        return written


_MOST_WRITTEN = 20_000
_SHORT = _Written(may_follow=False)
_APART = _Written(may_follow=True)


def element(name: str, attributes: Attributes, inside: str | None = None) -> str:
    """One element; without `inside` it is empty. Attributes stand in the given order."""
    written = "".join([_attribute(key, value) for key, value in attributes.items()])
    return f"<{name}{written}/>" if inside is None else f"<{name}{written}>{inside}</{name}>"


@lru_cache(maxsize=5_000)
def _attribute(key: str, value: str | float) -> str:
    """One attribute; most are the same for hundreds of things of a drawing."""
    return f' {key}="{escape(value) if isinstance(value, str) else number(value)}"'


def write(thing: Thing, grid: int = FINE) -> str:
    """One thing of the scene as SVG; `grid` is FINE, COARSE or SMALL."""
    match thing:
        case Group():
            inside = "".join([write(part, grid) for part in thing.things])
            return element("g", thing.attributes, f"{inside}\n")
        case Ink():
            # A path holds nothing to escape, and no two are alike.
            look = "".join([_attribute(key, value) for key, value in thing.attributes.items()])
            return f'<path{look} d="{_path(thing.runs, grid)}"/>'
        case Dot():
            return _dot(thing, grid)
        case Box():
            size = {"width": thing.width_mm, "height": thing.height_mm}
            corner = {"x": thing.corner.x, "y": thing.corner.y}
            return element("rect", {**thing.attributes, **corner, **size})
        case Words():
            foot = {"x": thing.foot.x, "y": thing.foot.y}
            return element("text", {**thing.attributes, **foot}, escape(thing.text))


def _dot(dot: Dot, grid: int) -> str:
    x, y = (_SHORT[tenths(value, grid)] for value in dot.middle)
    if dot.flattening == 1.0:
        look = "".join([_attribute(key, value) for key, value in dot.attributes.items()])
        return f'<circle{look} cx="{x}" cy="{y}" r="{number(dot.radius_mm)}"/>'
    middle = {"cx": x, "cy": y}
    radii = {"rx": dot.radius_mm, "ry": dot.radius_mm * dot.flattening}
    turn = {"transform": f"rotate({round(dot.turn_deg)} {x} {y})"}
    return element("ellipse", {**dot.attributes, **middle, **radii, **turn})


def _path(runs: Sequence[Run], grid: int) -> str:
    """All strokes of a pen; each but the first starts so far from where the pen is."""
    text, pen = "", (0, 0)
    for run in runs:
        points = _on_grid(run.points, grid)
        start = points[0]
        text += ("m" if text else "M") + _pair(start[0] - pen[0], start[1] - pen[1])
        if run.smooth and len(points) > 2:
            text += "".join(_curves(points, run.closed, grid))
        else:
            text += "l" + _joined(_relative(points[:1], points[1:]))
        back = run.closed and not run.open_foot
        text += "z" if back else ""
        pen = start if back else points[-1]
    return text


def _curves(points: Sequence[Pair], closed: bool, grid: int) -> Iterable[str]:
    """A line that every point but the first and last bends, from middle to middle.

    A closed run keeps its corners where it starts and where it turns back, in its middle. From a
    middle the line goes on as it came: its next bend lies where the last one is mirrored, within a
    step of the grid, and need not be written.
    """
    corners = (len(points) // 2 - 1, len(points) // 2) if closed else ()
    here, mirrored = points[0], None
    for index, bend in enumerate(points[1:-1], start=1):
        after = points[index + 1]
        if index in corners:
            if here != bend:
                yield "l" + _pair(bend[0] - here[0], bend[1] - here[1])
            here, mirrored = bend, None
            continue
        bent = mirrored or bend
        last = index == len(points) - 2 or index + 1 in corners
        end = after if last else _middle(bent, after, grid)
        step_x, step_y = end[0] - here[0], end[1] - here[1]
        if mirrored is None:
            bent_by = _pair(bent[0] - here[0], bent[1] - here[1])
            yield f"q{bent_by}{_APART[step_x]}{_APART[step_y]}"
        else:
            yield f"t{_SHORT[step_x]}{_APART[step_y]}"
        here, mirrored = end, (2 * end[0] - bent[0], 2 * end[1] - bent[1])
    if here != points[-1]:
        yield "l" + _pair(points[-1][0] - here[0], points[-1][1] - here[1])


def _middle(here: Pair, after: Pair, grid: int) -> Pair:
    twice = 2 * grid
    x, y = here[0] + after[0], here[1] + after[1]
    return (x + grid) // twice * grid, (y + grid) // twice * grid


def _relative(start: Sequence[Pair], points: Sequence[Pair]) -> list[Pair]:
    moves: list[Pair] = []
    here = start[0]
    for point in points:
        moves.append((point[0] - here[0], point[1] - here[1]))
        here = point
    return moves


def _pair(x: int, y: int) -> str:
    return _SHORT[x] + _APART[y]


def _joined(pairs: Sequence[Pair]) -> str:
    return "".join([_APART[value] for pair in pairs for value in pair]).removeprefix(" ")
