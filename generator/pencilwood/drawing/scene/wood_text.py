"""The wood of a vine as SVG text that is the same in every language.

A handbook shows the same vine once for each language, in drawings that differ in nothing but
words and the beginnings of ids. The last few are held, so that the second language has them.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass, field, fields, replace
from functools import lru_cache

from pencilwood.drawing.ink.looks import INK
from pencilwood.drawing.ink.shapes import Attributes, Dot, Group, Thing
from pencilwood.drawing.ink.writer import COARSE, escape, number, write
from pencilwood.drawing.names.labels import LETTER_MM, draw_letters
from pencilwood.drawing.names.place_names import draw_places
from pencilwood.drawing.plate import Frame, Plate
from pencilwood.drawing.scene.cut_marks import draw_cut_marks
from pencilwood.drawing.scene.cutpoints import APART_MM, CutPoint, cut_points_of_views
from pencilwood.drawing.scene.ground import draw_ground
from pencilwood.drawing.scene.lighten import within, without_hidden
from pencilwood.drawing.scene.stages import Stages
from pencilwood.drawing.scene.tied_canes import Laid, is_laid, tips, with_tied
from pencilwood.drawing.scene.wood_drawing import draw_hanging, draw_parts
from pencilwood.drawing.wood.sawn_arm import Sawn, draw_sawn
from pencilwood.drawing.wood.stems import THICKER
from pencilwood.kept import name_of
from pencilwood.vine.model import Vine
from pencilwood.vine.passes import DoneCut
from pencilwood.vine.wood import Parts

_PREFIX = "\x80"
"""Stands for the beginning of an id; a sign of no script, which no name of wood holds.

One of Latin-1, since Python needs twice the memory for a text that holds others.
"""


@dataclass(frozen=True)
class WoodShown:
    """What a drawing shows of a vine, whatever its language."""

    parts: Parts = field(compare=False)
    stages: Stages = field(compare=False)
    vine: Vine
    gone: tuple[tuple[str, str, tuple[int, ...]], ...]
    """Stages in plain values: whether in order or apart, class, states."""
    cutpoints: bool
    frame_targets: bool
    cut_marks: tuple[DoneCut, ...]
    hidden: tuple[str, ...]
    ghosts: tuple[str, ...]
    laid: tuple[Laid, ...]
    sawn: Sawn | None = None
    clipped_to: Frame | None = None
    """What lies outside of it is left out."""
    view: str = ""
    """The one view that is drawn; empty for all."""
    letter_mm: float = LETTER_MM
    """How high the letters beside the wood are."""
    first_names: tuple[str, ...] = ()
    """Places that the text beside it speaks of; their names go before those of neighbours."""

    @property
    def facts(self) -> list[object]:
        """All that the drawing follows from."""
        own = {one.name: getattr(self, one.name) for one in fields(self) if one.compare}
        return list({**own, "vine": name_of(self.vine)}.values())


def wood_shown(
    parts: Parts,
    stages: Stages,
    *,
    cutpoints: bool,
    frame_targets: bool,
    cut_marks: Sequence[DoneCut],
    hidden: Collection[str],
    ghosts: Collection[str],
    laid: Sequence[Laid],
    sawn: Sawn | None = None,
    clipped_to: Frame | None = None,
    view: str = "",
    letter_mm: float = LETTER_MM,
    first_names: Collection[str] = (),
) -> WoodShown:
    """The same in a form that can be compared; the parts and stages follow from its values."""
    gone = tuple(
        (kind, stage.css_class, stage.left.states)
        for kind, row in (("in order", stages.in_order), ("apart", stages.apart))
        for stage in row
    )
    return WoodShown(
        parts=parts,
        stages=stages,
        vine=parts.vine,
        gone=gone,
        cutpoints=cutpoints,
        frame_targets=frame_targets,
        cut_marks=tuple(cut_marks),
        hidden=tuple(sorted(hidden)),
        ghosts=tuple(sorted(ghosts)),
        laid=tuple(laid),
        sawn=sawn,
        clipped_to=clipped_to,
        view=view,
        letter_mm=letter_mm,
        first_names=tuple(sorted(first_names)),
    )


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


def wood_text(shown: WoodShown, prefix: str) -> tuple[str, str]:
    """SVG of what stands behind the scale bar, and of what lies over it."""
    behind, over = _wood_text(shown)
    return behind.replace(_PREFIX, escape(prefix)), over


@lru_cache(maxsize=8)
def _wood_text(shown: WoodShown) -> tuple[str, str]:
    plate = plate_of(shown.parts, shown.laid)
    views = [one for one in plate.views if shown.view in ("", one.looks.view)]
    behind: list[Thing] = [draw_ground(plate)] if plate in views else []
    for view in views:
        name = view.looks.view if view is not plate else ""
        behind.extend(_view(view, f"{_PREFIX}-{name}" if name else _PREFIX, shown))
    over: list[Thing] = []
    if shown.cut_marks:
        over.extend(draw_cut_marks(view, shown.cut_marks) for view in views)
    if shown.cutpoints:
        over.append(_cut_points(cut_points_of_views(plate)))
    return _written(behind, shown), _written(over, shown)


def _view(plate: Plate, prefix: str, shown: WoodShown) -> Iterator[Thing]:
    letters, stages = draw_letters(plate, shown.letter_mm), shown.stages
    standing = draw_parts(plate, prefix, stages, letters)
    wood = with_tied(plate, standing, shown.laid)
    # What is laid where an arm comes off lies over the paper that takes the arm's place.
    lying = tuple(one for one in wood if shown.sawn and is_laid(one))
    behind = tuple(one for one in wood if one not in lying)
    yield Group(behind, {"class": "pw-wood-all"})
    yield _frame(plate, prefix)
    if shown.sawn:
        yield draw_sawn(shown.vine, shown.sawn)
        yield Group(lying, {"class": "pw-wood-laid"})
    if shown.frame_targets:
        yield plate.looks.frame_targets(shown.vine)
    yield Group(draw_hanging(plate, prefix, stages, letters), {"class": "pw-wood-front"})
    yield draw_places(plate, shown.first_names)


def _frame(plate: Plate, prefix: str) -> Group:
    """Trunk, head and arms; from where to where they go is told to the exercise's script."""
    drawn = plate.looks.frame(plate.vine, prefix)
    if plate.view is not None:
        return drawn  # From above, wood stands all around what no cut removes.
    half_trunk = plate.vine.trunk_thickness_mm * THICKER / 2
    xs = [-half_trunk, half_trunk, *(one.x for one in plate.looks.corners(plate.vine))]
    ends = f"{number(min(xs))} {number(max(xs))}"
    return Group(drawn.things, {**drawn.attributes, "data-ends": ends})


def _written(scene: Sequence[Thing], shown: WoodShown) -> str:
    return "".join([write(thing, COARSE) for thing in lightened(scene, shown)])


def lightened(scene: Sequence[Thing], shown: WoodShown) -> Sequence[Thing]:
    """A scene without what is never seen of it."""
    if shown.hidden or shown.ghosts:
        scene = tuple(without_hidden(scene, shown.hidden, shown.ghosts))
    return tuple(within(scene, shown.clipped_to)) if shown.clipped_to else scene


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
