"""The figures on a rule's page: none stands among the points without its source."""

import pytest

from pencilwood.pages.desk import Desk
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.rule_figures import figures_shown
from pencilwood.rules import RULE_BY_NAME
from pencilwood.site.handbook import open_handbook
from small_handbook import make_small


@pytest.fixture(scope="module")
def handbook(tmp_path_factory: pytest.TempPathFactory) -> Handbook:
    opened = open_handbook(make_small(tmp_path_factory.mktemp("figures"), "tidy-vine"), "en")
    assert opened.handbook is not None, opened.findings
    return opened.handbook


def listed(handbook: Handbook, rule: str, language: str = "en") -> list[tuple[str, str]]:
    desk = Desk(handbook, f"rules/{rule}", language)
    return [(figure.name, figure.value) for figure in figures_shown(desk, RULE_BY_NAME[rule])]


def test_a_figure_that_only_the_rules_own_forms_have_is_listed(handbook: Handbook) -> None:
    assert listed(handbook, "cane-far-from-head") == [
        ("distance of a cane from the head, at most", "15 cm")
    ]


def test_a_figure_of_another_rule_is_listed_too(handbook: Handbook) -> None:
    assert listed(handbook, "stub-too-long") == listed(handbook, "cut-too-close") != []


def test_a_form_with_its_own_figure_is_named_beside_it(handbook: Handbook) -> None:
    assert listed(handbook, "spur-too-long") == [
        ("buds on a spur, at most", "2"),
        ("buds on a spur, at most (head-trained vine)", "3"),
    ]


def test_a_rule_that_names_no_figure_lists_none(handbook: Handbook) -> None:
    assert listed(handbook, "diseased-wood") == []
