"""The pages that lead to the others: home, and the list of vines."""

from __future__ import annotations

from dataclasses import dataclass

from pencilwood.cases.case import Level
from pencilwood.pages.desk import Desk
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.page import Page
from pencilwood.proof import CaseProof
from pencilwood.rules import RULE_BY_NAME

LEVELS: tuple[Level, ...] = ("easy", "middling", "hard")
HOME = "index"


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
    chapter = handbook.chapter("home", language)
    title = chapter.title if chapter else desk.say("site-name", vineyard=desk.profile.vineyard)
    levels = _levels(desk)
    more = [name for name in ("quizzes", "rules", "scores", "safety") if _has(handbook, name)]
    return desk.write(
        "home.html",
        title,
        description=desk.say("home.lead"),
        opening=desk.render("opening.html", levels=levels),
        markdown=chapter.markdown if chapter else "",
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


def chapter_pages(handbook: Handbook) -> list[Page]:
    """The trainer's other chapters, each a page of its own."""
    return [
        Desk(handbook, chapter.name, chapter.language).write(
            "chapter.html", chapter.title, markdown=chapter.markdown, menu_title=chapter.title
        )
        for chapter in handbook.chapters
        if chapter.name != "home"
    ]


def _has(handbook: Handbook, name: str) -> bool:
    return {"quizzes": bool(handbook.quizzes), "safety": bool(handbook.notes)}.get(name, True)


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
