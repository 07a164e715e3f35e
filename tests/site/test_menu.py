"""The menu: its groups, what it marks, and where each page belongs."""

import pytest

from pencilwood.pages.handbook import Handbook
from pencilwood.pages.menu import menu_of, section_of
from pencilwood.pages.page import Page
from small_handbook import with_chapter


def listed(*paths: str) -> list[Page]:
    return [Page(path, "en", path, menu_title=path.title()) for path in paths]


@pytest.mark.parametrize(
    ("paths", "menu", "why"),
    [
        ((), {}, "no page, no group"),
        (("index",), {}, "the home page has a link of its own"),
        (("index", "rules"), {"look-up": ["rules"]}, "a group without pages is left out"),
        (
            ("sources", "scores", "rules"),
            {"look-up": ["rules", "scores", "sources"]},
            "the order is the menu's, not that of the pages",
        ),
        (
            ("workers", "warm-up", "vines"),
            {"learn": ["workers", "warm-up"], "practise": ["vines"]},
            "a page that no group names joins the first",
        ),
        (("warm-up",), {"learn": ["warm-up"]}, "also when it is all that is in it"),
    ],
)
def test_the_menu_groups_its_pages(
    plain: Handbook, paths: tuple[str, ...], menu: dict[str, list[str]], why: str
) -> None:
    made = menu_of(listed(*paths), plain, Page("index", "en", "Home"))
    assert {
        group.name: [one.address.removesuffix(".html") for one in group.entries] for group in made
    } == menu, why
    assert all(group.title for group in made)


@pytest.mark.parametrize(
    ("path", "section", "why"),
    [
        ("cases/tidy-vine", "vines", "a vine is one of the vines"),
        ("winters/four-spurs", "vines", "so are its winters"),
        ("rules/old-stub", "rules", "a rule is one of the rules"),
        ("quizzes/first", "quizzes", "a quiz is one of the quizzes"),
        ("blocks/hill", "blocks", "a block is one of the blocks"),
        ("crew", "trainers", "the crew's results are a trainer's"),
        ("x", "workers", "a chapter belongs to those for whom it is written"),
        ("rules", "", "a list stands for itself"),
        ("index", "", "so does the front page"),
        ("strange/page", "", "a folder that nobody lists has no list"),
    ],
)
def test_the_section_of_a_page(plain: Handbook, path: str, section: str, why: str) -> None:
    handbook = with_chapter("worker")(plain)
    assert section_of(Page(path, "en", path), handbook) == section, why


@pytest.mark.parametrize(
    ("path", "marked", "why"),
    [
        ("vines", {"vines": "page"}, "the page that is read"),
        ("cases/tidy-vine", {"vines": "true"}, "the list that it is part of"),
        ("index", {}, "nothing, where the page is not in the menu"),
    ],
)
def test_the_menu_marks_where_the_reader_is(
    plain: Handbook, path: str, marked: dict[str, str], why: str
) -> None:
    made = menu_of(listed("workers", "vines", "rules"), plain, Page(path, "en", path))
    found = {
        entry.address.removesuffix(".html"): entry.current
        for group in made
        for entry in group.entries
        if entry.current
    }
    assert found == marked, why


def test_the_menu_of_another_language_leads_into_its_folder(plain: Handbook) -> None:
    page = Page("vines", "es", "Las cepas", menu_title="Las cepas")
    ((group,),) = [menu_of([page], plain, page)]
    assert [(one.title, one.address) for one in group.entries] == [("Las cepas", "es/vines.html")]
    assert group.title == "Practicar"
