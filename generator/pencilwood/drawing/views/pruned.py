"""A part of a pruned vine, with nothing in the drawing that is never seen."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from pencilwood.drawing.plate import RIGHT_MARGIN_MM, Frame, Window
from pencilwood.drawing.scene.stages import GONE, Stages
from pencilwood.drawing.scene.tied_canes import Laid, laid_canes
from pencilwood.drawing.scene.trellis import WIRE_WORDS
from pencilwood.drawing.scene.wood_shown import WoodShown
from pencilwood.drawing.scene.wood_text import plate_of
from pencilwood.drawing.vine_drawing import Paper, draw_vine
from pencilwood.vine.passes import DoneCut, after_cuts
from pencilwood.vine.wood import Parts, uncut


def draw_pruned(
    parts: Parts,
    cuts: Sequence[DoneCut],
    window: Frame,
    paper: Paper,
    *,
    hidden: Sequence[str] = (),
    view: str = "",
) -> str:
    """A part of a pruned vine, large: what is left, and all that came off as a ghost.

    Each cut has its mark, in whatever pass it was made. Canes that were tied lie along the wire.
    `hidden` are classes of what is left out too, and `view` is the one view that is drawn of a
    form with several.
    """
    left = after_cuts(uncut(parts), cuts)
    laid = laid_canes(left, cuts)
    across = _to_the_edges(plate_of(parts, laid).frame, window)
    shown = WoodShown(
        parts,
        Stages.leaving(left),
        cut_marks=tuple(_of_standing_wood(cuts, laid)),
        laid=laid,
        hidden=(*WIRE_WORDS, *hidden),
        ghosts=(GONE,),
    )
    part = replace(
        paper,
        window=Window(window, across, clipped=True, view=view),
        css_class=f"pw-in-part {paper.css_class}".rstrip(),
    )
    return draw_vine(shown, part)


def _of_standing_wood(cuts: Sequence[DoneCut], laid: Sequence[Laid]) -> Iterator[DoneCut]:
    """The mark of a cut would float where a cane stood before it was tied."""
    lying = {one.part for one in laid}
    return (done for done in cuts if done.cut.part not in lying)


def _to_the_edges(whole: Frame, window: Frame) -> Frame:
    """As far as wires run where a part has no room for the words beside them."""
    return Frame(whole.left, whole.top, window.right + RIGHT_MARGIN_MM, whole.bottom)
