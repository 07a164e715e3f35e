"""The three doors of the front page: who starts on Monday, who trains a crew, who teaches a class.

Each is a page of its own that lists what the handbook holds for them, in the order of their work.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from markupsafe import Markup

from pencilwood.cases.case import Case
from pencilwood.cases.chapter_head import Audience
from pencilwood.cases.credits import credit_words
from pencilwood.pages.chapters.list_pictures import list_pictures
from pencilwood.pages.desk import Desk
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.page import Page
from pencilwood.pages.papers_list import papers_list
from pencilwood.pages.projector_page import projector_path
from pencilwood.pages.rule_prices import form_word
from pencilwood.pages.sign import sign
from pencilwood.pages.vine_cards import Card, card_of, levels_of
from pencilwood.quiz.quiz_proof import QuizProof
from pencilwood.vine.forms import FORM_NAMES

WORKERS, TRAINERS, TEACHERS = "workers", "trainers", "teachers"
_BEHIND: dict[str, tuple[Audience | None, tuple[str, ...]]] = {
    WORKERS: ("worker", ("chapters", "vines", "practice", "quizzes")),
    TRAINERS: ("trainer", ("chapters", "vines", "block", "quizzes")),
    TEACHERS: (None, ("vines", "quizzes", "packages")),
}
"""What stands behind each door: whose chapters, and the parts that the front page names."""
_NAMED = {TRAINERS: {"running-a-pruning-day", "setting-targets"}}
"""Chapters that the front page names behind a door; without them it names none there."""


@dataclass(frozen=True)
class Lead:
    """A link, and what stands beside it."""

    title: str
    href: str
    words: str = ""
    picture: str = ""
    """The address of a small picture; "" for none."""
    sign: Markup = field(default_factory=Markup)
    """A sign that stands for a picture; empty for none."""


def doors(desk: Desk) -> tuple[Lead, ...]:
    """The three doors on the front page; each promises only what stands behind it."""
    return tuple(_door(desk, path) for path in _BEHIND)


def _door(desk: Desk, path: str) -> Lead:
    audience, parts = _BEHIND[path]
    missing = set()
    chapters = desk.handbook.chapters_for(audience, desk.language) if audience else ()
    if not chapters or not _NAMED.get(path, set()) <= {one.name for one in chapters}:
        missing.add("chapters")
    if not desk.profile.practice_vines:
        missing.add("practice")
    if not desk.handbook.quizzes:
        missing.add("quizzes")
    kept = [desk.say(f"home.door.{path}.{part}") for part in parts if part not in missing]
    words = ", ".join(kept)
    return Lead(desk.say(f"home.door.{path}"), desk.href(path), words[:1].upper() + words[1:])


def workers_page(handbook: Handbook, practice_vines: int, language: str) -> Page:
    """The path of somebody who has never pruned: chapters, easy vines, practice, a first quiz."""
    desk = Desk(handbook, WORKERS, language)
    first = next(iter(handbook.quizzes), None)
    chapters = handbook.chapters_for("worker", language)
    pictures = list_pictures(desk, chapters)
    return _write(
        desk,
        chapters=[
            Lead(one.title, desk.href(one.name), picture=shown.address, sign=sign(desk, shown.sign))
            for one, shown in zip(chapters, pictures, strict=True)
        ],
        levels=levels_of(desk)[:1],
        quiz=None if first is None else quiz_lead(desk, first),
        practice_vines=practice_vines,
    )


def trainers_page(handbook: Handbook, language: str) -> Page:
    """What somebody needs who prepares and leads a crew."""
    desk = Desk(handbook, TRAINERS, language)
    return _write(
        desk,
        chapters=[
            Lead(one.title, desk.href(one.name))
            for one in handbook.chapters_for("trainer", language)
        ],
        quizzes=[quiz_lead(desk, quiz) for quiz in handbook.quizzes],
        blocks=bool(handbook.blocks),
    )


def teachers_page(handbook: Handbook, language: str) -> Page:
    """What a class is taught with: a wall, paper, quizzes, a learning system, vines of others."""
    desk = Desk(handbook, TEACHERS, language)
    cases = [proof.case for proof in handbook.cases]
    return _write(
        desk,
        shown=_by_form(desk, cases),
        papers=papers_list(desk),
        quizzes=[quiz_lead(desk, quiz) for quiz in handbook.quizzes],
        shared=[
            Lead(
                desk.own(one.title),
                desk.href(f"cases/{one.slug}"),
                credit_words(one, language),
            )
            for one in cases
            if one.shared_in
        ],
    )


def _by_form(desk: Desk, cases: Sequence[Case]) -> dict[str, list[Card]]:
    """Each vine's page for a projector, under the form it is trained to."""
    found: dict[str, list[Card]] = {}
    for name in FORM_NAMES:
        for case in cases:
            if case.vine.form.name == name:
                card = card_of(desk, case, projector_path(case.slug))
                found.setdefault(form_word(desk, name), []).append(card)
    return found


def quiz_lead(desk: Desk, proof: QuizProof) -> Lead:
    """A quiz with what it is about."""
    quiz = proof.quiz
    count = desk.say("quizzes.count", n=len(quiz.questions), minutes=proof.minutes)
    return Lead(
        desk.own(quiz.title), desk.href(f"quizzes/{quiz.slug}"), f"{desk.own(quiz.intro)} {count}"
    )


def _write(desk: Desk, **values: object) -> Page:
    path, title = desk.path, desk.say(desk.path)
    lead = desk.say(f"{path}.lead")
    # What the template shows goes under one name: it is no concern of the desk.
    return desk.write(f"{path}.html", title, description=lead, menu_title=title, door=values)
