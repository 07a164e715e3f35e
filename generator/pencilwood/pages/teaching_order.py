"""The order in which the vines of a handbook are taught, from the easiest on."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from pencilwood.cases.case import LEVELS, Case
from pencilwood.vine.model import Form


def in_teaching_order(cases: Sequence[Case]) -> list[Case]:
    """The same cases, the easiest first, whatever order they came in.

    Within a level goes first the way of training that most of these vines have, with one arm or
    two: it is what the reader will prune. Then fewer places go before more, since they take less
    time and fit a phone; what is alike in all of this goes by its short name.
    """
    vines_of = Counter(_training(case.vine.form) for case in cases)
    return sorted(
        cases,
        key=lambda case: (
            LEVELS.index(case.level),
            -vines_of[_training(case.vine.form)],
            len(case.vine.positions_along_line()),
            case.slug,
        ),
    )


def _training(form: Form) -> tuple[object, ...]:
    return form.line, form.growth, form.passes, form.words
