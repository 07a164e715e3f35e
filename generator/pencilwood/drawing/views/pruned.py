"""A part of a pruned vine, with nothing in the drawing that is never seen."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
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

_PHONE_SHARE, _VIEW_SHARE = 0.043, 0.09
"""How high the names are compared with the width of a picture, and of one of two side by side,
where it is narrowest; chapters.css gives them."""


def draw_pruned(
    parts: Parts,
    cuts: Sequence[DoneCut],
    window: Frame,
    paper: Paper,
    *,
    lettered: Mapping[str, str] | None = None,
    view: str = "",
) -> str:
    """A part of a pruned vine, large: what is left, and all that came off as a ghost.

    Each cut has its mark, in whatever pass it was made. Canes that were tied lie along the wire.
    Wood that is `lettered`, each with its place, has its letter, whether it is left or gone, and
    `view` is the one view that is drawn of a form with several.
    """
    left = after_cuts(uncut(parts), cuts)
    laid = laid_canes(left, cuts)
    across = _to_the_edges(plate_of(parts, laid).frame, window)
    shown = WoodShown(
        parts,
        Stages.leaving(left),
        cut_marks=tuple(_of_standing_wood(cuts, laid)),
        laid=laid,
        hidden=tuple(WIRE_WORDS),
        ghosts=(GONE,),
        letter_mm=on_phones_mm(window, view),
        lettered=tuple(sorted(lettered or {})),
        first_names=tuple(sorted(set((lettered or {}).values()))),
        phone_mm=on_phones_mm(window, view),
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


def on_phones_mm(window: Frame, view: str) -> float:
    """How high its names are on the narrowest phones."""
    return (window.right - window.left) * (_VIEW_SHARE if view else _PHONE_SHARE)


def _to_the_edges(whole: Frame, window: Frame) -> Frame:
    """As far as wires run where a part has no room for the words beside them."""
    return Frame(whole.left, whole.top, window.right + RIGHT_MARGIN_MM, whole.bottom)
