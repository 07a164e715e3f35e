"""Which cane stays: the choices of one position, each held against the plan."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from pencilwood.cases.quiz import WhichCane
from pencilwood.quiz.asker import Asker
from pencilwood.quiz.made import Choices, MadeQuestion, Option, Picture
from pencilwood.quiz.pictures import window
from pencilwood.quiz.vines import ProvedVine, position_named, slip
from pencilwood.score.judge import Charge, judge, lost, new_charges
from pencilwood.score.told import message_text
from pencilwood.vine.wood import Part, WoodLeft

CLEARLY_POINTS = 3
"""The right choice must be better than any other by so many points, or nobody could tell."""

MOST_CHOICES = 5
_MOST_REASONS = 2
_BEST_BUDS = (1, 2)
"""A kept cane may be left with so many buds, whichever loses less."""


@dataclass(frozen=True)
class _Way:
    """One way to leave a position."""

    kept: tuple[Part, ...]
    left: WoodLeft
    charges: tuple[Charge, ...]


def which_cane(question: WhichCane, vine: ProvedVine, asker: Asker) -> MadeQuestion:
    """The question, worked out; QuestionError where no cane is clearly the best."""
    at = question.seen.at or ""
    position = position_named(vine, at)
    ways = _ways(vine, position)
    best = min(ways, key=lambda way: lost(way.charges))
    others = sorted((w for w in ways if w is not best), key=lambda way: lost(way.charges))
    if len(others) < 2:
        raise slip("too-few-canes", position=position)
    if lost(others[0].charges) - lost(best.charges) < CLEARLY_POINTS:
        raise slip(
            "no-clear-cane",
            position=position,
            one=_called(best, asker),
            other=_called(others[0], asker),
        )
    options = [
        Option(_called(best, asker), _why_right(best, others[0], asker), True),
        *(Option(_called(way, asker), _why_wrong(way, best, asker), False) for way in others),
    ]
    return MadeQuestion(
        question,
        "cane",
        asker.say("cane.ask", position=position),
        Choices(tuple(options[:MOST_CHOICES])),
        Picture(vine.case.slug, "before", position),
        window(vine, position),
        position,
    )


def _ways(vine: ProvedVine, position: str) -> list[_Way]:
    """Every single cane, none, and both where there are just two; the rest as the plan has it."""
    parts = vine.parts
    canes = [p for n in parts.of_position(position) for p in (parts.parts[n],) if p.is_cane]
    kept: list[tuple[Part, ...]] = [(cane,) for cane in canes]
    if len(canes) == 2:
        kept.append(tuple(canes))
    kept.append(())
    return [_best_of(vine, position, one) for one in kept]


def _best_of(vine: ProvedVine, position: str, kept: tuple[Part, ...]) -> _Way:
    limits, target = vine.sheet.limits, vine.target
    tried = []
    for buds in _BEST_BUDS:
        left = _left(vine, position, kept, buds)
        tried.append(_Way(kept, left, judge(left, limits, target)))
    return min(tried, key=lambda way: lost(way.charges))


def _left(vine: ProvedVine, position: str, kept: Sequence[Part], buds: int) -> WoodLeft:
    """The plan, with only these canes kept at one position, and the wood that carries them."""
    parts = vine.parts
    states = list(vine.plan.left.states)
    for number in parts.of_position(position):
        states[number] = 0
    for cane in kept:
        number = parts.index[cane.name]
        states[number] = min(cane.most, buds)
        for below in parts.below(number):
            states[below] = 1
    return WoodLeft(parts, tuple(states))


def _called(way: _Way, asker: Asker) -> str:
    if not way.kept:
        return asker.say("cane.none")
    if len(way.kept) > 1:
        return asker.say("cane.both")
    return asker.wood(way.kept[0])


def _why_right(best: _Way, next_best: _Way, asker: Asker) -> str:
    worse = lost(next_best.charges) - lost(best.charges)
    if not best.kept:
        return asker.say("cane.why-none", points=worse)
    facts = " ".join(
        asker.say("cane.why-kept", cane=asker.wood(cane), facts=asker.cane_facts(cane))
        for cane in best.kept
    )
    return f"{facts} {asker.say('cane.next-best', points=worse)}"


def _why_wrong(way: _Way, best: _Way, asker: Asker) -> str:
    """What this way loses and the best one does not, dearest first."""
    new = new_charges(way.charges, best.charges)
    told = dict.fromkeys(_sentence(charge, asker) for charge in new)
    return " ".join(list(told)[:_MOST_REASONS])


def _sentence(charge: Charge, asker: Asker) -> str:
    text = message_text(charge, asker.language, asker.profile.units)
    if not charge.where:
        return text
    return asker.say("cane.at", where=asker.listed(charge.where), message=text)
