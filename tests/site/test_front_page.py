"""What the front page and its three doors offer, by what a handbook holds."""

import re
from dataclasses import replace
from types import SimpleNamespace
from typing import cast

import pytest

from pencilwood.pages.desk import Desk
from pencilwood.pages.doors import doors, teachers_page, trainers_page, workers_page
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.page import Page
from pencilwood.quiz.quiz_proof import QuizProof
from pencilwood.vine.forms import FORMS
from small_handbook import Change, with_chapter

# ---------------------------------------------------------------- the three doors


def with_quiz(handbook: Handbook) -> Handbook:
    words = {"en": "Words of q"}
    quiz = SimpleNamespace(slug="q", title=words, intro=words, questions=[1, 2])
    proof = cast(QuizProof, SimpleNamespace(quiz=quiz, minutes=5))
    return replace(handbook, quizzes=(proof,))


def with_practice(handbook: Handbook) -> Handbook:
    return replace(handbook, profile=replace(handbook.profile, practice_vines=3))


def with_both_for_trainers(handbook: Handbook) -> Handbook:
    (made,) = with_chapter("trainer")(handbook).chapters
    names = ("running-a-pruning-day", "setting-targets")
    return replace(handbook, chapters=tuple(replace(made, name=name) for name in names))


def as_it_is(handbook: Handbook) -> Handbook:
    return handbook


@pytest.mark.parametrize(
    ("change", "promised", "why"),
    [
        (
            as_it_is,
            (
                "Vines to begin with",
                "Your own vines, the block",
                "Vines on the wall, papers, packages, shared vines",
            ),
            "nothing is promised that one vine alone does not give",
        ),
        (
            with_chapter("worker"),
            (
                "Short chapters, vines to begin with",
                "Your own vines, the block",
                "Vines on the wall, papers, packages, shared vines",
            ),
            "chapters stand behind the door of those for whom they are written",
        ),
        (
            with_both_for_trainers,
            (
                "Vines to begin with",
                "The pruning day, targets, your own vines, the block",
                "Vines on the wall, papers, packages, shared vines",
            ),
            "the same for trainers",
        ),
        (
            with_chapter("trainer"),
            (
                "Vines to begin with",
                "Your own vines, the block",
                "Vines on the wall, papers, packages, shared vines",
            ),
            "a chapter for trainers is promised by what it is about",
        ),
        (
            with_practice,
            (
                "Vines to begin with, practice",
                "Your own vines, the block",
                "Vines on the wall, papers, packages, shared vines",
            ),
            "practice vines are for those who learn",
        ),
        (
            with_quiz,
            (
                "Vines to begin with, a first quiz",
                "Your own vines, the block, results",
                "Vines on the wall, papers, quizzes, packages, shared vines",
            ),
            "a quiz is of use to all three",
        ),
    ],
)
def test_a_door_promises_what_stands_behind_it(
    plain: Handbook, change: Change, promised: tuple[str, ...], why: str
) -> None:
    shown = doors(Desk(change(plain), "index", "en"))
    assert [one.title for one in shown] == [
        "I start on Monday",
        "I train a crew",
        "I teach a class",
    ]
    assert [one.href for one in shown] == ["workers.html", "trainers.html", "teachers.html"]
    assert tuple(one.words for one in shown) == promised, why


def headings(page: Page) -> list[str]:
    """The headings of a page's body, and that each has something under it."""
    parts = re.split(r"<h2[^>]*>(.*?)</h2>", page.body, flags=re.DOTALL)[1:]
    for title, under in zip(parts[::2], parts[1::2], strict=True):
        said = re.sub(r"<!--.*?-->|<[^>]*>", "", under, flags=re.DOTALL).strip()
        assert said, f"nothing stands under {title!r}"
    return [re.sub("<[^>]*>", "", title).strip() for title in parts[::2]]


READ, PRUNE = "Read one short chapter at a time", "Prune, from the easiest vine on"
PRACTISE, QUIZ = "Practise until your hand knows it", "Your first quiz"


@pytest.mark.parametrize(
    ("change", "practice_vines", "listed", "why"),
    [
        (as_it_is, 0, [PRUNE], "a heading with nothing under it is left out"),
        (with_chapter("worker"), 0, [READ, PRUNE], "reading comes before cutting"),
        (with_chapter("trainer"), 0, [PRUNE], "a trainer's chapter is not for a worker"),
        (with_practice, 3, [PRUNE, PRACTISE], "practice follows the measured vines"),
        (with_quiz, 0, [PRUNE, QUIZ], "the quiz comes last"),
    ],
)
def test_the_workers_page_in_order(
    plain: Handbook, change: Change, practice_vines: int, listed: list[str], why: str
) -> None:
    assert headings(workers_page(change(plain), practice_vines, "en")) == listed, why


@pytest.mark.parametrize(
    ("change", "listed", "why"),
    [
        (as_it_is, ["The block", "Your own vines"], "sums and measuring need nothing else"),
        (
            with_chapter("trainer"),
            ["Read before the crew comes", "The block", "Your own vines"],
            "reading comes first",
        ),
        (
            with_quiz,
            ["Quizzes: what your crew knows", "The block", "Your own vines"],
            "without a quiz there are no results to collect",
        ),
    ],
)
def test_the_trainers_page(plain: Handbook, change: Change, listed: list[str], why: str) -> None:
    page = trainers_page(change(plain), "en")
    assert headings(page) == listed, why
    assert ("crew.html" in page.body) == (change is with_quiz)


def test_the_teachers_page_names_the_packages_that_can_be_made(plain: Handbook) -> None:
    without, with_one = (teachers_page(one, "en").body for one in (plain, with_quiz(plain)))
    assert "export scorm" in without
    assert "export qti" not in without, "there would be nothing to export"
    assert "export qti" in with_one
    assert "project/tidy-vine.html" in without


def test_the_teachers_page_lists_each_vine_once(plain: Handbook) -> None:
    (proof,) = plain.cases
    forms = {f"vine-{number}": form for number, form in enumerate(FORMS)}
    each = tuple(
        replace(
            proof,
            case=replace(proof.case, slug=slug, vine=replace(proof.case.vine, form=form)),
        )
        for slug, form in forms.items()
    )
    body = teachers_page(replace(plain, cases=each), "en").body
    listed = {slug: body.count(f"project/{slug}.html") for slug in forms}
    assert listed == dict.fromkeys(forms, 1), "a form to the left and to the right has one name"
