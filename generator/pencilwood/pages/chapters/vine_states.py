"""A case's vine in one state, drawn with nothing in it that this state does not show."""

from __future__ import annotations

from pencilwood.drawing import draw_vine
from pencilwood.drawing.arm_view import window_on_rest
from pencilwood.drawing.describe import describe_vine
from pencilwood.drawing.labels import LETTER
from pencilwood.drawing.stages import GONE, Stage, Stages, stages_of_passes
from pencilwood.drawing.tied_canes import Laid, laid_canes
from pencilwood.pages.desk import Desk
from pencilwood.proof import CaseProof
from pencilwood.vine.passes import Pass, after_pass
from pencilwood.vine.wood import WoodLeft

STATES = ("before", "rough", "thinning-out", "fine", "plan", "answer")
"""Before, after each pass with what it took off as a ghost, the plan, and the finished vine."""


def draw_in_state(
    proof: CaseProof, left: WoodLeft | None, state: str, prefix: str, title: str, desk: Desk
) -> str:
    """A whole vine in one state, with nothing in it that this state does not show."""
    units = desk.profile.units
    cuts = [one.done for one in proof.case.answer]
    stages, show = Stages(), ""
    laid, window = _laid(proof, left, state), None
    # The text of a chapter names pieces beside a close-up; on a whole vine letters are too small.
    hidden = [LETTER]
    ghosts: list[str] = []
    if state == "answer" and left is not None:
        stages, show = Stages((Stage(GONE, left),)), "pw-hide-gone"
        ghosts, window = [GONE], window_on_rest(left, laid)
    elif left is not None:
        stages, show = stages_of_passes(proof.parts, cuts, proof.plan.left), f"pw-show-{state}"
        ghosts = [f"pw-off-{state}"]
        if state != "plan":
            hidden += [f"pw-off-{earlier}" for earlier in STATES[1 : STATES.index(state)]]
    return draw_vine(
        proof.parts, prefix, desk.language,
        title=title,
        description=describe_vine(proof.parts, left, desk.language, units),
        units=units,
        stages=stages,
        css_class=show,
        cut_marks=[done for done in cuts if done.in_pass == state],
        hidden=hidden,
        ghosts=ghosts,
        laid=laid,
        window=window,
    )  # fmt: skip


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
