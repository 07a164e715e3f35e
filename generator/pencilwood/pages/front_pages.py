"""The pages that lead to the others: home, and the list of vines."""

from __future__ import annotations

from dataclasses import asdict

from pencilwood.cases.profile_file import UNNAMED
from pencilwood.kept import kept_json
from pencilwood.pages.chapters.chapter_page import filled_in
from pencilwood.pages.desk import Desk
from pencilwood.pages.doors import doors
from pencilwood.pages.exercise import ExerciseParts, exercise_parts
from pencilwood.pages.handbook import HOME_TEXT, Handbook
from pencilwood.pages.page import Page
from pencilwood.pages.vine_cards import levels_of
from pencilwood.pages.vine_cards import small_drawing as small_drawing
from pencilwood.proof import CaseProof

MORE = ("rules", "scores", "safety", "words", "sources")
"""Pages that the front page leads to beside the doors."""
HOME = "index"


def home_page(handbook: Handbook, language: str) -> Page:
    """The front page: what this is, one vine to prune at once, three doors, and the rest."""
    desk = Desk(handbook, HOME, language)
    chapter = handbook.chapter(HOME_TEXT, language)
    vineyard = desk.profile.vineyard
    first = first_vine(handbook)
    return desk.write(
        "home.html",
        (chapter.title if chapter else "") or desk.say("home.title"),
        description=desk.say("home.lead"),
        opening=desk.render(
            "opening.html",
            case=None if first is None else first.case,
            exercise=None if first is None else _exercise(desk, first),
            following=None if first is None else handbook.following(first.case),
            doors=doors(desk),
            unnamed=vineyard in UNNAMED.values(),
        ),
        markdown=filled_in(desk, chapter) if chapter else "",
        menu_title=desk.say("home"),
        more=[name for name in MORE if _has(handbook, name)],
        has_exercise=first is not None,
    )


def vines_page(handbook: Handbook, language: str) -> Page:
    """Every vine, by level, with what it teaches."""
    desk = Desk(handbook, "vines", language)
    return desk.write(
        "vines.html", desk.say("vines"), menu_title=desk.say("vines"), levels=levels_of(desk)
    )


def first_vine(handbook: Handbook) -> CaseProof | None:
    """The vine to begin with: the first of all lists."""
    return next(iter(handbook.cases), None)


def _exercise(desk: Desk, proof: CaseProof) -> ExerciseParts:
    """The exercise, drawn only when no earlier build has kept it."""
    facts = [proof.name, desk.language]
    made = kept_json(
        "home-exercise", facts, lambda: asdict(exercise_parts(desk, proof)), _is_exercise
    )
    if not isinstance(made, dict):
        raise AssertionError("an exercise that was just made fits")
    return ExerciseParts(**made)


def _is_exercise(row: object) -> bool:
    return isinstance(row, dict) and row.keys() == ExerciseParts.__dataclass_fields__.keys()


def _has(handbook: Handbook, name: str) -> bool:
    there = {"safety": bool(handbook.notes), "words": bool(handbook.reference.terms)}
    return there.get(name, True)
