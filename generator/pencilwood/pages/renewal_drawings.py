"""Drawings of a vine while one arm is made new: each as found, telling every choice by class."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from functools import cached_property

from pencilwood.drawing import Paper, WoodShown, describe_vine, draw_vine
from pencilwood.drawing.plate import Window
from pencilwood.drawing.scene.stages import Stage, Stages
from pencilwood.drawing.scene.tied_canes import Laid
from pencilwood.drawing.scene.wood_text import plate_of
from pencilwood.drawing.views.near_views import on_phones
from pencilwood.drawing.wood.sawn_arm import Sawn
from pencilwood.pages.arm_window import arm_window
from pencilwood.pages.desk import Desk
from pencilwood.pages.rough_canes import after_rough_pass
from pencilwood.proof.renewal import Renewal, Story
from pencilwood.proof.winters import WINTERS
from pencilwood.vine.arm_renewal import ArmFound, ArmWorked
from pencilwood.vine.model import Vine
from pencilwood.vine.new_arm import STUMP_MM
from pencilwood.vine.wood import Parts, WoodLeft, divide

_BELOW_ARM_MM = 245.0
_BESIDE_HEAD_MM = 130.0
"""How much of the other arm is shown."""


class RenewalDrawings:
    """Every drawing of one vine's renewal, in one language."""

    def __init__(self, renewal: Renewal, desk: Desk, stories: tuple[Story, ...]) -> None:
        self._renewal = renewal
        self._desk = desk
        self._stories = stories

    def found(self, story: Story) -> str:
        """The vine with this story behind it; classes tell what each choice takes off."""
        parts = self._rough(story)
        nexts = [self._renewal.worked((*story, work)) for work in self._renewal.works(story)]
        apart = tuple(Stage(f"pw-off-{one.work}", _on(parts, one)) for one in nexts)
        key = "drawing-found" if len(story) < WINTERS else "drawing-end"
        shown = WoodShown(
            parts,
            Stages((), apart),
            laid=tuple(lying for one in nexts for lying in _lying(one, str(one.work))),
            sawn=next((_sawn(one, is_shown=False) for one in nexts if one.is_sawn), None),
        )
        paper = self._paper(
            f"n-{name_of(story) or 'start'}",
            self._desk.say(f"renewal.{key}", n=len(story) + 1),
            # The page's script copies the drawings of choices without it.
            "" if nexts else self._described(self._renewal.found(story).parts, None),
        )
        return draw_vine(self._on_phones(shown), replace(paper, data={"story": name_of(story)}))

    def pruned(self, story: Story) -> str:
        """The vine after the latest work of a story, for people without the script."""
        done, parts = self._renewal.worked(story), self._rough(story[:-1])
        shown = WoodShown(
            parts,
            Stages.leaving(_on(parts, done)),
            laid=_lying(done, ""),
            sawn=_sawn(done, is_shown=True),
        )
        paper = self._paper(
            f"n-{name_of(story)}-left",
            self._desk.say("renewal.drawing-work", n=len(story)),
            self._described(done.left.parts, done),
        )
        return draw_vine(self._on_phones(shown), paper)

    def _paper(self, prefix: str, title: str, description: str) -> Paper:
        return Paper(
            prefix,
            self._desk.language,
            title=title,
            description=description,
            units=self._desk.profile.units,
            window=self._window,
            css_class="pw-in-part",
        )

    def _on_phones(self, shown: WoodShown) -> WoodShown:
        return on_phones(shown, self._window.frame)

    def _described(self, parts: Parts, done: ArmWorked | None) -> str:
        """The whole vine in words, the arm that no drawing shows as well."""
        whole = self._after_rough_pass(parts.vine)
        left = None if done is None else _on(whole, done)
        return describe_vine(whole, left, self._desk.language, self._desk.profile.units)

    def _after_rough_pass(self, vine: Vine, long: Mapping[str, int] | None = None) -> Parts:
        most = self._renewal.limits["buds after the rough pass at most"]
        return divide(after_rough_pass(vine, most, long))

    def _rough(self, story: Story) -> Parts:
        """The vine as the rough pass leaves it; what may be laid is as long as it would lie."""
        found = self._renewal.found(story)
        nexts = (self._renewal.worked((*story, work)) for work in self._renewal.works(story))
        long = {one.laid.name: one.left.state(one.laid.name) for one in nexts if one.laid}
        return self._after_rough_pass(_one_side(found), long)

    @cached_property
    def _window(self) -> Window:
        """Room for every drawing, near the arms; the wires run as far as the old arm did."""
        plates = [plate_of(self._rough(story)) for story in self._stories]
        frame = arm_window(plates, _BELOW_ARM_MM, _BESIDE_HEAD_MM)
        return Window(frame, across=plate_of(self._rough(())).frame)


def _one_side(found: ArmFound) -> Vine:
    """The same vine with no wood on the other arm, which the drawings show the beginning of."""
    vine = found.parts.vine
    arms = (arm if arm.side is found.side else replace(arm, positions=()) for arm in vine.arms)
    return replace(vine, arms=tuple(arms))


def name_of(story: Story) -> str:
    """The works of a story in a word: `save-lay`."""
    return "-".join(story)


def _on(parts: Parts, done: ArmWorked) -> WoodLeft:
    """What a work left, of a vine whose canes the rough pass has shortened."""
    states = (min(done.left.state(part.name), part.most) for part in parts.parts)
    return WoodLeft(parts, tuple(states))


def _lying(done: ArmWorked, stage: str) -> tuple[Laid, ...]:
    if done.laid is None:
        return ()
    buds = done.left.state(done.laid.name)
    return (Laid(done.laid.name, done.found.side, buds, stage),)


def _sawn(done: ArmWorked, *, is_shown: bool) -> Sawn | None:
    if not done.is_sawn:
        return None
    return Sawn(done.found.side, STUMP_MM, is_shown)
