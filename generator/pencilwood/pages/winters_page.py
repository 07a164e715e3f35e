"""The page of a vine over three winters: the same vine under two habits, and a try of one's own.

Everything is worked out here. The page's script puts drawings together position by position and
looks the rest up.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from pencilwood.drawing.wood.stems import THICKER
from pencilwood.pages.desk import Desk
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.page import Page
from pencilwood.pages.quiz_pages import strings_of
from pencilwood.pages.unbroken import keep_units_together, unbroken
from pencilwood.pages.winter_drawings import WinterDrawings
from pencilwood.pages.wood_words import label_named
from pencilwood.proof import CaseProof
from pencilwood.proof.winter_table import WinterTable, charges_at, stories_of, winter_tables
from pencilwood.proof.winters import WINTERS, PrunedWinter, Story, Winters
from pencilwood.score.judge import Charge
from pencilwood.score.sheet import dump
from pencilwood.score.told import message_text
from pencilwood.units import format_percent
from pencilwood.vine.growth_figures import GROWTH_FIGURES, GrowthFigure
from pencilwood.vine.measures import away_mm, leaf_room
from pencilwood.vine.spur_choice import Stays, cane_that_stays
from pencilwood.vine.wood import Part, Parts


@dataclass(frozen=True)
class ShownWinter:
    """One winter of one habit, as the page shows it."""

    title: str
    drawing: str
    climb: str
    within: int
    leaves: int
    lost: int
    """Points that it loses, those included that no pruning of that winter's vine could save."""
    plan_lost: int
    losses: tuple[str, ...]


@dataclass(frozen=True)
class ShownHabit:
    """One habit over the winters, and the vine at the end."""

    stays: str
    title: str
    winters: tuple[ShownWinter, ...]
    end: str


@dataclass(frozen=True)
class ShownFigure:
    """One figure of the simulated growth."""

    name: str
    value: str
    status: str
    source: str


def winters_path(slug: str) -> str:
    """Where the page of a case's winters stands, with neither language nor ending."""
    return f"winters/{slug}"


def winters_page(handbook: Handbook, proof: CaseProof, language: str) -> Page:
    """The page of one vine over three winters in one language."""
    case = proof.case
    desk = Desk(handbook, winters_path(case.slug), language)
    winters = Winters(case, desk.profile)
    drawings = WinterDrawings(winters, desk)
    tables = winter_tables(winters, desk.profile)
    habits = tuple(_habit(desk, winters, drawings, stays) for stays in Stays)
    title = desk.say("winters.title", title=desk.own(case.title))
    return desk.write(
        "winters.html",
        title,
        description=desk.say("winters.lead"),
        case=case,
        habits=habits,
        spurs=len(winters.names),
        most=desk.length(winters.limits["climb at most"]),
        figures=figures_shown(desk),
        data=script_data(desk, winters, tables) if tables else "",
        # What only the script needs stands beside the drawings that everybody sees.
        others="".join(drawings.others()) if tables else "",
        times=THICKER,
    )


def _habit(desk: Desk, winters: Winters, drawings: WinterDrawings, stays: Stays) -> ShownHabit:
    shown = tuple(
        _winter(desk, winters, year, number, drawings.of((stays,) * number, stays))
        for number, year in enumerate(winters.by_habit(stays))
    )
    end = drawings.of((stays,) * WINTERS, None)
    return ShownHabit(str(stays), desk.say(f"winters.habit.{stays}"), shown, end)


def _winter(
    desk: Desk, winters: Winters, year: PrunedWinter, number: int, drawing: str
) -> ShownWinter:
    kept = zip(year.parts.parts, year.left.states, strict=True)
    rooms = [leaf_room(year.parts.vine, part, 1) for part, state in kept if part.is_cane and state]
    return ShownWinter(
        title=desk.say("winters.winter", n=number + 1),
        drawing=drawing,
        climb=desk.length(year.climb_mm),
        within=year.within(winters.limits["climb at most"]),
        leaves=min(rooms, default=0),
        lost=sum(charge.points for charge in year.charges),
        plan_lost=year.plan_lost,
        losses=tuple(losses_told(desk, year.parts, year.charges)),
    )


