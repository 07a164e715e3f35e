"""Which names of places would lie on each other in the larger letters of a small screen."""

from __future__ import annotations

import math
from bisect import bisect_left, bisect_right
from collections.abc import Collection, Iterable, Mapping, Sequence

from pencilwood.drawing.ink.looks import POSITION_MM
from pencilwood.drawing.ink.points import Point

LARGER_ON_PHONES = 70 / POSITION_MM
"""Names of a vine seen from near, on a phone compared with the drawing; vine.css gives the 70."""
CROWDED = "pw-crowded"
"""The class of a name that a small screen leaves out."""
NO_LINE = "pw-no-line"
"""The class of a name with no line to its place: from near only the other view gives it."""
ON_WOOD = "pw-on-wood"
"""The class of a name that lies on wood under the arm: from near it is left out."""
_WIDTH_SHARE = 0.62
"""Width of a letter or digit, compared with its height; wider than most, to be safe."""
_HEIGHT_SHARE = 0.75
"""How high a capital letter or a digit is."""
_GAP_MM = POSITION_MM * 0.18
"""Between names side by side, which would be read as one."""
_ROUNDING_MM = 0.1
_WOOD_HALF_MM = 11.0
"""Half as wide as most canes are drawn, with the ink around them."""


def half_wide_mm(name: str) -> float:
    """Half the width of a name in the letters of the drawing."""
    return len(name) * POSITION_MM * _WIDTH_SHARE / 2


def crowded_names(
    feet: Iterable[tuple[str, Point]],
    first: Collection[str] = (),
    times: float = LARGER_ON_PHONES,
) -> frozenset[str]:
    """The names, each with the foot of its text, that have no room beside those nearer the head.

    A phone shows them so many times as large as the drawing.

    Names that are spoken of go `first`. Of two that are as near, the first one goes before.
    """
    kept: list[tuple[str, Point]] = []
    crowded = set()
    for name, foot in sorted(feet, key=lambda one: (one[0] not in first, abs(one[1].x))):
        if any(_touch(name, foot, *other, times) for other in kept):
            crowded.add(name)
        else:
            kept.append((name, foot))
    return frozenset(crowded)


def pushed_out(feet: Mapping[str, Point], times: float) -> dict[str, Point]:
    """The feet of names, each in its row a little outward where those nearer the head need room.

    One that would go further than a quarter of its width stays: there is no room for it.
    """
    pushed: dict[str, Point] = {}
    last: dict[tuple[float, bool], tuple[str, float]] = {}
    for name, foot in sorted(feet.items(), key=lambda one: abs(one[1].x)):
        row, far_mm = (foot.y, foot.x < 0), abs(foot.x)
        if row in last:
            inner, inner_mm = last[row]
            far_mm = max(far_mm, inner_mm + _apart_mm(name, inner, times) + _ROUNDING_MM)
        if far_mm - abs(foot.x) > half_wide_mm(name) * times / 2:
            pushed[name] = foot
        else:
            pushed[name] = Point(math.copysign(far_mm, foot.x), foot.y)
            last[row] = name, far_mm
    return pushed


def lies_on_wood(name: str, foot: Point, wood: Sequence[Point], times: float = 1.0) -> bool:
    """Whether the name, so many times as large as drawn, meets wood.

    Points of the wood are a few mm apart and sorted from left to right: a vine has thousands.
    """
    wide = half_wide_mm(name) * times + _WOOD_HALF_MM
    high = POSITION_MM * _HEIGHT_SHARE * times + _WOOD_HALF_MM
    first = bisect_right(wood, Point(foot.x - wide, math.inf))
    last = bisect_left(wood, Point(foot.x + wide, -math.inf))
    return any(foot.y - high < wood[at].y < foot.y + _WOOD_HALF_MM for at in range(first, last))


def _touch(name: str, foot: Point, other: str, other_foot: Point, times: float) -> bool:
    high = POSITION_MM * _HEIGHT_SHARE * times
    return (
        abs(foot.x - other_foot.x) < _apart_mm(name, other, times)
        and abs(foot.y - other_foot.y) < high
    )


def _apart_mm(name: str, other: str, times: float) -> float:
    """Between the middles of two names that can just be read apart."""
    return (half_wide_mm(name) + half_wide_mm(other) + _GAP_MM) * times
