"""Two made-up forms, which show what the engine can carry apart from any form of the trade."""

from __future__ import annotations

import random
from collections.abc import Iterator

import pytest

import pencilwood.rules as rules
from pencilwood.rules import rulebook
from pencilwood.rules.of_forms.cordon import CORDON
from pencilwood.rules.rulebook import Price
from pencilwood.rules.shapes import Broken, Rule, RulesOfForm, TallyTotal, headings
from pencilwood.vine.bands import Limits
from pencilwood.vine.model import Arm, Form, Growth, Line, Piece, Position, Side, Tally, Vine
from pencilwood.words import LANGUAGES
from vines import TRELLIS, random_pieces, random_vine

WANTED = 2


def _is_long(position: Position, piece: Piece, state: int, limits: Limits) -> bool:
    return piece.is_cane and state > 2


def _is_left(position: Position, piece: Piece, state: int, limits: Limits) -> bool:
    return piece.is_cane and position.side is Side.LEFT


CROWN = Form("made-up crown", (Side.ROUND,), line=Line.RING)
LONG_CANES = Form(
    "made-up long canes",
    (Side.LEFT, Side.RIGHT),
    growth=Growth.DOWN,
    tallies=(Tally("long", _is_long), Tally("left", _is_left)),
)


def _wrong_number(total: TallyTotal, limits: Limits) -> Iterator[Broken]:
    if total.tally == "long" and total.count != WANTED:
        yield Broken("not-two", abs(total.count - WANTED), {"count": total.count})


LONG_CANE_RULE = Rule(
    name="made-up-number",
    family="vine",
    shape="tally",
    title={"en": "Wrong number", "es": "Número equivocado"},
    messages={"not-two": {"en": "{count} are left.", "es": "Quedan {count}."}},
    bands=(),
    check=_wrong_number,
    page={one: dict.fromkeys(headings(one), "-") for one in LANGUAGES},
)


def install(patch: pytest.MonkeyPatch) -> None:
    """Let the engine know both forms until the test is over."""
    spurs_may_be_long = tuple(rule for rule in CORDON.rules if rule.name != "spur-too-long")
    patch.setitem(rules._BY_FORM, CROWN, RulesOfForm((CROWN,), CORDON.rules))
    patch.setitem(
        rules._BY_FORM,
        LONG_CANES,
        RulesOfForm((LONG_CANES,), (*spurs_may_be_long, LONG_CANE_RULE)),
    )
    patch.setitem(rules.RULE_BY_NAME, LONG_CANE_RULE.name, LONG_CANE_RULE)
    key = (LONG_CANE_RULE.name, "not-two")
    patch.setitem(rulebook.RULEBOOK, key, Price(0, each=7, most=100))


def random_vine_of(form: Form, rng: random.Random, positions: int, **most: int) -> Vine:
    """A random vine of a made-up form."""
    if form is not CROWN:
        return random_vine(rng, positions=positions, form=form, **most)
    canes, buds = most.get("most_canes", 3), most.get("most_buds", 9)
    at_mm, places = 0, []
    for number in range(1, positions + 1):
        at_mm += rng.randint(40, 220)
        pieces = random_pieces(rng, canes, buds)
        places.append(Position(f"H{number}", Side.ROUND, at_mm, pieces))
    ring = Arm(Side.ROUND, at_mm + rng.randint(10, 250), 60, tuple(places))
    return Vine(form, 70, 700, TRELLIS, (ring,))
