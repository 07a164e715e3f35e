"""The pages that lead to the others: home, and the list of vines."""

from __future__ import annotations

from dataclasses import dataclass

from pencilwood.cases.case import Level
from pencilwood.cases.profile_file import UNNAMED
from pencilwood.pages.chapters.chapter_page import filled_in
from pencilwood.pages.desk import Desk
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.page import Page
from pencilwood.proof import CaseProof
from pencilwood.rules import RULE_BY_NAME

DOORS = (
    "workers",
    "quizzes",
    "rules",
    "scores",
    "safety",
    "words",
    "trainers",
    "sources",
)
"""Pages that the front page leads to."""
LEVELS: tuple[Level, ...] = ("easy", "middling", "hard")
HOME = "index"
HOME_TEXT = "home"
"""The chapter that opens the front page; without a title it takes the handbook's name."""


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


def home_page(handbook: Handbook, language: str) -> Page:
    """The front page: the trainer's own words, then the way in."""
    desk = Desk(handbook, HOME, language)
    chapter = handbook.chapter(HOME_TEXT, language)
    vineyard = desk.profile.vineyard
    title = chapter.title if chapter else ""
    levels = _levels(desk)
    more = [name for name in DOORS if _has(handbook, name, language)]
    return desk.write(
        "home.html",
        title or desk.say("site-name", vineyard=vineyard),
        description=desk.say("home.lead"),
        opening=desk.render("opening.html", levels=levels, unnamed=vineyard in UNNAMED.values()),
        markdown=filled_in(desk, chapter) if chapter else "",
        menu_title=desk.say("home"),
        levels=levels,
        more=more,
    )


def vines_page(handbook: Handbook, language: str) -> Page:
    """Every vine, by level, with what it teaches."""
    desk = Desk(handbook, "vines", language)
    return desk.write(
        "vines.html", desk.say("vines"), menu_title=desk.say("vines"), levels=_levels(desk)
    )


def _has(handbook: Handbook, name: str, language: str) -> bool:
    there = {
        "quizzes": bool(handbook.quizzes),
        "safety": bool(handbook.notes),
        "words": bool(handbook.reference.terms),
        "workers": bool(handbook.chapters_for("worker", language)),
        "trainers": bool(handbook.chapters_for("trainer", language)),
    }
    return there.get(name, True)


def _levels(desk: Desk) -> tuple[LevelCards, ...]:
    found = []
    for level in LEVELS:
        here = [proof for proof in desk.handbook.cases if proof.case.level == level]
        if here:
            cards = tuple(_card(desk, proof) for proof in here)
            found.append(LevelCards(level, desk.say(f"level.{level}"), cards))
    return tuple(found)


def _card(desk: Desk, proof: CaseProof) -> Card:
    case = proof.case
    return Card(
        slug=case.slug,
        title=desk.own(case.title),
        picture=desk.asset(small_drawing(case.slug)),
        href=desk.href(f"cases/{case.slug}"),
        teaches=tuple(RULE_BY_NAME[name].title[desk.language] for name, _ in case.teaches),
    )
