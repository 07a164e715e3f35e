"""Drawings of one state of a vine, or of all that somebody's cuts go through."""

from collections.abc import Sequence
from dataclasses import replace

from pencilwood.drawing import Paper, WoodShown, draw_vine
from pencilwood.drawing.scene.stages import Stages, stages_of_passes
from pencilwood.drawing.scene.tied_canes import laid_canes
from pencilwood.vine.passes import DoneCut, after_cuts
from pencilwood.vine.wood import Parts, WoodLeft, uncut

PAPER = Paper("p", "en", title="t", description="d")


def draw_state(parts: Parts, left: WoodLeft | None, *, cutpoints: bool = False) -> str:
    """A vine with what is gone shown as such; `left` None draws it uncut."""
    return draw_vine(WoodShown(parts, Stages.leaving(left), cutpoints=cutpoints), PAPER)


def draw_passes(
    parts: Parts,
    cuts: Sequence[DoneCut],
    paper: Paper = PAPER,
    *,
    plan: WoodLeft | None = None,
    show: str = "before",
) -> str:
    """One drawing that carries every state, of which it shows one."""
    laid = laid_canes(after_cuts(uncut(parts), cuts), cuts)
    lying = {one.part for one in laid}
    marks = tuple(done for done in cuts if done.cut.part not in lying)
    shown = WoodShown(parts, stages_of_passes(parts, cuts, plan), cut_marks=marks, laid=laid)
    return draw_vine(shown, replace(paper, css_class=f"pw-show-{show}"))
