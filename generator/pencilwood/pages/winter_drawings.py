"""Drawings of a vine over the winters: all to one scale, each telling both choices by class.

They show the vine after the rough pass, so that the canes do not hide the spurs. A drawing is of
a vine at which every position has the same story; the page's script puts mixed ones together.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from functools import cached_property

from pencilwood.drawing import Paper, WoodShown, describe_vine, draw_vine
from pencilwood.drawing.for_programs.wood_alone import draw_wood_alone
from pencilwood.drawing.plate import Frame, Window
from pencilwood.drawing.scene.stages import Stage, Stages
from pencilwood.drawing.scene.wood_text import plate_of
from pencilwood.drawing.views.near_views import on_phones
from pencilwood.pages.arm_window import arm_window
from pencilwood.pages.desk import Desk
from pencilwood.pages.rough_canes import after_rough_pass
from pencilwood.proof.winter_table import stories_of
from pencilwood.proof.winters import WINTERS, Story, Winters
from pencilwood.vine.spur_choice import Stays
from pencilwood.vine.wood import Parts, WoodLeft, divide

_BELOW_ARM_MM = 190.0


class WinterDrawings:
    """Every drawing of one vine's winters, in one language."""

    def __init__(self, winters: Winters, desk: Desk) -> None:
        self._winters = winters
        self._desk = desk

    def of(self, story: Story, chosen: Stays | None) -> str:
        """The vine with this story behind it, pruned as chosen or still unpruned."""
        parts = self._rough(story)
        name = _name(story)
        left = None if chosen is None else self._left(parts, chosen)
        frame = self._windows[len(story)]
        key = "drawing-left" if left is not None else "drawing-found"
        paper = Paper(
            f"w-{name or 'start'}-{'end' if chosen is None else chosen}",
            self._desk.language,
            title=self._desk.say(f"winters.{key}", n=len(story) + 1),
            description=describe_vine(parts, left, self._desk.language, self._desk.profile.units),
            units=self._desk.profile.units,
            window=Window(frame),
            css_class="pw-in-part",
            data={"story": name},
        )
        stages = self._stages(parts, left, pruned=len(story) < WINTERS)
        return draw_vine(on_phones(WoodShown(parts, stages), frame), paper)

    def others(self) -> Iterator[str]:
        """The wood of stories that no habit shows; the script needs it for mixed choices."""
        for length in range(1, WINTERS + 1):
            for story in stories_of(length):
                if len(set(story)) > 1:
                    parts = self._rough(story)
                    name = _name(story)
                    stages = self._stages(parts, None, pruned=length < WINTERS)
                    yield draw_wood_alone(parts, f"w-{name}", stages, {"story": name})

    def _rough(self, story: Story) -> Parts:
        """The vine after the rough pass: its canes shortened, all else as it was found."""
        most = self._winters.limits["buds after the rough pass at most"]
        return divide(after_rough_pass(self._winters.grown(story).vine, most))

    def _left(self, parts: Parts, stays: Stays) -> WoodLeft:
        return self._winters.left(parts, [stays] * len(self._winters.names))

    def _stages(self, parts: Parts, left: WoodLeft | None, *, pruned: bool) -> Stages:
        shown = Stages.leaving(left)
        if not pruned:
            return shown
        each = (Stage(f"pw-off-{stays}", self._left(parts, stays)) for stays in Stays)
        return replace(shown, apart=tuple(each))

    @cached_property
    def _windows(self) -> Mapping[int, Frame]:
        """Room near the arms for all drawings of a winter, by the winters behind it; one scale."""
        plates = {
            length: [plate_of(self._rough(story)) for story in stories_of(length)]
            for length in range(WINTERS + 1)
        }
        every = arm_window([one for winter in plates.values() for one in winter], _BELOW_ARM_MM)
        return {
            length: replace(every, top=arm_window(winter, _BELOW_ARM_MM).top)
            for length, winter in plates.items()
        }


def _name(story: Story) -> str:
    """A letter for each winter: `nf` is the near cane, then the far one."""
    return "".join(stays[0] for stays in story)
