"""Turns the row of one question into the question."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from pencilwood.cases import quiz_keys as keys
from pencilwood.cases.fields import Key, Placed, Row
from pencilwood.cases.quiz import (
    BlockSum,
    Choose,
    Common,
    CountIt,
    NamePart,
    Prune,
    PutInOrder,
    QuizQuestion,
    SafeOrStop,
    Said,
    Seen,
    WhichCane,
    WrongSum,
)


def slug_key(row: Row) -> Key[str] | None:
    """The key that names the question and tells its kind: the first of its table."""
    first = (table.keys[0] for table in keys.KINDS.values())
    return next((key for key in first if row.has(key)), None)


def the_question(row: Row, common: Common) -> QuizQuestion:
    """The question of a sound row."""
    key = slug_key(row)
    assert key is not None, "a sound row has the key of its kind"  # noqa: S101
    return _MAKERS[key.name](row, common)


def _choose(row: Row, common: Common) -> Choose:
    drawing = row.get(keys.DRAWING)
    return Choose(
        common,
        row.need(keys.ASK).words,
        _said(Placed(row.need(keys.RIGHT), row.place_of(keys.RIGHT))),
        tuple(_said(one) for one in row.need(keys.WRONG)),
        None if drawing is None else _seen(drawing),
    )


def _said(placed: Placed[Row]) -> Said:
    row = placed.value
    return Said(row.need(keys.SAY).words, row.need(keys.WHY).words, placed.place)


def _seen(row: Row) -> Seen:
    at: Key[str] = keys.AT
    return Seen(row.need(keys.VINE), row.place_of(at), row.get(keys.SHOW) or "before", row.get(at))


def _order(row: Row, common: Common) -> PutInOrder:
    steps = tuple(_said(one) for one in row.need(keys.STEPS))
    return PutInOrder(common, row.need(keys.ASK).words, steps)


def _safe(row: Row, common: Common) -> SafeOrStop:
    whys = row.need(keys.DEEDS)
    return SafeOrStop(
        common,
        row.need(keys.ASK).words,
        row.need(keys.DEED),
        {deed: whys.need(key).words for deed, key in keys.DEED_KEYS.items()},
    )


def _sum(row: Row, common: Common) -> BlockSum:
    return BlockSum(
        common,
        row.need(keys.ASK).words,
        row.need(keys.WORK_OUT),
        row.need(keys.GIVEN).values,
        tuple(_slip(one) for one in row.need(keys.SLIPS)),
    )


def _slip(placed: Placed[Row]) -> WrongSum:
    row = placed.value
    given = row.get(keys.SLIP)
    return WrongSum(
        {} if given is None else given.values,
        row.get(keys.OTHER_SUM),
        row.need(keys.WHY).words,
        placed.place,
    )


_MAKERS: Mapping[str, Callable[[Row, Common], QuizQuestion]] = {
    "prune": lambda _, common: Prune(common),
    "choose": _choose,
    "cane": lambda row, common: WhichCane(common, _seen(row)),
    "part": lambda row, common: NamePart(common, _seen(row), row.need(keys.FIND)),
    "count": lambda row, common: CountIt(common, _seen(row), row.need(keys.WHAT)),
    "order": _order,
    "safe or stop": _safe,
    "sum": _sum,
}
