"""The ground: a line, short strokes of earth below it, and tufts of winter grass."""

from __future__ import annotations

from collections.abc import Iterator

from pencilwood.drawing.ink.curves import steps
from pencilwood.drawing.ink.grain import Grain
from pencilwood.drawing.ink.looks import PENCIL
from pencilwood.drawing.ink.points import Point
from pencilwood.drawing.ink.shapes import Attributes, Group, Ink, Run
from pencilwood.drawing.plate import Plate

_TUFTS_MM = 130.0
_EARTH_MM = 34.0


def draw_ground(plate: Plate) -> Group:
    """The ground of a whole vine: from edge to edge of the drawing, or under its first view."""
    left, right = plate.looks.ground_mm(plate.vine) or (plate.frame.left, plate.frame.right)
    grain = Grain("ground")
    line = [
        Point(x, grain.within(-3, 5, "level", number))
        for number, x in enumerate(steps(left, right, 110))
    ]
    pen: Attributes = {"class": "pw-ground", "fill": "none", "stroke-width": 3.4}
    fine: Attributes = {"class": "pw-grass", "fill": "none", "stroke-width": 1.8}
    strokes = tuple(grass_and_earth(left, right, 0.0))
    things = (Ink((Run(tuple(line)),), pen), Ink(strokes, fine))
    return Group(things, {"class": "pw-earth", "stroke": PENCIL})


def grass_and_earth(
    left: float, right: float, y: float, tufts_mm: float = _TUFTS_MM
) -> Iterator[Run]:
    """Tufts about `tufts_mm` apart on a line at this height, and strokes of earth below it."""
    grain = Grain("ground")
    for tuft in range(int((right - left - 100) / tufts_mm)):
        x = left + 20 + tufts_mm * (tuft + grain.share("tuft", tuft))
        yield from _tuft(Point(x, y), grain, tuft)
    for stroke in range(int((right - left) / _EARTH_MM) - 1):
        x = left + _EARTH_MM * (stroke + grain.share("earth", stroke))
        yield _earth(Point(x, y), grain, stroke)


def _tuft(at: Point, grain: Grain, tuft: int) -> Iterator[Run]:
    for blade in range(3):
        lean = grain.within(-18, 18, f"blade{blade}", tuft)
        tall = grain.within(14, 36, f"tall{blade}", tuft)
        foot = Point(at.x + blade * 4, at.y + 2)
        bend = Point(foot.x + lean * 0.3, at.y - tall * 0.6)
        yield Run((foot, bend, Point(foot.x + lean, at.y - tall)))


def _earth(at: Point, grain: Grain, stroke: int) -> Run:
    """A stroke that slants down out of the light."""
    long = grain.within(10, 30, "long", stroke)
    top = at.y + grain.within(8, 20, "deep", stroke)
    return Run((Point(at.x + long, top), Point(at.x, top + long * 0.45)))
