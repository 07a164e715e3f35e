"""Everything that can be chosen on a vine over the winters, worked out beforehand.

A choice is made for each position, each winter: the near cane stays or the far one. The browser
only looks up: what one position comes to depends on its own story, and what the whole vine comes
to stands in a table over all stories.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import product

from pencilwood.cases.case import Profile
from pencilwood.kept import kept_json
from pencilwood.plan.solver import solve
from pencilwood.proof.winters import EACH, WINTERS, Story, Winters
from pencilwood.score.judge import Charge
from pencilwood.score.lookup import LookUp
from pencilwood.score.sheet import compile_sheet

MOST_POSITIONS = 4
"""With more positions there are too many stories to work out."""


@dataclass(frozen=True)
class WinterTable:
    """One winter (0 is the first): what each combination of stories comes to.

    Stories are numbered as `stories_of` lists them; combinations run through the positions along
    the line, the last one's story changing fastest.
    """

    scores: tuple[int, ...]
    """By combination of stories, this winter's choice included."""
    best_lost: tuple[int, ...]
    """By combination of earlier stories: what even the best pruning loses."""
    rest: tuple[int, ...]
    """By combination, this winter's choice included: which of `rests` the whole vine loses."""
    rests: tuple[tuple[Charge, ...], ...]
    """What is lost beside single pieces of wood: gaps, buds and wounds in all."""


def stories_of(length: int) -> tuple[Story, ...]:
    """All stories of so many winters, the near cane first."""
    return tuple(product(EACH, repeat=length))


def winter_tables(winters: Winters, profile: Profile) -> tuple[WinterTable, ...]:
    """A table for each winter; empty when the vine has too many positions.

    A vine around a head is drawn in two views, which the script does not put together.
    """
    if len(winters.names) > MOST_POSITIONS or winters.case.vine.is_ring:
        return ()
    facts = [
        *(winters.case.slug, winters.case.vine, sorted(winters.limits.items()), winters.target),
        *(profile.pass_mark, profile.budbreak_percent, profile.latent_shoots_per_wound),
    ]
    rows = kept_json(
        "winters",
        facts,
        lambda: [_row(_worked(winters, winter)) for winter in range(WINTERS)],
        lambda value: _read(value) is not None,
    )
    tables = _read(rows)
    if tables is None:
        raise AssertionError("what was just worked out fits")
    return tables


def _worked(winters: Winters, winter: int) -> WinterTable:
    scores: dict[tuple[Story, ...], int] = {}
    rest: dict[tuple[Story, ...], int] = {}
    best: list[int] = []
    rests: dict[str, int] = {}
    known: list[tuple[Charge, ...]] = []
    for before in product(stories_of(winter), repeat=len(winters.names)):
        sheet = compile_sheet(winters.mixed(before), winters.limits, winters.target)
        look_up = LookUp(sheet)
        best.append(look_up.tally(solve(sheet).states)[0])
        for now in product(EACH, repeat=len(winters.names)):
            stories = tuple((*story, one) for story, one in zip(before, now, strict=True))
            states = winters.left(sheet.parts, now).states
            scores[stories] = look_up.score(states, best[-1], winters.pass_mark)
            whole = tuple(
                charge
                for number in look_up.lists(states)[len(sheet.parts.parts) :]
                for charge in sheet.ledger[number]
                if charge.points
            )
            rest[stories] = rests.setdefault(repr(whole), len(known))
            if rest[stories] == len(known):
                known.append(whole)
    in_order = list(product(stories_of(winter + 1), repeat=len(winters.names)))
    return WinterTable(
        tuple(scores[stories] for stories in in_order),
        tuple(best),
        tuple(rest[stories] for stories in in_order),
        tuple(known),
    )


def charges_at(winters: Winters, position: str, story: Story) -> Iterator[Charge]:
    """What the wood of one position loses by its story, this winter's choice included."""
    count = len(winters.names)
    pruned = winters.pruned([story[:-1]] * count, [story[-1]] * count)
    for charge in pruned.charges:
        if charge.points and len(charge.where) == 1 and charge.where[0] in pruned.parts.index:
            part = pruned.parts.parts[pruned.parts.index[charge.where[0]]]
            if part.position.name == position:
                yield charge


def _row(table: WinterTable) -> list[object]:
    """A table in plain values."""
    return [
        list(table.scores),
        list(table.best_lost),
        list(table.rest),
        [
            [[one.rule, one.message, one.points, one.must, dict(one.facts)] for one in charges]
            for charges in table.rests
        ],
    ]


def _read(rows: object) -> tuple[WinterTable, ...] | None:
    """The tables read back; None for what is none."""
    if not isinstance(rows, list) or len(rows) != WINTERS:
        return None
    tables = []
    for row in rows:
        match row:
            case [list(scores), list(best), list(rest), list(rests)] if len(scores) == len(rest):
                known = tuple(tuple(Charge(*one) for one in charges) for charges in rests)
                tables.append(WinterTable(tuple(scores), tuple(best), tuple(rest), known))
            case _:
                return None
    return tuple(tables)
