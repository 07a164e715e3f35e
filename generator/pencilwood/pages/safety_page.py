"""The safety page: the worker, tools, and ladders."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from pencilwood.cases.reference import Title
from pencilwood.cases.safety import SafetyNote, Status
from pencilwood.pages.chapters.template import named_by_calls
from pencilwood.pages.desk import Desk
from pencilwood.pages.handbook import Chapter, Handbook
from pencilwood.pages.page import Page
from pencilwood.pages.sign import sign
from pencilwood.pages.unbroken import keep_names_together

GROUPS = ("you", "tools", "ladders")
"""The worker first: what to do after a cut must be found without looking for it."""


@dataclass(frozen=True)
class ShownSource:
    """Where some of a note's cautions come from."""

    numbers: str
    """Which of them, counted from 1: `1, 2, 5`."""
    title: Markup
    """Who published it; empty where nobody did."""
    as_printed: bool
    status: Status


@dataclass(frozen=True)
class ShownNote:
    """A safety note and each of its sources, once."""

    note: SafetyNote
    sources: tuple[ShownSource, ...]
    sign: Markup
    """A drawing for the eye; empty for a note that nobody has drawn one for."""
    chapters: tuple[Chapter, ...]
    """The chapters that show it."""


def safety_page(handbook: Handbook, language: str) -> Page:
    """Every safety note, with the status of each piece of advice."""
    desk = Desk(handbook, "safety", language)
    groups = tuple(
        (group, tuple(_shown(desk, note) for note in handbook.notes if note.about == group))
        for group in GROUPS
    )
    return desk.write(
        "safety.html", desk.say("safety"), menu_title=desk.say("safety"), groups=groups
    )


def _shown(desk: Desk, note: SafetyNote) -> ShownNote:
    found: dict[tuple[str, Status], tuple[Title | None, list[str]]] = {}
    for number, advice in enumerate(note.advice, start=1):
        key = (desk.own(advice.source.words) if advice.source else "", advice.status)
        found.setdefault(key, (advice.source, []))[1].append(str(number))
    return ShownNote(
        note=note,
        sources=tuple(
            ShownSource(
                numbers=", ".join(numbers),
                title=keep_names_together(words),
                as_printed=title is not None and title.as_printed,
                status=status,
            )
            for (words, status), (title, numbers) in found.items()
        ),
        sign=sign(desk, note.name),
        chapters=tuple(one for one in _in_reading_order(desk) if note.name in _called(one)),
    )


def _in_reading_order(desk: Desk) -> tuple[Chapter, ...]:
    """What crews read, then what trainers read; of each what says most of safety comes first."""
    handbook, language = desk.handbook, desk.language
    return tuple(
        chapter
        for audience in ("worker", "trainer")
        for chapter in sorted(
            handbook.chapters_for(audience, language), key=lambda one: -len(_called(one))
        )
    )


def _called(chapter: Chapter) -> frozenset[str]:
    """The notes that a chapter puts in."""
    return frozenset(named_by_calls(chapter.markdown, "safety", "note"))
