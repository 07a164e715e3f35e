"""What the front page and its three doors offer, by what a handbook holds."""

import re
from dataclasses import replace
from types import SimpleNamespace
from typing import cast

import pytest

from pencilwood.cases.case import Level
from pencilwood.pages.desk import Desk
from pencilwood.pages.doors import doors, teachers_page, trainers_page, workers_page
from pencilwood.pages.front_pages import first_vine
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.page import Page
from pencilwood.proof import CaseProof
from pencilwood.quiz.quiz_proof import QuizProof
from pencilwood.vine.forms import FORMS
from pencilwood.vine.forms.cordon import ONE_ARM_LEFT, TWO_ARM_CORDON
from pencilwood.vine.model import Growth, Side, Vine
from small_handbook import Change, with_chapter
from vines import arm, cane, vine

# ---------------------------------------------------------------- the first vine


def with_vines(handbook: Handbook, *given: tuple[str, Level, int]) -> Handbook:
    """The handbook with these vines in the place of its own: short name, level, places."""
    (proof,) = handbook.cases
    return replace(handbook, cases=tuple(_like(proof, *one) for one in given))


def _like(proof: CaseProof, slug: str, level: Level, places: int) -> CaseProof:
    case = replace(proof.case, slug=slug, level=level, vine=_with_places(places))
    return replace(proof, case=case)


def _with_places(number: int) -> Vine:
    places = [(100 * one, [cane("a", 6)]) for one in range(1, number + 1)]
    return vine(TWO_ARM_CORDON, arm(Side.LEFT, 1500, *places), arm(Side.RIGHT, 1500))


@pytest.mark.parametrize(
    ("given", "chosen", "why"),
    [
        ([("only", "hard", 9)], "only", "a handbook with one hard vine still has one to try"),
        (
            [("many", "easy", 9), ("few", "easy", 4)],
            "few",
            "fewer places take less time and fit a phone",
        ),
        (
            [("small", "middling", 2), ("large", "easy", 12)],
            "large",
            "what a beginner can do counts before what is short",
        ),
        (
            [("small", "hard", 2), ("large", "middling", 12)],
            "large",
            "without an easy vine the next level is the easiest",
        ),
        (
            [("one", "easy", 4), ("two", "easy", 4)],
            "one",
            "of two alike the first, so that the page does not change by itself",
        ),
    ],
)
def test_the_first_vine(
    plain: Handbook, given: list[tuple[str, Level, int]], chosen: str, why: str
) -> None:
    first = first_vine(with_vines(plain, *given))
    assert first is not None
    assert first.case.slug == chosen, why


@pytest.mark.parametrize(
    ("heads", "chosen", "why"),
    [
        (1, "two", "a vine of a form that the handbook hardly has is no beginning, small as it is"),
        (3, "head-0", "where most vines are of that form it is"),
    ],
)
def test_the_first_vine_is_trained_as_most_are(
    plain: Handbook, heads: int, chosen: str, why: str
) -> None:
    cordons = with_vines(plain, ("one", "easy", 9), ("two", "easy", 4)).cases
    other = replace(TWO_ARM_CORDON, growth=Growth.DOWN)
    small = with_vines(plain, *((f"head-{n}", "easy", 2) for n in range(heads))).cases
    of_other = tuple(
        replace(one, case=replace(one.case, vine=replace(one.case.vine, form=other)))
        for one in small
    )
    first = first_vine(replace(plain, cases=(*of_other, *cordons)))
    assert first is not None
    assert first.case.slug == chosen, why


def test_arms_do_not_make_another_way_of_training(plain: Handbook) -> None:
    """One arm is pruned as two are, and is the smaller vine to begin with."""
    one_arm, *others = with_vines(
        plain, ("one-arm", "easy", 4), ("two", "easy", 9), ("three", "easy", 9)
    ).cases
    vine_of_one = replace(one_arm.case.vine, form=ONE_ARM_LEFT)
    small = replace(one_arm, case=replace(one_arm.case, vine=vine_of_one))
    first = first_vine(replace(plain, cases=(*others, small)))
    assert first is not None
    assert first.case.slug == "one-arm"


# ---------------------------------------------------------------- the three doors


def with_quiz(handbook: Handbook) -> Handbook:
    words = {"en": "Words of q"}
    quiz = SimpleNamespace(slug="q", title=words, intro=words, questions=[1, 2])
    proof = cast(QuizProof, SimpleNamespace(quiz=quiz, minutes=5))
    return replace(handbook, quizzes=(proof,))


def with_practice(handbook: Handbook) -> Handbook:
    return replace(handbook, profile=replace(handbook.profile, practice_vines=3))


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
            with_chapter("trainer"),
            (
                "Vines to begin with",
                "The pruning day, targets, your own vines, the block",
                "Vines on the wall, papers, packages, shared vines",
            ),
            "the same for trainers",
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
            ["What your crew knows", "The block", "Your own vines"],
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
