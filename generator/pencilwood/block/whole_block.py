"""All sums of one block, each going on with what the one before it found."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace

from pencilwood.block.answer import Answer, Figure, Sentence
from pencilwood.block.errors import BlockError
from pencilwood.block.field import Value
from pencilwood.block.field_list import FIELDS
from pencilwood.block.numbers import Range, as_range, whole
from pencilwood.block.questions import QUESTIONS

ADVICE = ("prune-little", "beyond-cornell", "all-dead")
"""Refusals that are advice to the supervisor and no slip in the file."""


@dataclass(frozen=True)
class Refusal:
    """A sum that could not be done with what the block gives."""

    question: str
    error: BlockError

    @property
    def is_slip(self) -> bool:
        """Whether something in the file must be put right."""
        return self.error.problem not in ADVICE


Worked = Answer | Refusal
_LIVING = "living-buds"


def _wanted(answer: Answer) -> Mapping[str, Value]:
    return {"wanted_buds": whole(answer.main)}


def _vines(answer: Answer) -> Mapping[str, Value]:
    return {"vines": whole(answer.figure("vines")).counted()} if answer.has("vines") else {}


def _left_alive(fit: Answer) -> Mapping[str, Value]:
    return {"buds": fit.figure(_LIVING) if fit.has(_LIVING) else whole(fit.main)}


_HANDED_ON: Mapping[str, Callable[[Answer], Mapping[str, Value]]] = {
    "vines": _vines,
    "buds-for-crop": _wanted,
    # What the vines themselves can carry comes before what the owner wants.
    "buds": _wanted,
    "winter": _wanted,
    "fit": _left_alive,
    "crop": lambda answer: {"crop_g": answer.figure("vine-crop")},
}
"""What a sum gives to the sums after it."""


def _with_living(fit: Answer, values: Mapping[str, Value], _: Sequence[Worked]) -> Answer:
    """How many of the buds that are left have outlived the winter."""
    dead = values.get("dead_share")
    if not isinstance(dead, Range):
        return fit
    buds = whole(fit.main)
    alive = whole(buds * (as_range(1) - dead))
    facts = {"buds": ("buds", buds), "dead": ("share", dead), "alive": ("buds", alive)}
    first, *others = fit.figures
    figures = (first, Figure(_LIVING, "buds", alive), *others)
    return replace(fit, figures=figures, steps=(*fit.steps, Sentence(_LIVING, facts)))


def _from_living(crop: Answer, _: Mapping[str, Value], done: Sequence[Worked]) -> Answer:
    """A crop begins with the living buds, so it says again where the rest are."""
    fits = (one for one in done if isinstance(one, Answer) and one.question == "fit")
    told = tuple(step for fit in fits for step in fit.steps if step.name == _LIVING)
    return replace(crop, steps=(*told, *crop.steps))


_SAYS_MORE: Mapping[str, Callable[[Answer, Mapping[str, Value], Sequence[Worked]], Answer]] = {
    "fit": _with_living,
    "crop": _from_living,
}
"""What a sum says in a row of sums, of buds worked out before it, and not when asked alone."""


ORDER = (
    *("vines", "buds-for-crop", "buds", "winter", "room", "fit", "crop", "crop-load", "vigour"),
    *("leaves", "leaf-fruit", "crew", "renovation", "thinning"),
)

# Their usual values alone would answer a question that nobody asked.
_ONLY_WITH: Mapping[str, tuple[str, ...]] = {
    "renovation": ("way",),
    "crew": ("people", "days"),
    "winter": ("dead_share",),
}


def work_block(given: Mapping[str, Value]) -> tuple[Worked, ...]:
    """Every sum for which the block gives enough, in the order of a supervisor's winter.

    Figures that the block gives by itself are never replaced by those that were worked out.
    """
    values = {**_length_of_arms(given), **given}
    done: list[Worked] = []
    for name in ORDER:
        if not _is_asked(name, values):
            continue
        try:
            answer = QUESTIONS[name].work(values)
        except BlockError as error:
            done.append(Refusal(name, error))
            continue
        if name in _SAYS_MORE and "buds" not in given:
            answer = _SAYS_MORE[name](answer, values, done)
        done.append(answer)
        if name in _HANDED_ON:
            values.update(_HANDED_ON[name](answer))
        values.update(given)
    return tuple(done)


def _is_asked(name: str, values: Mapping[str, Value]) -> bool:
    """Whether the block gives what a sum needs and, for work, that it is wanted at all."""
    needed = QUESTIONS[name].asked
    if not all(field in values or FIELDS[field].default for field in needed):
        return False
    wanted = _ONLY_WITH.get(name, ())
    return not wanted or any(field in values for field in wanted)


def _length_of_arms(values: Mapping[str, Value]) -> Mapping[str, Value]:
    """Canopy grows over the arms from end to end."""
    arms, arm_mm = values.get("arms", FIELDS["arms"].usual()), values.get("arm_mm")
    if isinstance(arms, Range) and isinstance(arm_mm, Range):
        return {"canopy_mm": arm_mm * arms}
    return {}
