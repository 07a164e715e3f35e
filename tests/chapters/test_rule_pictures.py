"""The pictures of a rule: letters where a text names wood, and one picture for each view."""

from dataclasses import replace

import pytest

from chapter_files import completed
from pencilwood.pages.desk import Desk
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.rule_pages import examples_shown
from pencilwood.rules import RULE_BY_NAME


@pytest.mark.parametrize(
    ("caption", "with_cuts", "has_letters"),
    [
        # The cuts listed below the picture name wood by its letter.
        ("Two spurs stand side by side.", True, True),
        # Nobody names any; R2 alone is a place.
        ("Two spurs stand side by side.", False, False),
        ("R2 and R3 stand side by side.", False, False),
        ("R2a and R3a stand side by side.", False, True),
    ],
)
def test_letters_stand_where_a_text_beside_them_names_wood(
    handbook: Handbook, caption: str, with_cuts: bool, has_letters: bool
) -> None:
    example = handbook.examples["crowded-spurs"]["bad"]
    cuts = example.cuts if with_cuts else ()
    example = replace(example, cuts=cuts, caption={"en": caption, "es": caption})
    own = replace(handbook, examples={"crowded-spurs": {"bad": example}})
    desk = Desk(own, "rules/crowded-spurs", "en")
    (shown,) = examples_shown(desk, RULE_BY_NAME["crowded-spurs"])
    assert ("pw-letter" in shown.drawing) is has_letters


@pytest.mark.parametrize("rule", ["crowded-spurs", "open-side", "spur-above-cane"])
def test_no_letters_stand_in_a_chapter_which_lists_no_cuts(handbook: Handbook, rule: str) -> None:
    html = completed(handbook, f'{{{{ right_and_wrong("{rule}") }}}}')
    assert "pw-place-name" in html
    assert "pw-letter" not in html


@pytest.mark.parametrize(
    ("call", "views"),
    [
        # A good and a bad vine of arms; the same of a head, each from the row and from above.
        ('right_and_wrong("crowded-spurs")', 2),
        ('right_and_wrong("open-side")', 4),
        ('draw("tidy-vine", state="answer")', 1),
    ],
)
def test_each_view_is_a_picture_of_its_own(handbook: Handbook, call: str, views: int) -> None:
    html = completed(handbook, f"{{{{ {call} }}}}")
    assert html.count("<svg") == views
    assert html.count("Seen from the row") == html.count("pw-view-words") / 2


def test_a_rule_without_examples_has_no_pictures(handbook: Handbook) -> None:
    own = replace(handbook, examples={})
    desk = Desk(own, "rules/crowded-spurs", "en")
    assert list(examples_shown(desk, RULE_BY_NAME["crowded-spurs"])) == []
