"""A case's vine in one state, drawn with nothing in it that this state does not show."""

from __future__ import annotations

from pencilwood.drawing import draw_vine
from pencilwood.drawing.arm_view import window_on_rest
from pencilwood.drawing.describe import describe_vine
from pencilwood.drawing.labels import LETTER
from pencilwood.drawing.near_views import NearView, at_one_scale, near_views
from pencilwood.drawing.plate import Window
from pencilwood.drawing.stages import GONE, Stage, Stages, stages_of_passes
from pencilwood.drawing.tied_canes import Laid, laid_canes
from pencilwood.pages.desk import Desk
from pencilwood.pages.near_pictures import near_pictures
from pencilwood.proof import CaseProof
from pencilwood.vine.passes import Pass, after_pass
from pencilwood.vine.wood import WoodLeft, uncut

DOWN_TO = ("wood", "ground")
STATES = ("before", "rough", "thinning-out", "fine", "plan", "answer")
"""Before, after each pass with what it took off as a ghost, the plan, and the finished vine."""


def draw_in_state(
    proof: CaseProof,
    left: WoodLeft | None,
    state: str,
    prefix: str,
    title: str,
    desk: Desk,
    *,
    down_to: str = "wood",
) -> str:
    """A whole vine in one state, with nothing in it that this state does not show.

    Its wood fills the picture, unless it goes `down_to` the ground.
    """
    units = desk.profile.units
    cuts = [one.done for one in proof.case.answer]
    stages, show = Stages(), ""
    laid = _laid(proof, left, state)
    # The text of a chapter names pieces beside a close-up; on a whole vine letters are too small.
    hidden = [LETTER]
    ghosts: list[str] = []
    if state == "answer" and left is not None:
        stages, show = Stages((Stage(GONE, left),)), "pw-hide-gone"
        ghosts = [GONE]
    elif left is not None:
        stages, show = stages_of_passes(proof.parts, cuts, proof.plan.left), f"pw-show-{state}"
        ghosts = [f"pw-off-{state}"]
        if state != "plan":
            hidden += [f"pw-off-{earlier}" for earlier in STATES[1 : STATES.index(state)]]

    def draw(near: NearView | None, own_prefix: str) -> str:
        window = near.shown(clipped=True) if near else _down_to_the_ground(left, state, laid)
        return draw_vine(
            proof.parts, own_prefix, desk.language,
            title=title,
            description=describe_vine(proof.parts, left, desk.language, units),
            units=units,
            stages=stages,
            css_class=f"{show} {near.css_class if near else ''}".strip(),
            cut_marks=[done for done in cuts if done.in_pass == state],
            hidden=hidden,
            ghosts=ghosts,
            laid=laid,
            window=window,
        )  # fmt: skip

    if down_to == "ground":
        return draw(None, prefix)
    seen, whole = _seen(proof, left, state), uncut(proof.parts)
    views = at_one_scale(near_views(seen, laid, left=seen), near_views(whole, left=whole))
    return near_pictures(desk, views, prefix, draw)


def _seen(proof: CaseProof, left: WoodLeft | None, state: str) -> WoodLeft:
    """The wood that a picture of this state shows, what has just come off as a ghost included."""
    if left is None or state in ("before", "rough", "plan"):
        return uncut(proof.parts)
    if state == "answer":
        return left
    cuts = [one.done for one in proof.case.answer]
    return after_pass(proof.parts, cuts, Pass(STATES[STATES.index(state) - 1]))


def _down_to_the_ground(left: WoodLeft | None, state: str, laid: tuple[Laid, ...]) -> Window | None:
    if left is None or state != "answer":
        return None
    return Window(window_on_rest(left, laid))


def _laid(proof: CaseProof, left: WoodLeft | None, state: str) -> tuple[Laid, ...]:
    """The canes that are tied by then."""
    if left is None or state not in ("plan", "answer"):
        return ()
    cuts = proof.plan.cuts if state == "plan" else proof.case.answer
    return laid_canes(left, [one.done for one in cuts])


def left_in(proof: CaseProof, state: str) -> WoodLeft | None:
    """What is left of the vine in a state; None where nothing has been cut."""
    if state == "before":
        return None
    if state == "plan":
        return proof.plan.left
    if state == "answer":
        return proof.answer_left
    cuts = [one.done for one in proof.case.answer]
    return after_pass(proof.parts, cuts, Pass(state))
