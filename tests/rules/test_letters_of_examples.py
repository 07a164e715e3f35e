"""What a rule's page names by letter has its letter in the picture, or the page says it has not."""

from __future__ import annotations

import re

import pytest

from pencilwood.drawing.names.labels import letters_named
from pencilwood.pages.desk import Desk
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.rule_pages import examples_shown, rule_page
from pencilwood.rules import RULE_BY_NAME, RULES
from pencilwood.site.handbook import open_handbook
from pencilwood.vine.wood import divide
from small_handbook import make_small


@pytest.fixture(scope="module")
def handbook(tmp_path_factory: pytest.TempPathFactory) -> Handbook:
    opened = open_handbook(make_small(tmp_path_factory.mktemp("letters"), "tidy-vine"), "en")
    assert opened.handbook is not None, opened.findings
    return opened.handbook


@pytest.mark.parametrize("rule", [rule.name for rule in RULES])
def test_wood_that_the_page_names_has_its_letter_or_is_told_to_have_none(
    handbook: Handbook, rule: str
) -> None:
    desk = Desk(handbook, f"rules/{rule}", "en")
    for one in examples_shown(desk, RULE_BY_NAME[rule]):
        parts = divide(handbook.examples[rule][one.kind].vine).parts
        wood = {part.position.name + part.piece.letter for part in parts}
        told = set(re.findall(r"\w+", " ".join([one.caption, *one.cuts]))) & wood
        without = set(re.findall(r"\w+", one.no_room)) & wood
        assert told == letters_named(one.drawing) | without
        assert not letters_named(one.drawing) & without


def test_also_wood_that_came_off_has_its_letter(handbook: Handbook) -> None:
    desk = Desk(handbook, "rules/blank-on-arm", "en")
    bad, good = examples_shown(desk, RULE_BY_NAME["blank-on-arm"])
    assert "R3a" in letters_named(bad.drawing) & letters_named(good.drawing)


def test_in_a_chapter_no_list_of_cuts_calls_for_letters(handbook: Handbook) -> None:
    desk = Desk(handbook, "why-we-prune", "en")
    for one in examples_shown(desk, RULE_BY_NAME["blank-on-arm"], "own-"):
        assert letters_named(one.drawing) == set()


def test_letters_in_a_row_stand_on_the_same_side_of_their_wood(handbook: Handbook) -> None:
    desk = Desk(handbook, "rules/blank-on-arm", "en")
    for one in examples_shown(desk, RULE_BY_NAME["blank-on-arm"]):
        feet = re.findall(r'data-position="(R\d)" data-x="([\d.]+)"', one.drawing)
        foot = {name: float(x) for name, x in feet}
        letters = re.findall(r'data-letter="(R\d)a"><text [^>]*?\bx="([\d.]+)"', one.drawing)
        upright = [(name, float(x)) for name, x in letters if name != "R3"]
        assert [name for name, _ in upright] == ["R1", "R2", "R4", "R5"]
        assert all(x > foot[name] for name, x in upright)


def test_a_letter_that_a_page_shows_smaller_keeps_its_middle(handbook: Handbook) -> None:
    desk = Desk(handbook, "rules/blank-on-arm", "en")
    for one in examples_shown(desk, RULE_BY_NAME["blank-on-arm"]):
        letters = re.findall(r"data-letter=\"\w+\">(<text [^>]*>)", one.drawing)
        assert letters
        assert all('dy="0.3em"' in letter for letter in letters)


@pytest.mark.parametrize(
    ("rule", "language", "told"),
    [
        ("doubled-spur", "en", "L: left, R: right. Places are counted from the head outward."),
        ("doubled-spur", "es", "Los lugares se cuentan desde la cabeza hacia afuera."),
        ("open-side", "en", "H: the head. Places are counted clockwise"),
        ("open-side", "es", "Los lugares se cuentan en el sentido del reloj"),
    ],
)
def test_the_page_tells_how_the_places_in_its_pictures_are_counted(
    handbook: Handbook, rule: str, language: str, told: str
) -> None:
    assert rule_page(handbook, RULE_BY_NAME[rule], language).body.count(told) == 1