def losses_told(desk: Desk, parts: Parts, charges: Sequence[Charge]) -> Iterator[str]:
    """What a pruning loses, a sentence for each charge."""
    for charge in charges:
        if charge.points:
            sentence = message_text(charge, desk.language, desk.profile.units)
            names = " – ".join(label_named(desk, parts, name) for name in charge.where)
            where = names or desk.say("winters.whole-vine")
            yield desk.say("winters.loss", where=where, sentence=sentence, points=charge.points)


def figures_shown(desk: Desk) -> tuple[ShownFigure, ...]:
    """All figures of the simulated growth."""
    return tuple(_figure(desk, one) for one in GROWTH_FIGURES)


def _figure(desk: Desk, figure: GrowthFigure) -> ShownFigure:
    is_length = figure.kind == "length"
    percent = format_percent(Fraction(figure.value), 0, desk.language)
    return ShownFigure(
        name=desk.say(f"winters.figure.{figure.name}"),
        value=desk.length(figure.value) if is_length else percent,
        status=desk.say(f"status.{figure.status}"),
        source=figure.source[desk.language],
    )


def script_data(desk: Desk, winters: Winters, tables: Sequence[WinterTable]) -> str:
    """What the page's script looks up, as JSON that cannot end its script element."""
    body = {
        "format": 1,
        "positions": list(winters.names),
        "passMark": desk.profile.pass_mark,
        "limit": winters.limits["climb at most"],
        "winters": [
            _winter_data(desk, winters, table, number) for number, table in enumerate(tables)
        ],
        "strings": {
            key.removeprefix(_SCRIPT): text for key, text in strings_of(desk, _SCRIPT).items()
        },
    }
    # What a script puts on the page, nobody looks through for units any more.
    return keep_units_together(dump(body).replace("<", "\\u003c"))


_SCRIPT = "pages.winters.script."
"""Sentences that the script fills in."""


def _winter_data(
    desk: Desk, winters: Winters, table: WinterTable, number: int
) -> dict[str, object]:
    before, after = stories_of(number), stories_of(number + 1)
    parts = {story: winters.grown(story) for story in before}
    return {
        "scores": table.scores,
        "best": table.best_lost,
        "rest": table.rest,
        "rests": [list(losses_told(desk, winters.grown(()), charges)) for charges in table.rests],
        "canes": [
            [
                [_cane(desk, parts[story], name, stays, winters) for stays in Stays]
                for story in before
            ]
            for name in winters.names
        ],
        "at": [
            [_at(desk, winters, name, story, parts[story[:-1]]) for story in after]
            for name in winters.names
        ],
    }


def _kept(winters: Winters, parts: Parts, name: str, stays: Stays) -> Part | None:
    return cane_that_stays(parts, name, stays, winters.limits)


def _cane(desk: Desk, parts: Parts, name: str, stays: Stays, winters: Winters) -> str:
    """What a choice is called: the cane, and how far its first bud stands from the arm."""
    cane = _kept(winters, parts, name, stays)
    if cane is None:
        return desk.say("winters.no-cane")
    return desk.say(
        f"winters.cane.{stays}",
        letter=cane.piece.letter,
        climb=desk.length(away_mm(parts.vine, cane)),
        thickness=desk.length(cane.piece.thickness_mm),
    )


def _at(desk: Desk, winters: Winters, name: str, story: Story, parts: Parts) -> list[object]:
    """How far a spur stands from the arm, in mm and in words, and what its wood loses."""
    cane = _kept(winters, parts, name, story[-1])
    mm = 0 if cane is None else away_mm(parts.vine, cane)
    losses = losses_told(desk, parts, tuple(charges_at(winters, name, story)))
    return [mm, unbroken(desk.length(mm)), list(losses)]
