"""Which classes tell what is gone, so that one drawing can show a vine before and after."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from pencilwood.vine.passes import DoneCut, after_each_pass
from pencilwood.vine.wood import Parts, WoodLeft

GONE = "pw-gone"
FALLEN = "pw-fallen"
"""Gone because the wood below was cut off, so that no cut face shows."""


@dataclass(frozen=True)
class Stage:
    """What is left of the vine at some time, and the class of all that is gone by then."""

    css_class: str
    left: WoodLeft


@dataclass(frozen=True)
class Stages:
    """Stages in order of time, and other states that are told apart from them."""

    in_order: tuple[Stage, ...] = ()
    apart: tuple[Stage, ...] = ()

    @classmethod
    def leaving(cls, left: WoodLeft | None) -> Stages:
        """One state, in which so much is left; nothing is gone of a vine that nobody has cut."""
        return cls() if left is None else cls((Stage(GONE, left),))

    def of_part(self, number: int) -> str:
        """Classes of a part, each with a space before it."""
        return self._of(number, 0)

    def of_stretch(self, number: int, below_buds: int) -> str:
        """Classes of the stretch of a cane that goes when `below_buds` buds are left."""
        return "" if below_buds == 0 else self._of(number, below_buds)

    def _of(self, number: int, most_left: int) -> str:
        text = ""
        for stage in self.in_order:
            if stage.left.states[number] <= most_left:
                text = _classes(stage, number)
                break
        return text + "".join(
            _classes(stage, number)
            for stage in self.apart
            if stage.left.states[number] <= most_left
        )


def _classes(stage: Stage, number: int) -> str:
    fallen = stage.left.states[number] == 0 and not stage.left.is_cut_face(number)
    return f" {stage.css_class}" + (f" {FALLEN}" if fallen else "")


def stages_of_passes(parts: Parts, cuts: Sequence[DoneCut], plan: WoodLeft | None = None) -> Stages:
    """The stages of somebody's cuts, `pw-off-rough` and so on, and `pw-off-plan` beside them."""
    after = after_each_pass(parts, cuts)
    in_order = tuple(Stage(f"pw-off-{in_pass}", left) for in_pass, left in after.items())
    return Stages(in_order, () if plan is None else (Stage("pw-off-plan", plan),))
