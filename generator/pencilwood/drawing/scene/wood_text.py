"""The wood of a vine as SVG text that is the same in every language.

A handbook shows the same vine once for each language, in drawings that differ in nothing but
words and the beginnings of ids. The last few are held, so that the second language has them.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from functools import lru_cache

from pencilwood.drawing.ink.looks import INK
from pencilwood.drawing.ink.shapes import Attributes, Dot, Group, Thing
from pencilwood.drawing.ink.writer import COARSE, escape, number, write
from pencilwood.drawing.names.labels import (
    Letters,
    draw_letters,
    draw_named_letters,
    without_letter,
)
from pencilwood.drawing.names.letter_places import Beside
from pencilwood.drawing.names.place_names import draw_places
from pencilwood.drawing.plate import Frame, Plate, Window
from pencilwood.drawing.scene.cut_marks import along_marks, draw_cut_marks
from pencilwood.drawing.scene.cutpoints import APART_MM, CutPoint, cut_points_of_views
from pencilwood.drawing.scene.ground import draw_ground
from pencilwood.drawing.scene.lighten import within, without_hidden
from pencilwood.drawing.scene.tied_canes import Laid, is_laid, laid_stems, tips, with_tied
from pencilwood.drawing.scene.wood_drawing import draw_hanging, draw_parts
from pencilwood.drawing.scene.wood_shown import WoodShown
from pencilwood.drawing.wood.sawn_arm import draw_sawn
from pencilwood.drawing.wood.stems import THICKER
from pencilwood.vine.model import Vine
from pencilwood.vine.wood import Parts

_PREFIX = "\x80"
"""Stands for the beginning of an id; a sign of no script, which no name of wood holds.

