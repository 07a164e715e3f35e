"""A part of a pruned vine, with nothing in the drawing that is never seen."""

from __future__ import annotations

from collections.abc import Sequence

from pencilwood.drawing.ink.shapes import Group
from pencilwood.drawing.plate import RIGHT_MARGIN_MM, Frame, Window
from pencilwood.drawing.scene.stages import GONE, Stage, Stages
from pencilwood.drawing.scene.tied_canes import laid_canes
from pencilwood.drawing.scene.trellis import WIRE_WORDS
from pencilwood.drawing.scene.wood_text import plate_of
from pencilwood.drawing.vine_drawing import draw_vine, of_standing_wood
from pencilwood.units import UnitSystem
from pencilwood.vine.passes import DoneCut, after_cuts
from pencilwood.vine.wood import Parts, uncut


def draw_pruned(
    parts: Parts,
    cuts: Sequence[DoneCut],
    prefix: str,
    language: str,
    *,
    title: str,
    description: str,
    units: UnitSystem = "metric",
    window: Frame,
    hidden: Sequence[str] = (),
    css_class: str = "",
    view: str = "",
    over: Group | None = None,
) -> str:
    """A part of a pruned vine, large: what is left, and all that came off as a ghost.

    Each cut has its mark, in whatever pass it was made. Canes that were tied lie along the wire.
    `hidden` are classes of what is left out too, `css_class` goes on the root, and `view` is the
    one view that is drawn of a form with several; `over` is drawn last.
    """
    left = after_cuts(uncut(parts), cuts)
    laid = laid_canes(left, cuts)
    across = _to_the_edges(plate_of(parts, laid).frame, window)
    shown = Window(window, across, clipped=True, view=view)
    return draw_vine(
        parts,
        prefix,
        language,
        title=title,
        description=description,
        units=units,
        stages=Stages((Stage(GONE, left),)),
        css_class=f"pw-in-part {css_class}".rstrip(),
        cut_marks=of_standing_wood(cuts, laid),
        window=shown,
        hidden=[*WIRE_WORDS, *hidden],
        ghosts=[GONE],
        laid=laid,
        over=over,
    )


def _to_the_edges(whole: Frame, window: Frame) -> Frame:
    """As far as wires run where a part has no room for the words beside them."""
    return Frame(whole.left, whole.top, window.right + RIGHT_MARGIN_MM, whole.bottom)
