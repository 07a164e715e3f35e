"""Which cane of a position stays as a spur, and how what grew there is named."""

from __future__ import annotations

import pytest

from growing import LIMITS
from pencilwood.vine.forms.cordon import TWO_ARM_CORDON
from pencilwood.vine.model import Condition, Piece, Side
from pencilwood.vine.regrowth import labelled
from pencilwood.vine.spur_choice import Stays, cane_that_stays, states_with_spur
from pencilwood.vine.wood import Parts, divide
from vines import arm, cane, old, vine

THICK = LIMITS["cane thickness at least"]
THIN = THICK - 1


def place(*pieces: Piece) -> Parts:
    """A vine of which L1 has this wood."""
    right = arm(Side.RIGHT, 600, (200, [cane("a", 8)]))
    return divide(vine(TWO_ARM_CORDON, arm(Side.LEFT, 600, (200, pieces)), right))


def pair(near: tuple[int, Condition], far: tuple[int, Condition]) -> Parts:
    """Old wood with two canes, of such a thickness in mm and condition."""
    return place(
        old("m", 80),
        cane("a", 8, near[0], on="m", at_mm=15, condition=near[1]),
        cane("b", 8, far[0], on="m", at_mm=70, condition=far[1]),
    )


SOUND, INJURED, DEAD = Condition.SOUND, Condition.INJURED, Condition.DEAD


@pytest.mark.parametrize(
    ("near", "far", "stays", "why"),
    [
        ((THICK, SOUND), (THICK, SOUND), ("a", "b"), "both are good, so the choice counts"),
        ((THIN, SOUND), (THICK, SOUND), ("b", "b"), "a thin one stays beside no good one"),
        ((THICK, INJURED), (THICK, SOUND), ("b", "b"), "nor does an injured one, thick as it is"),
        ((THICK, SOUND), (THIN, SOUND), ("a", "a"), "the same the other way round"),
        ((THIN, SOUND), (THICK, INJURED), ("a", "b"), "neither is good: any that lives"),
        ((THICK, DEAD), (THIN, INJURED), ("b", "b"), "what is dead never stays"),
        ((THICK, DEAD), (THICK, DEAD), (None, None), "nothing lives"),
    ],
)
def test_a_good_cane_stays_where_there_is_one(
    near: tuple[int, Condition],
    far: tuple[int, Condition],
    stays: tuple[str | None, str | None],
    why: str,
) -> None:
    parts = pair(near, far)
    found = tuple(
        None if cane_left is None else cane_left.piece.letter
        for cane_left in (cane_that_stays(parts, "L1", one, LIMITS) for one in Stays)
    )
    assert found == stays, why


def test_the_wood_that_carries_the_spur_stays_up_to_its_foot() -> None:
    parts = pair((THICK, SOUND), (THICK, SOUND))
    most = LIMITS["buds on a spur at most"]
    left = {}
    for stays in Stays:
        states = states_with_spur(parts, "L1", stays, LIMITS)
        left[stays] = [states[parts.index[name]] for name in ("L1m", "L1m above a", "L1a", "L1b")]
    assert left == {Stays.NEAR: [1, 0, most, 0], Stays.FAR: [1, 1, 0, most]}


def test_where_no_cane_lives_nothing_is_cut() -> None:
    parts = pair((THICK, DEAD), (THICK, DEAD))
    states = states_with_spur(parts, "L1", Stays.NEAR, LIMITS)
    assert all(state == parts.parts[number].most for number, state in states.items())


def test_canes_are_named_from_the_foot_upward_those_of_the_arm_first() -> None:
    stood = (old("o", 60), old("q", 50, on="o", at_mm=40))
    grown = (
        cane("", 5, on="q", at_mm=20),
        cane("", 6, on="o", at_mm=30),
        cane("", 7),
        cane("", 8, on="o", at_mm=10),
    )
    named = labelled(stood, grown)
    assert [(one.letter, one.grows_from, one.at_mm, one.buds) for one in named] == [
        ("m", None, 0, 0),
        ("n", "m", 40, 0),
        ("a", None, 0, 7),
        ("b", "m", 10, 8),
        ("c", "m", 30, 6),
        ("d", "n", 20, 5),
    ]
