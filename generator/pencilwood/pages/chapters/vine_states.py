"""A case's vine in one state, drawn with nothing in it that this state does not show."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass

from pencilwood.drawing import Paper, WoodShown, draw_vine
from pencilwood.drawing.describe import describe_vine
from pencilwood.drawing.ink.shapes import Group
from pencilwood.drawing.names.labels import LETTER
from pencilwood.drawing.plate import Window
from pencilwood.drawing.scene.stages import GONE, Stages, stages_of_passes
from pencilwood.drawing.scene.tied_canes import Laid, laid_canes
from pencilwood.drawing.views.arm_view import window_on_rest
from pencilwood.drawing.views.near_views import (
    NearView,
    at_one_scale,
    names_left_out,
    near_views,
    on_phones,
)
from pencilwood.pages.desk import Desk
from pencilwood.pages.near_pictures import near_pictures
from pencilwood.pages.zone_shown import with_room_for_zone, zone_drawn
from pencilwood.proof import CaseProof
from pencilwood.rules import RULE_BY_NAME
from pencilwood.vine.passes import DoneCut
from pencilwood.vine.wood import Parts, WoodLeft, uncut

STATES = ("before", "rough", "thinning-out", "fine", "plan", "answer")
"""Before, after each pass with what it took off as a ghost, the plan, and the finished vine."""


@dataclass(frozen=True)
class VineState:
    """The vine of a case in one of its `STATES`."""

    proof: CaseProof
    state: str
    spoken_of: Collection[str] = ()
    """Places that the text beside it names."""

    @property
    def parts(self) -> Parts:
        """The wood of the vine."""
        return self.proof.parts

    @property
    def left(self) -> WoodLeft | None:
        """What is left of it; None where nothing has been cut."""
        return None if self.state == "before" else self.proof.left_in(self.state)

    @property
    def seen(self) -> WoodLeft:
        """The wood that its picture shows, what has just come off as a ghost included."""
        if self.state == "answer":
            return self.proof.answer_left
        if self.state in ("before", "plan"):
            return uncut(self.parts)
        return self.proof.left_in(STATES[STATES.index(self.state) - 1])

    @property
    def laid(self) -> tuple[Laid, ...]:
        """The canes that are tied by then."""
        if self.left is None or self.state not in ("plan", "answer"):
            return ()
        cuts = self.proof.plan.cuts if self.state == "plan" else self.proof.case.answer
        return laid_canes(self.left, [one.done for one in cuts])

    @property
    def stages(self) -> Stages:
        """What the classes of its wood tell."""
        if self.left is None or self.state == "answer":
            return Stages.leaving(self.left)
        return stages_of_passes(self.parts, self.cuts, self.proof.plan.left)

    @property
    def cuts(self) -> list[DoneCut]:
        """All cuts of the trainer's answer."""
        return [one.done for one in self.proof.case.answer]

    @property
    def css_class(self) -> str:
        """What shows this state of all that the drawing carries."""
        return {"before": "", "answer": "pw-hide-gone"}.get(self.state, f"pw-show-{self.state}")

    @property
    def hidden(self) -> tuple[str, ...]:
        """Classes of what is left out, such as wood that an earlier pass took off."""
        # A chapter names pieces beside a close-up; on a whole vine letters are too small.
        if self.state in ("before", "plan", "answer"):
            return (LETTER,)
        earlier = STATES[1 : STATES.index(self.state)]
        return (LETTER, *(f"pw-off-{one}" for one in earlier))

    @property
    def ghosts(self) -> tuple[str, ...]:
        """Classes of wood of which the edge alone is drawn."""
        return {"before": (), "answer": (GONE,)}.get(self.state, (f"pw-off-{self.state}",))

    @property
    def shown(self) -> WoodShown:
        """All that a drawing of the whole vine shows of its wood."""
        return WoodShown(
            self.parts,
            self.stages,
            cut_marks=tuple(done for done in self.cuts if done.in_pass == self.state),
            laid=self.laid,
            hidden=self.hidden,
            ghosts=self.ghosts,
            first_names=tuple(sorted(self.spoken_of)),
        )


@dataclass(frozen=True)
class Drawn:
    """HTML of a drawing, and what it says of itself."""

    html: str
    left_out: str = ""
    """Where names of places have no room: "everywhere", on "phones", or nowhere."""


def draw_near(vine: VineState, prefix: str, title: str, desk: Desk) -> Drawn:
    """All wood of a vine, so near that it fills the picture; a picture for each view."""
    whole, taught = uncut(vine.parts), [RULE_BY_NAME[name] for name, _ in vine.proof.case.teaches]
    views = at_one_scale(
        near_views(vine.seen, vine.laid, left=vine.seen), near_views(whole, left=whole)
    )

    views = with_room_for_zone(desk, views, taught, vine.parts)

    def draw(near: NearView, own_prefix: str) -> str:
        return _drawn(
            vine, own_prefix, title, desk, near.shown(clipped=True), near.css_class,
            over=zone_drawn(desk, taught, vine.parts),
        )  # fmt: skip

    return Drawn(
        near_pictures(desk, views, prefix, draw),
        names_left_out(on_phones(vine.shown, views[0].window)),
    )


def draw_down_to_ground(vine: VineState, prefix: str, title: str, desk: Desk) -> Drawn:
    """The vine with its trunk and the ground."""
    window = None
    if vine.state == "answer" and vine.left is not None:
        window = Window(window_on_rest(vine.left, vine.laid))
    return Drawn(_drawn(vine, prefix, title, desk, window))


def _drawn(
    vine: VineState,
    prefix: str,
    title: str,
    desk: Desk,
    window: Window | None,
    near: str = "",
    over: Group | None = None,
) -> str:
    units = desk.profile.units
    paper = Paper(
        prefix,
        desk.language,
        title=title,
        description=describe_vine(vine.parts, vine.left, desk.language, units),
        units=units,
        window=window,
        over=over,
        css_class=f"{vine.css_class} {near}".strip(),
    )
    return draw_vine(on_phones(vine.shown, window.frame) if near and window else vine.shown, paper)
