"""Rules that speak of one piece of wood: exactly at the limit, one past it, nothing kept."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

import pytest

from pencilwood.rules.shapes import PieceLeft
from pencilwood.rules.too_little_leaf_room import check as leaf_room_check
from pencilwood.vine.model import Condition, Lean, Piece
from rule_bench import LIMITS, one_position, piece_breaks, with_limits, wood_left
from vines import cane, old

Row = tuple[Sequence[Piece], Mapping[str, int], list[tuple[str, str, int]]]

SPUR = (old("m", 60), cane("a", 8, on="m", at_mm=10), cane("b", 9, on="m", at_mm=60))
CLIMBED = (
    old("m", 200, age_years=5),
    cane("a", 8, on="m", at_mm=10),
    cane("b", 9, on="m", at_mm=200),
)
HIGH = (
    old("m", 300, age_years=6),
    cane("a", 5, on="m", at_mm=160),
    cane("b", 5, on="m", at_mm=300),
)
BARE = (old("m", 100, age_years=3), cane("a", 8, on="m", at_mm=10))
FORK = (old("m", 40, age_years=4), old("n", 50, on="m", at_mm=40), cane("a", 8, on="n", at_mm=50))
DEAD_STUB = (cane("a", 8), old("n", 50, condition=Condition.DEAD))

UPPER_KEPT = {"m": 1, "m above a": 1, "b": 2}


def with_low_cane(
    thickness_mm: int, condition: Condition = Condition.SOUND, lean: Lean = Lean.UP
) -> Sequence[Piece]:
    """A spur of last year whose low cane may be poor."""
    foot, low, high = SPUR
    return (foot, replace(low, thickness_mm=thickness_mm, condition=condition, lean=lean), high)


ROWS: dict[str, tuple[Row, ...]] = {
    "climbed-too-far": (
        # 150 mm is still within reach; the first bud stands one internode above the foot.
        ((old("m", 80), cane("a", 8, on="m", at_mm=80, internode_mm=70)), {"m": 1, "a": 2}, []),
        (
            (old("m", 81), cane("a", 8, on="m", at_mm=81, internode_mm=70)),
            {"m": 1, "a": 2},
            [("a", "too-high", 1)],
        ),
        # A leaning cane gains less height than its length.
        ((old("m", 90), cane("a", 8, on="m", at_mm=90, lean=Lean.OUT)), {"m": 1, "a": 2}, []),
        # Cut away, it no longer matters how high it stood.
        (HIGH, {}, []),
        (HIGH, {"m": 1, "a": 1}, [("a", "too-high", 80)]),
    ),
    "diseased-wood": (
        ((cane("a", 8, condition=Condition.DISEASED),), {"a": 1}, [("a", "kept", 0)]),
        ((cane("a", 8, condition=Condition.DISEASED),), {}, []),
        ((cane("a", 8, condition=Condition.DEAD),), {"a": 1}, [("a", "kept", 0)]),
        (
            (old("m", 60, condition=Condition.DISEASED), cane("a", 8, on="m", at_mm=60)),
            {"m": 1, "a": 2},
            [("m", "kept", 0)],
        ),
        # A dead stub of older wood is told of once, as a stub.
        (DEAD_STUB, {"a": 2, "n": 1}, []),
        ((cane("a", 8, condition=Condition.INJURED),), {"a": 2}, []),
    ),
    "doubled-spur": (
        (SPUR, {"m": 1, "a": 2}, []),
        (SPUR, {"m": 1, "m above a": 1, "b": 2}, []),
        (SPUR, {"m": 1, "a": 1, "m above a": 1, "b": 2}, [("a", "two-at-one-place", 0)]),
        # Two canes straight from the arm double a spur as well.
        ((cane("a", 8), cane("b", 8)), {"a": 2, "b": 1}, [("a", "two-at-one-place", 0)]),
        # One low bud under climbed wood is kept for renewal; two are a second spur.
        (CLIMBED, {"m": 1, "a": 1, "m above a": 1, "b": 2}, []),
        (CLIMBED, {"m": 1, "a": 2, "m above a": 1, "b": 2}, [("a", "two-at-one-place", 0)]),
        # A cane that has climbed itself brings nothing down.
        (HIGH, {"m": 1, "a": 1, "m above a": 1, "b": 1}, [("a", "two-at-one-place", 0)]),
        # A dead cane above is no second spur.
        ((cane("a", 8), cane("b", 8, condition=Condition.DEAD)), {"a": 2, "b": 1}, []),
    ),
    "injured-wood": (
        ((cane("a", 8, condition=Condition.INJURED),), {"a": 1}, [("a", "kept", 0)]),
        ((cane("a", 8, condition=Condition.INJURED),), {}, []),
        (
            (old("m", 60, condition=Condition.INJURED), cane("a", 8, on="m", at_mm=60)),
            {"m": 1, "a": 2},
            [],
        ),
    ),
    "no-renewal-bud": (
        (SPUR, {"m": 1, "m above a": 1, "b": 2}, [("a", "low-cane-removed", 0)]),
        (SPUR, {"m": 1, "a": 2}, []),
        (SPUR, {}, []),
        # A poor low cane is rightly taken off, whatever makes it poor.
        (with_low_cane(6), UPPER_KEPT, []),
        (with_low_cane(7), UPPER_KEPT, [("a", "low-cane-removed", 0)]),
        (with_low_cane(13), UPPER_KEPT, [("a", "low-cane-removed", 0)]),
        (with_low_cane(14), UPPER_KEPT, []),
        (with_low_cane(8, lean=Lean.DOWN), UPPER_KEPT, []),
        (with_low_cane(8, condition=Condition.SPINDLY), UPPER_KEPT, []),
        # Of two canes that start at the same height neither is the low one.
        ((cane("a", 8), cane("b", 8)), {"b": 2}, []),
        ((cane("a", 8), cane("b", 8)), {"a": 2}, []),
        # A low cane that has climbed too far itself renews nothing.
        (HIGH, {"m": 1, "m above a": 1, "b": 2}, []),
    ),
    "old-stub": (
        (BARE, {"m": 1, "a": 2, "m above a": 1}, [("m above a", "bare-end", 0)]),
        (BARE, {"m": 1, "a": 2}, []),
        (SPUR, {"m": 1, "a": 2, "m above a": 1}, [("m above a", "bare-end", 0)]),
        (DEAD_STUB, {"a": 2, "n": 1}, [("n", "dead-end", 0)]),
        (DEAD_STUB, {"a": 2}, []),
        # The foot without a cane is wood too old to fruit; only what it carries is a bare end.
        (FORK, {"m": 1, "n": 1}, [("n", "bare-end", 0)]),
        (FORK, {"m": 1}, []),
    ),
    "spur-too-long": (
        ((cane("a", 8),), {"a": 2}, []),
        ((cane("a", 8),), {"a": 3}, [("a", "too-many-buds", 1)]),
        ((cane("a", 8),), {"a": 8}, [("a", "too-many-buds", 6)]),
        ((cane("a", 8),), {}, []),
        (
            SPUR,
            {"m": 1, "a": 3, "m above a": 1, "b": 4},
            [("a", "too-many-buds", 1), ("b", "too-many-buds", 2)],
        ),
    ),
    "wood-below-arm": (
        ((cane("a", 8, lean=Lean.DOWN),), {"a": 1}, [("a", "kept", 0)]),
        ((cane("a", 8, lean=Lean.DOWN),), {}, []),
        ((cane("a", 8, lean=Lean.IN),), {"a": 1}, []),
    ),
    "wood-too-old": (
        (SPUR, {"m": 1}, [("m", "no-cane-left", 0)]),
        (SPUR, {"m": 1, "m above a": 1}, [("m", "no-cane-left", 0)]),
        (SPUR, {"m": 1, "a": 1}, []),
        (SPUR, {}, []),
        (FORK, {"m": 1, "n": 1}, [("m", "no-cane-left", 0)]),
        (DEAD_STUB, {"n": 1}, []),
        # A dead cane does not make old wood fruitful.
        (
            (old("m", 50), cane("a", 8, on="m", at_mm=50, condition=Condition.DEAD)),
            {"m": 1, "a": 1},
            [("m", "no-cane-left", 0)],
        ),
    ),
    "wood-too-thick": (
        ((cane("a", 8, 13),), {"a": 2}, []),
        ((cane("a", 8, 14),), {"a": 2}, [("a", "bull-wood", 0)]),
        ((cane("a", 8, 14),), {}, []),
        # Old wood may be as thick as it likes.
        ((old("m", 50, 30), cane("a", 8, on="m", at_mm=50)), {"m": 1, "a": 2}, []),
    ),
    "wood-too-thin": (
        ((cane("a", 8, 7),), {"a": 2}, []),
        # With one bud a weak cane is a fault; each further bud makes it worse.
        ((cane("a", 8, 6),), {"a": 1}, [("a", "weak-cane", 0)]),
        ((cane("a", 8, 6),), {"a": 2}, [("a", "weak-cane", 1)]),
        ((cane("a", 8, 6),), {}, []),
        # The eye goes before the gauge.
        ((cane("a", 8, 9, condition=Condition.SPINDLY),), {"a": 1}, [("a", "weak-cane", 0)]),
        ((old("m", 50, 5), cane("a", 8, on="m", at_mm=50)), {"m": 1, "a": 2}, []),
    ),
}
TABLE = [(rule, number, row) for rule, rows in ROWS.items() for number, row in enumerate(rows)]


@pytest.mark.parametrize(
    ("rule", "row"),
    [(rule, row) for rule, _, row in TABLE],
    ids=[f"{rule}-{number}" for rule, number, _ in TABLE],
)
def test_piece_rule(rule: str, row: Row) -> None:
    pieces, kept, expected = row
    assert piece_breaks(rule, pieces, kept) == expected


@pytest.mark.parametrize(
    ("at_mm", "state", "expected"),
    [
        (99, 2, [("a", "kept", 0)]),
        (100, 2, []),  # exactly at the edge of the head zone a spur is on the arm
        (99, 0, []),
        (1, 1, [("a", "kept", 0)]),
    ],
)
def test_head_wood(at_mm: int, state: int, expected: list[tuple[str, str, int]]) -> None:
    assert piece_breaks("head-wood", (cane("a", 8),), {"a": state}, at_mm) == expected


@pytest.mark.parametrize(
    ("internode_mm", "foot_mm", "state", "expected"),
    [
        # Room above the arm 1250 mm: 14 leaves of 80 mm need 1120 mm above the first bud.
        (80, 50, 2, []),
        (80, 51, 2, [("a", "too-few-leaves", 1)]),
        (80, 51, 0, []),
        (80, 1300, 1, [("a", "too-few-leaves", 14)]),  # above the trimming there is no room
    ],
)
def test_too_little_leaf_room(
    internode_mm: int, foot_mm: int, state: int, expected: list[tuple[str, str, int]]
) -> None:
    pieces = (
        old("m", foot_mm),
        cane("a", 8, on="m", at_mm=foot_mm, internode_mm=internode_mm),
    )
    assert piece_breaks("too-little-leaf-room", pieces, {"m": 1, "a": state}) == expected


def test_leaf_room_names_what_there_is_and_what_is_needed() -> None:
    pieces = (old("m", 51), cane("a", 8, on="m", at_mm=51, internode_mm=80))
    left = wood_left(one_position(pieces), {"m": 1, "a": 2})
    number = left.parts.index["R1a"]
    (broken,) = leaf_room_check(PieceLeft(left.parts, number, 2, living_above=False), LIMITS)
    assert broken.facts == {"leaves": 13, "least": 14}


def test_the_profile_moves_a_limit() -> None:
    looser = with_limits(buds_on_a_spur_at_most=3)
    assert piece_breaks("spur-too-long", (cane("a", 8),), {"a": 3}, limits=looser) == []
    stricter = with_limits(climb_at_most=60)
    assert piece_breaks("climbed-too-far", (cane("a", 8),), {"a": 2}, limits=stricter) == [
        ("a", "too-high", 10)
    ]


def test_an_uncut_tidy_spur_is_long_and_doubled_and_nothing_else() -> None:
    assert piece_breaks("spur-too-long", SPUR) == [
        ("a", "too-many-buds", 6),
        ("b", "too-many-buds", 7),
    ]
    assert piece_breaks("doubled-spur", SPUR) == [("a", "two-at-one-place", 0)]
    quiet = set(ROWS) - {"spur-too-long", "doubled-spur"}
    assert {rule for rule in quiet if piece_breaks(rule, SPUR)} == set()
