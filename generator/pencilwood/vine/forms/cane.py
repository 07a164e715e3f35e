"""Cane-pruned vines: each winter one or two young canes are tied along the wire to fruit.

The arms of such a vine are its room on the wire, left and right of the head. Last winter's
fruiting cane lies there, two years old, with this summer's canes standing on it.
"""

from __future__ import annotations

from pencilwood.vine.long_wood import (
    FRUITING_CANES,
    LONG_WOOD_WORDS,
    RENEWAL_SPURS,
    is_fruiting_cane,
    is_spur_on_left,
    is_spur_on_right,
)
from pencilwood.vine.model import Form, Pass, Side, Tally

_IS_SPUR_ON = {Side.LEFT: is_spur_on_left, Side.RIGHT: is_spur_on_right}


def _form(name: str, *sides: Side) -> Form:
    return Form(
        name,
        sides,
        tallies=(
            Tally(FRUITING_CANES, is_fruiting_cane, len(sides)),
            *(Tally(RENEWAL_SPURS[side], _IS_SPUR_ON[side], wanted=1) for side in sides),
        ),
        passes=(Pass.THINNING_OUT, Pass.FINE, Pass.TIE),
        tied=FRUITING_CANES,
        words=LONG_WOOD_WORDS,
    )


TWO_CANE_VINE = _form("two-cane vine", Side.LEFT, Side.RIGHT)
ONE_CANE_RIGHT = _form("one-cane vine", Side.RIGHT)
ONE_CANE_LEFT = _form("one-cane vine", Side.LEFT)
CANE_PRUNED = (TWO_CANE_VINE, ONE_CANE_RIGHT, ONE_CANE_LEFT)
