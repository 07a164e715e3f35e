"""Lists of vines: a small drawing, a title and what the vine teaches, from easy to hard."""

from __future__ import annotations

from dataclasses import dataclass

from pencilwood.cases.case import LEVELS, Case, Level
from pencilwood.pages.desk import Desk
from pencilwood.rules import RULE_BY_NAME


@dataclass(frozen=True)
class Card:
    """One vine in a list."""

    slug: str
    title: str
    picture: str
    href: str
    teaches: tuple[str, ...]


@dataclass(frozen=True)
class LevelCards:
    """The vines of one level."""

    level: Level
    title: str
    cards: tuple[Card, ...]


def small_drawing(slug: str) -> str:
    """Where the small drawing of a case stands among our own files."""
    return f"vines/{slug}.svg"


def levels_of(desk: Desk) -> tuple[LevelCards, ...]:
    """Every vine, by level; a level without vines is left out."""
    found = []
    for level in LEVELS:
        here = [proof for proof in desk.handbook.cases if proof.case.level == level]
        if here:
            cards = tuple(card_of(desk, one.case, f"cases/{one.case.slug}") for one in here)
            found.append(LevelCards(level, desk.say(f"level.{level}"), cards))
    return tuple(found)


def card_of(desk: Desk, case: Case, path: str) -> Card:
    """One vine, leading to a page of it."""
    return Card(
        slug=case.slug,
        title=desk.own(case.title),
        picture=desk.asset(small_drawing(case.slug)),
        href=desk.href(path),
        teaches=tuple(RULE_BY_NAME[name].title[desk.language] for name, _ in case.teaches),
    )
