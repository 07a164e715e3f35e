"""Which cane stays: the choices of one position, each held against the plan."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import product

from pencilwood.cases.quiz import WhichCane
from pencilwood.quiz.asker import Asker
from pencilwood.quiz.made import Choices, MadeQuestion, Option, Picture
from pencilwood.quiz.vines import ProvedVine, position_named, slip
from pencilwood.score.judge import Charge, judge, lost, new_charges
from pencilwood.score.told import message_text
from pencilwood.vine.wood import Part, WoodLeft

CLEARLY_POINTS = 3
"""The right choice must be better than any other by so many points, or nobody could tell."""

MOST_CHOICES = 5
_MOST_REASONS = 2


@dataclass(frozen=True)
class _Kept:
    """A cane that stays."""

    cane: Part
    is_long: bool
    """Whether it stays as one that is tied along the wire, and not as a spur."""


@dataclass(frozen=True)
class _Way:
    """One way to leave a position."""

    kept: tuple[_Kept, ...]
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
            one=_called(best, vine, asker),
            other=_called(others[0], vine, asker),
        )
    options = [
        Option(_called(best, vine, asker), _why_right(best, others[0], asker), True),
        *(Option(_called(way, vine, asker), _why_wrong(way, best, asker), False) for way in others),
    ]
    return MadeQuestion(
        question,
        "cane",
        asker.say_of(vine.parts.vine.own_words, "cane.ask", position=position),
        Choices(tuple(options[:MOST_CHOICES])),
        Picture(vine.case.slug, "before", position),
        position,
    )


def _ways(vine: ProvedVine, position: str) -> list[_Way]:
    """Every single cane, none, and both where there are just two; the rest as the plan has it."""
    parts = vine.parts
    canes = [p for n in parts.of_position(position) for p in (parts.parts[n],) if p.is_cane]
    together: list[tuple[Part, ...]] = [(cane,) for cane in canes]
    if len(canes) == 2:
        together.append(tuple(canes))
    lengths = (False, True) if parts.vine.form.tied else (False,)
    kept = [
        tuple(_Kept(cane, is_long) for cane, is_long in zip(canes, as_what, strict=True))
        for canes in together
        for as_what in product(lengths, repeat=len(canes))
    ]
    return [_best_of(vine, position, one) for one in (*kept, ())]


def _best_of(vine: ProvedVine, position: str, kept: tuple[_Kept, ...]) -> _Way:
    """A kept cane may be left with so many buds, whichever loses least."""
    limits, target = vine.sheet.limits, vine.target
    tried = []
    for buds in product(*(_buds(one, vine) for one in kept)):
        left = _left(vine, position, [(one.cane, n) for one, n in zip(kept, buds, strict=True)])
        tried.append(_Way(kept, left, judge(left, limits, target)))
    return min(tried, key=lambda way: lost(way.charges))


def _buds(kept: _Kept, vine: ProvedVine) -> Sequence[int]:
    """The numbers of buds that make a cane a spur, or a cane to be tied; all it has if too few."""
    limits, form, cane = vine.sheet.limits, vine.parts.vine.form, kept.cane
    if not kept.is_long:
        return range(1, min(cane.most, limits["buds on a spur at most"]) + 1)
    tied = [tally for tally in form.tallies if tally.name == form.tied]
    long = [
        buds
        for buds in range(1, cane.most + 1)
        if any(tally.counts(cane.position, cane.piece, buds, limits) for tally in tied)
    ]
    return long or (cane.most,)


def _left(vine: ProvedVine, position: str, kept: Sequence[tuple[Part, int]]) -> WoodLeft:
    """The plan, with only these canes kept at one position, and the wood that carries them."""
    parts = vine.parts
    states = list(vine.plan.left.states)
    for number in parts.of_position(position):
        states[number] = 0
    for cane, buds in kept:
        number = parts.index[cane.name]
        states[number] = buds
        for below in parts.below(number):
            states[below] = 1
    return WoodLeft(parts, tuple(states))


def _called(way: _Way, vine: ProvedVine, asker: Asker) -> str:
    if not way.kept:
        return asker.say("cane.none")
    if vine.parts.vine.form.tied:
        return asker.listed([_called_as(one, asker) for one in way.kept])
    if len(way.kept) > 1:
        return asker.say("cane.both")
    return asker.wood(way.kept[0].cane)


def _called_as(kept: _Kept, asker: Asker) -> str:
    return asker.say(f"cane.as.{'long' if kept.is_long else 'spur'}", name=kept.cane.name)


def _why_right(best: _Way, next_best: _Way, asker: Asker) -> str:
    worse = lost(next_best.charges) - lost(best.charges)
    if not best.kept:
        return asker.say("cane.why-none", points=worse)
    own = best.left.parts.vine.own_words
    facts = " ".join(
        asker.say("cane.why-kept", cane=asker.wood(cane), facts=asker.cane_facts(cane, own))
        for cane in (one.cane for one in best.kept)
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