One of Latin-1, since Python needs twice the memory for a text that holds others.
"""


def plate_of(parts: Parts, laid: Sequence[Laid] = ()) -> Plate:
    """The geometry of a vine with room for canes that are tied.

    That of the vines drawn last is still there.
    """
    return _plate(_Divided(parts.vine, parts), tuple(laid))


@dataclass(frozen=True)
class _Divided:
    vine: Vine
    parts: Parts = field(compare=False)


@lru_cache(maxsize=4)
def _plate(divided: _Divided, laid: tuple[Laid, ...]) -> Plate:
    plate = Plate(divided.parts)
    return replace(plate, reaching=tips(plate, laid)) if laid else plate


@dataclass(frozen=True)
class _Asked:
    """Wood is written once as long as all of this is the same."""

    vine: Vine
    facts: tuple[object, ...]
    clipped_to: Frame | None
    view: str
    shown: WoodShown = field(compare=False)


def wood_text(shown: WoodShown, window: Window, prefix: str) -> tuple[str, str]:
    """SVG of what stands behind the scale bar, and of what lies over it."""
    asked = _Asked(shown.parts.vine, shown.facts, clipped_to(window), window.view, shown)
    behind, over = _wood_text(asked)
    return behind.replace(_PREFIX, escape(prefix)), over


@lru_cache(maxsize=8)
def _wood_text(asked: _Asked) -> tuple[str, str]:
    shown = asked.shown
    plate = plate_of(shown.parts, shown.laid)
    views = [one for one in plate.views if asked.view in ("", one.looks.view)]
    behind: list[Thing] = [draw_ground(plate)] if plate in views else []
    for view in views:
        name = view.looks.view if view is not plate else ""
        behind.extend(_view(view, f"{_PREFIX}-{name}" if name else _PREFIX, asked))
    over: list[Thing] = []
    if shown.cut_marks:
        over.extend(draw_cut_marks(view, shown.cut_marks) for view in views)
    if shown.cutpoints:
        over.append(_cut_points(cut_points_of_views(plate)))
    return _written(behind, asked), _written(over, asked)


def _view(plate: Plate, prefix: str, asked: _Asked) -> Iterator[Thing]:
    shown, beside = asked.shown, _beside(plate, asked.shown, asked.clipped_to)
    stages = shown.stages
    drawn = Letters(dict.fromkeys(plate.stems, ()))
    if shown.lettered is None:
        drawn = draw_letters(plate, shown.letter_mm, beside)
    letters = drawn.of
    standing = draw_parts(plate, prefix, stages, letters)
    wood = with_tied(plate, standing, shown.laid)
    # What is laid where an arm comes off lies over the paper that takes the arm's place.
    lying = tuple(one for one in wood if shown.sawn and is_laid(one))
    behind = tuple(one for one in wood if one not in lying)
    yield Group(behind, {"class": "pw-wood-all"})
    yield _frame(plate, prefix)
    if shown.sawn:
        yield draw_sawn(plate.vine, shown.sawn)
        yield Group(lying, {"class": "pw-wood-laid"})
    if shown.frame_targets:
        yield plate.looks.frame_targets(plate.vine)
    yield Group(draw_hanging(plate, prefix, stages, letters), {"class": "pw-wood-front"})
    yield from drawn.whole
    yield draw_places(plate, shown.first_names, shown.phone_mm)
    if shown.lettered:
        # Also of wood that is gone: the text says what came off.
        yield draw_named_letters(plate, shown.letter_mm, beside)


def _beside(plate: Plate, shown: WoodShown, within: Frame | None) -> Beside:
    return Beside(
        only=None if shown.lettered is None else frozenset(shown.lettered),
        bars=along_marks(draw_cut_marks(plate, shown.cut_marks)),
        within=within or shown.seen,
        first=shown.first_letters,
        moved=laid_stems(plate, shown.laid) if plate.view is None else {},
    )


def unlettered(shown: WoodShown) -> Iterator[str]:
    """The wood whose letter has no room in any view, where all of the vine is shown."""
    plate = plate_of(shown.parts, shown.laid)
    return without_letter(plate, shown.letter_mm, lambda view: _beside(view, shown, None))


def _frame(plate: Plate, prefix: str) -> Group:
    """Trunk, head and arms; from where to where they go is told to the exercise's script."""
    drawn = plate.looks.frame(plate.vine, prefix)
    if plate.view is not None:
        return drawn  # From above, wood stands all around what no cut removes.
    half_trunk = plate.vine.trunk_thickness_mm * THICKER / 2
    xs = [-half_trunk, half_trunk, *(one.x for one in plate.looks.corners(plate.vine))]
    ends = f"{number(min(xs))} {number(max(xs))}"
    return Group(drawn.things, {**drawn.attributes, "data-ends": ends})


def _written(scene: Sequence[Thing], asked: _Asked) -> str:
    seen = lightened(scene, asked.shown, asked.clipped_to)
    return "".join([write(thing, COARSE) for thing in seen])


def clipped_to(window: Window) -> Frame | None:
    """The frame outside of which nothing is drawn."""
    return window.frame if window.clipped else None


def lightened(
    scene: Sequence[Thing], shown: WoodShown, clipped_to: Frame | None
) -> Sequence[Thing]:
    """A scene without what is never seen of it."""
    if shown.hidden or shown.ghosts:
        scene = tuple(without_hidden(scene, shown.hidden, shown.ghosts))
    return tuple(within(scene, clipped_to)) if clipped_to else scene


def _cut_points(points: Sequence[CutPoint]) -> Group:
    unseen: Attributes = {"class": "pw-cutpoints", "fill": INK, "fill-opacity": "0"}
    return Group(tuple(_circle(point) for point in points), unseen)


def _circle(point: CutPoint) -> Dot:
    look: dict[str, str | float] = {"class": "pw-cutpoint", "data-cut": point.part}
    if point.buds is not None:
        look["data-buds"] = str(point.buds)
    if point.view:
        look["data-view"] = point.view
    return Dot(point.middle, APART_MM / 2, look)
