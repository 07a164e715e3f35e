"""How many buds to leave after a winter that killed some of them."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from fractions import Fraction

from pencilwood.block.answer import Answer, Facts, Figure, Sentence
from pencilwood.block.errors import BlockError
from pencilwood.block.numbers import Range, fewer_digits, spread
from pencilwood.units import round_half_up


def _percent(number: int) -> Fraction:
    return Fraction(number, 100)


def cornell_factor(dead: Fraction) -> Fraction | None:
    """Nothing more below a fifth dead; from there as many percent more as are dead."""
    if dead < _percent(20):
        return Fraction(1)
    # What is advised above four fifths could not be read.
    return 1 + dead if dead <= _percent(80) else None


def purdue_factor(dead: Fraction) -> Fraction | None:
    """Nothing more up to 15 % dead, 35 % more up to 35 %, half as many more up to 50 %.

    The page prints 15-35 and 25-50, which overlap; the step is taken to be at 35.
    """
    for most_dead, more in ((15, 0), (35, 35), (50, 50)):
        if dead <= _percent(most_dead):
            return 1 + _percent(more)
    return None


def full_factor(dead: Fraction) -> Fraction | None:
    """As many more as bring the living buds back to the wanted number."""
    return 1 / (1 - dead) if dead < 1 else None


FAMILIES: Mapping[str, Callable[[Fraction], Fraction | None]] = {
    "cornell": cornell_factor,
    "purdue": purdue_factor,
    "full": full_factor,
}


def buds_after_winter(*, wanted_buds: Range, dead_share: Range, winter_rule: str) -> Answer:
    """Buds to leave so that enough of them are alive, by one of three rules.

    `cornell` and `purdue` add the published percentages; `full` divides by the living share:
    buds / (1 - dead). The first two do not bring back the full number, and say so by the
    number of living buds.

    Limits: counts primary buds only. Secondary buds bear too, so full replacement may crop more.
    Errors: BlockError "prune-little" where the rule gives no number (Purdue above 50 %: prune as
    little as you can and wait), "beyond-cornell" above 80 %, "all-dead".
    Source: Cornell (northern New York, 2014) and Purdue, both read; full replacement is plain
    arithmetic, from memory.
    """
    rule = FAMILIES[winter_rule]
    dead = (dead_share.low, dead_share.likely, dead_share.high)
    factors = [rule(share) for share in dead]
    known = [factor for factor in factors if factor is not None]
    if len(known) < len(factors):
        problem = {"cornell": "beyond-cornell", "purdue": "prune-little", "full": "all-dead"}
        raise BlockError(problem[winter_rule]).about("dead_share")
    digits = fewer_digits(wanted_buds.digits, dead_share.digits)
    wanted = (wanted_buds.low, wanted_buds.likely, wanted_buds.high)
    # Nobody leaves a part of a bud, and the living ones are a share of those that are left.
    buds = [round_half_up(many * factor) for many, factor in zip(wanted, known, strict=True)]
    alive = [many * (1 - share) for many, share in zip(buds, dead, strict=True)]
    leave = spread((Fraction(buds[0]), Fraction(buds[1]), Fraction(buds[2])), digits)
    living = spread((alive[0], alive[1], alive[2]), digits)
    facts: Facts = {
        "wanted": ("buds", wanted_buds),
        "dead": ("share", dead_share),
        "more": ("share", known[1] - 1),
        "buds": ("buds", leave),
        "alive": ("buds", living),
    }
    figures = (Figure("buds", "buds", leave), Figure("living-buds", "buds", living))
    name = "same" if known[1] == 1 else "full" if winter_rule == "full" else "more"
    steps = (Sentence(f"winter-{name}", facts), Sentence("winter-alive", facts))
    return Answer("winter", figures, steps)
