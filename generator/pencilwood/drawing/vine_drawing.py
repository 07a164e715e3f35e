"""The drawing of a vine as one inline SVG."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass

from pencilwood.drawing.ink.looks import PAPER, stylesheet
from pencilwood.drawing.ink.points import Point
from pencilwood.drawing.ink.shapes import Attributes, Box, Group
from pencilwood.drawing.ink.svg_root import svg_root
from pencilwood.drawing.ink.writer import element, escape, number, write
from pencilwood.drawing.names.labels import LETTER_MM
from pencilwood.drawing.plate import Frame, Window
from pencilwood.drawing.scene.cutpoints import CutPoint, cut_points
from pencilwood.drawing.scene.stages import GONE, Stage, Stages, stages_of_passes
from pencilwood.drawing.scene.tied_canes import Laid, laid_canes
from pencilwood.drawing.scene.trellis import draw_scale, draw_trellis
from pencilwood.drawing.scene.wood_text import WoodShown, lightened, plate_of, wood_shown, wood_text
from pencilwood.drawing.wood.sawn_arm import Sawn
from pencilwood.kept import kept_text
from pencilwood.units import UnitSystem
from pencilwood.vine.passes import DoneCut, after_cuts
from pencilwood.vine.wood import Parts, WoodLeft, uncut


def draw_vine(
    parts: Parts,
    prefix: str,
    language: str,
    *,
    title: str,
    description: str,
    cutpoints: bool = False,
    frame_targets: bool = False,
    cut_marks: Sequence[DoneCut] = (),
    units: UnitSystem = "metric",
    stages: Stages | None = None,
    css_class: str = "",
    data: Mapping[str, str] | None = None,
    alone: bool = False,
    window: Window | None = None,
    hidden: Collection[str] = (),
    ghosts: Collection[str] = (),
    laid: Sequence[Laid] = (),
    sawn: Sawn | None = None,
    over: Group | None = None,
    letter_mm: float = LETTER_MM,
    first_names: Collection[str] = (),
) -> str:
    """A vine as SVG text; every id in it begins with `prefix`.

    `cutpoints` adds places to tap; `frame_targets` lets trunk, head and arms be tapped by
    name; `cut_marks` shows cuts as bars across the wood; `stages`
    adds the classes that tell what is gone; `css_class` goes on the root; `data` gives
    `data-` attributes of the root; `alone` brings the style sheet along, for a file;
    `window` shows a part of the vine instead of all of it; `hidden` and `ghosts` are classes
    of wood that is left out, or of which the edge alone is drawn; `laid` are canes that are
    tied along the wire; `sawn` is an arm that comes off at the head; `over` is drawn last;
    `letter_mm` is how high the letters beside the wood are; `first_names` are places that the
    text speaks of, whose names a small screen leaves out last.
    """
    shown = wood_shown(
        parts,
        stages or Stages(),
        cutpoints=cutpoints,
        frame_targets=frame_targets,
        cut_marks=cut_marks,
        hidden=hidden,
        ghosts=ghosts,
        laid=laid,
        sawn=sawn,
        clipped_to=window.frame if window and window.clipped else None,
        view=window.view if window else "",
        letter_mm=letter_mm,
        first_names=first_names,
    )
    sheet = _Paper(prefix, language, title, description, units, css_class, alone, window, over)
    own = dict(data or {})
    facts = [shown.facts, sheet, own, stylesheet() if alone else ""]
    return kept_text("drawing", facts, lambda: _drawn(shown, sheet, own))


@dataclass(frozen=True)
class _Paper:
    """What a drawing has beside its wood."""

    prefix: str
    language: str
    title: str
    description: str
    units: UnitSystem
    css_class: str
    alone: bool
    window: Window | None
    over: Group | None


def _drawn(shown: WoodShown, sheet: _Paper, data: Mapping[str, str]) -> str:
    plate = plate_of(shown.parts, shown.laid)
    window = sheet.window or Window(plate.frame)
    behind, over = wood_text(shown, sheet.prefix)
    trellis = draw_trellis(plate, sheet.language, sheet.units, window.across, shown.view)
    scale = draw_scale(plate, sheet.language, sheet.units)
    inside = [
        _words(sheet.prefix, sheet.title, sheet.description),
        _style() if sheet.alone else "",
        write(_paper(window.frame)),
        *map(write, lightened([trellis], shown)),
        behind,
        *map(write, [] if shown.view else lightened([scale], shown)),
        over,
        write(sheet.over) if sheet.over else "",
    ]
    root = _root(window.frame, sheet.prefix, sheet.language, sheet.css_class, data)
    return element("svg", root, "".join(inside))


def draw_state(
    parts: Parts,
    left: WoodLeft | None,
    prefix: str,
    language: str,
    *,
    title: str,
    description: str,
    units: UnitSystem = "metric",
    css_class: str = "",
    cutpoints: bool = False,
) -> str:
    """A vine with what is gone shown as such; `left` None draws it uncut."""
    stages = Stages() if left is None else Stages((Stage(GONE, left),))
    return draw_vine(
        parts,
        prefix,
        language,
        title=title,
        description=description,
        units=units,
        stages=stages,
        css_class=css_class,
        cutpoints=cutpoints,
    )


def draw_passes(
    parts: Parts,
    cuts: Sequence[DoneCut],
    prefix: str,
    language: str,
    *,
    title: str,
    description: str,
    plan: WoodLeft | None = None,
    show: str = "before",
    units: UnitSystem = "metric",
) -> str:
    """One drawing that carries every state; the class `pw-show-...` on it chooses which shows.

    `show` is "before", "rough", "thinning-out", "fine" or "plan". Canes that the cuts end with
    tying lie along the wire.
    """
    laid = laid_canes(after_cuts(uncut(parts), cuts), cuts)
    return draw_vine(
        parts,
        prefix,
        language,
        title=title,
        description=description,
        units=units,
        stages=stages_of_passes(parts, cuts, plan),
        css_class=f"pw-show-{show}",
        cut_marks=of_standing_wood(cuts, laid),
        laid=laid,
    )


def of_standing_wood(cuts: Sequence[DoneCut], laid: Sequence[Laid]) -> list[DoneCut]:
    """The mark of a cut would float where a cane stood before it was tied."""
    lying = {one.part for one in laid}
    return [done for done in cuts if done.cut.part not in lying]


def cutpoint_positions(parts: Parts) -> tuple[CutPoint, ...]:
    """Where every cut point of the drawing is."""
    return cut_points(plate_of(parts))


def _root(
    frame: Frame, prefix: str, language: str, css_class: str, data: Mapping[str, str]
) -> Attributes:
    box = " ".join(number(value) for value in frame.box)
    return svg_root("vine", prefix, language, box, f"pw-vine {css_class}".rstrip(), data)


def _words(prefix: str, title: str, description: str) -> str:
    return element("title", {"id": f"{prefix}-title"}, escape(title)) + element(
        "desc", {"id": f"{prefix}-desc"}, escape(description)
    )


def _style() -> str:
    return element("style", {}, escape(stylesheet()))


def _paper(frame: Frame) -> Box:
    left, top, width, height = frame.box
    look: Attributes = {"class": "pw-paper", "fill": PAPER}
    return Box(Point(left, top), width, height, look)
