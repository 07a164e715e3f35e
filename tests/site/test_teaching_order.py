"""Vines are taught from the easiest on, and every list of them goes by that one order."""

import re
from dataclasses import replace

import pytest

from pencilwood.cases.case import Case, Level
from pencilwood.pages.case_page import case_page
from pencilwood.pages.doors import teachers_page, workers_page
from pencilwood.pages.front_pages import first_vine, home_page, vines_page
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.page import Page
from pencilwood.pages.teaching_order import in_teaching_order
from pencilwood.site.handbook import open_handbook
from pencilwood.vine.forms.cordon import ONE_ARM_LEFT, TWO_ARM_CORDON
from pencilwood.vine.model import Form, Growth, Side
from small_handbook import CASES, make_small
from vines import arm, cane, vine

HANGING = replace(TWO_ARM_CORDON, growth=Growth.DOWN)
Given = tuple[str, Level, int, Form]


def like(case: Case, slug: str, level: Level, places: int, form: Form) -> Case:
    spurs = [(100 * one, [cane("a", 6)]) for one in range(1, places + 1)]
    wood = vine(TWO_ARM_CORDON, arm(Side.LEFT, 1500, *spurs), arm(Side.RIGHT, 1500))
    return replace(case, slug=slug, level=level, vine=replace(wood, form=form))


def easy(slug: str, places: int, form: Form = TWO_ARM_CORDON) -> Given:
    return slug, "easy", places, form


@pytest.mark.parametrize(
    ("given", "expected", "why"),
    [
        ([], "", "no vine makes no list"),
        (
            [("only", "hard", 9, TWO_ARM_CORDON)],
            "only",
            "a handbook with one hard vine still has one to try",
        ),
        (
            [easy("many", 9), easy("few", 4)],
            "few many",
            "fewer places take less time and fit a phone",
        ),
        (
            [
                ("a", "hard", 2, TWO_ARM_CORDON),
                ("b", "middling", 3, TWO_ARM_CORDON),
                easy("c", 12),
            ],
            "c b a",
            "what a beginner can do counts before what is short",
        ),
        (
            [("small", "hard", 2, TWO_ARM_CORDON), ("large", "middling", 12, TWO_ARM_CORDON)],
            "large small",
            "without an easy vine the next level is the easiest",
        ),
        (
            [easy("two", 4), easy("one", 4)],
            "one two",
            "of two alike the names decide, so that no list changes by itself",
        ),
        (
            [easy("a-head", 2, HANGING), easy("big", 9), easy("small", 4)],
            "small big a-head",
            "a vine of a form that the handbook hardly has is no beginning, small as it is",
        ),
        (
            [*(easy(f"h{n}", 9, HANGING) for n in range(3)), easy("a", 4), easy("b", 2)],
            "h0 h1 h2 b a",
            "where most vines are of that form they go first",
        ),
        (
            [
                easy("a", 4),
                easy("b", 9, HANGING),
                ("c", "hard", 4, HANGING),
                ("d", "hard", 2, HANGING),
            ],
            "b a d c",
            "the vines of all levels tell which form the reader will prune",
        ),
        (
            [easy("b", 9), easy("c", 9), easy("one-arm", 4, ONE_ARM_LEFT)],
            "one-arm b c",
            "one arm is pruned as two are, and is the smaller vine to begin with",
        ),
    ],
)
def test_the_order(plain: Handbook, given: list[Given], expected: str, why: str) -> None:
    (proof,) = plain.cases
    cases = [like(proof.case, *one) for one in given]
    assert " ".join(case.slug for case in in_teaching_order(cases)) == expected, why
    turned = in_teaching_order(cases[::-1])
    assert " ".join(case.slug for case in turned) == expected, "it hangs on the vines alone"


@pytest.fixture(scope="module")
def handbook(tmp_path_factory: pytest.TempPathFactory) -> Handbook:
    """Easy vines whose file names, from A to Z, are the other way round."""
    root = make_small(tmp_path_factory.mktemp("order") / "handbook", *reversed(IN_ORDER))
    for path in (root / CASES).iterdir():
        easier = re.sub(r"(?m)^level: \w+", "level: easy", path.read_text("utf-8"))
        path.write_text(easier, "utf-8")
    found = open_handbook(root).handbook
    assert found is not None
    return found


IN_ORDER = ["weak-vine", "tidy-vine", "bull-wood", "around-the-head"]
"""Three cordons, the smallest first, and a head, of which this handbook has only one."""


def listed(page: Page) -> list[str]:
    """The vines that a page leads to, each once, in their order on the page."""
    link = re.compile(r'href="(?:\.\./)*(?:cases/|project/)?([a-z-]+?)\.html"')
    return [one for one in dict.fromkeys(link.findall(page.opening + page.body)) if one in IN_ORDER]


def test_vines_are_kept_and_listed_in_this_order(handbook: Handbook) -> None:
    assert sorted(IN_ORDER, reverse=True) == IN_ORDER, "else file names would do as well"
    assert [one.case.slug for one in handbook.cases] == IN_ORDER
    assert listed(vines_page(handbook, "en")) == IN_ORDER
    assert listed(workers_page(handbook, 0, "en")) == IN_ORDER


def test_the_front_page_begins_with_the_first_of_them(handbook: Handbook) -> None:
    first = first_vine(handbook)
    assert first is not None
    assert first.case.slug == IN_ORDER[0]
    assert listed(home_page(handbook, "en"))[:1] == IN_ORDER[:1]


def test_each_vine_leads_to_the_next(handbook: Handbook) -> None:
    for proof, wanted in zip(handbook.cases, [*IN_ORDER[1:], None], strict=True):
        page = case_page(handbook, proof, "en")
        onward = re.findall(r'class="pw-go" href="([a-z-]+)\.html"', page.body)
        assert onward == ([] if wanted is None else [wanted])


def test_teachers_find_them_so_under_each_form(handbook: Handbook) -> None:
    cordons = [one for one in listed(teachers_page(handbook, "en")) if one != "around-the-head"]
    assert cordons == IN_ORDER[:3]
