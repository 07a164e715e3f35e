"""What a broken rule costs, as people read it: whole sentences with this vineyard's limits."""

import re
from collections.abc import Iterator, Mapping
from dataclasses import replace
from types import MappingProxyType

import pytest

from pencilwood.pages.desk import Desk
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.page import Page
from pencilwood.pages.rule_pages import rule_page, rules_page
from pencilwood.pages.rule_prices import forms_of, in_order, price_words, rule_shown, step_words
from pencilwood.pages.score_page import scores_page
from pencilwood.rules import RULE_BY_NAME, RULES
from pencilwood.rules.rulebook import RULEBOOK
from pencilwood.site.handbook import open_handbook
from pencilwood.words import LANGUAGES, catalogue
from small_handbook import make_small

A_HOLE = re.compile(r"…|\.\.\.|[{}]")


@pytest.fixture(scope="module")
def handbook(tmp_path_factory: pytest.TempPathFactory) -> Handbook:
    opened = open_handbook(make_small(tmp_path_factory.mktemp("prices"), "tidy-vine"), "en")
    assert opened.handbook is not None, opened.findings
    return opened.handbook


def desk_with(
    handbook: Handbook, language: str = "en", limits: Mapping[str, int] = MappingProxyType({})
) -> Desk:
    """A desk of a vineyard that sets some limits of all vines itself."""
    profile = handbook.profile
    forms = {name: {**own, **limits} for name, own in profile.form_limits.items()}
    profile = replace(profile, limits={**profile.limits, **limits}, form_limits=forms)
    return Desk(replace(handbook, profile=profile), "scores", language)


def rows_of(page: Page) -> Iterator[list[str]]:
    """The cells under "When" and "Points" of all tables of prices, as they stand on the page."""
    for table in page.body.split("pw-prices")[1:]:
        body = table.partition("</thead>")[2].partition("</table>")[0]
        for row in re.findall(r"<tr>.*?</tr>", body):
            yield re.findall(r"<td[^>]*>(.*?)</td>", row)[:2]


def when(desk: Desk, rule: str) -> list[str]:
    return [text for row in rule_shown(desk, RULE_BY_NAME[rule]).prices for text in row.when]


@pytest.mark.parametrize("language", LANGUAGES)
def test_no_hole_is_left_in_any_price(handbook: Handbook, language: str) -> None:
    pages = [scores_page(handbook, language)]
    pages += [rule_page(handbook, rule, language) for rule in RULES]
    for page in pages:
        rows = list(rows_of(page))
        assert rows, page.path
        for cells in rows:
            assert not A_HOLE.search(" ".join(cells)), (page.path, cells)
            assert cells[0].endswith(".")


@pytest.mark.parametrize("language", LANGUAGES)
def test_each_rule_stands_under_its_name_once(handbook: Handbook, language: str) -> None:
    body = scores_page(handbook, language).body
    for rule in RULES:
        assert body.count(f'rules/{rule.name}.html">') == 1, rule.name
    assert 'rowspan="3"' in body


def test_a_sentence_names_the_limit_that_this_vineyard_sets(handbook: Handbook) -> None:
    desk = desk_with(handbook, limits={"blank at most": 270})
    assert "longer than 27 cm" in when(desk, "blank-on-arm")[0]
    assert "longer than 20 cm" in when(desk_with(handbook), "blank-on-arm")[0]


def test_forms_with_figures_of_their_own_say_theirs(handbook: Handbook) -> None:
    usual, head = when(desk_with(handbook), "spur-too-long")
    assert "more than 2 buds" in usual
    assert head.startswith("Head-trained vine: ")
    assert "more than 3 buds" in head


def test_the_rules_stand_in_one_order_in_every_language(handbook: Handbook) -> None:
    """Somebody who reads Spanish finds a rule where a neighbour finds it in English."""
    links = [
        re.findall(r'href="[^"]*rules/([\w-]+)\.html"', rules_page(handbook, language).body)
        for language in LANGUAGES
    ]
    assert sorted(links[0]) == sorted(rule.name for rule in RULES)
    assert links == links[:1] * len(LANGUAGES)
    at = links[0].index
    assert at("crowded-spurs") < at("wrong-cane-count") < at("upright-wood") < at("open-side")


@pytest.mark.parametrize("language", LANGUAGES)
def test_in_the_table_of_all_rules_each_says_which_vines_go_by_it(
    handbook: Handbook, language: str
) -> None:
    """A rule of high cordons alone must not read as a rule for every vine."""
    desk = desk_with(handbook, language)
    rows = dict(
        zip(
            (rule.name for rule in sorted(in_order(), key=lambda rule: rule.family == "cutting")),
            re.findall(r"<tbody>.*?</tbody>", scores_page(handbook, language).body, re.DOTALL),
            strict=False,
        )
    )
    for rule in RULES:
        assert f"rules/{rule.name}." in rows[rule.name], "each stands under the score it lowers"
        cells = re.findall(r'<td data-label="[^"]*">(.*?)</td><td>', rows[rule.name])
        for form in forms_of(desk, rule):
            assert all(form in cell.lower() for cell in cells), (rule.name, cells)
    english = [
        text
        for row in rule_shown(
            desk_with(handbook), RULE_BY_NAME["upright-wood"], among_others=True
        ).prices
        for text in row.when
    ]
    assert english == ["High cordon: A cane that stands upright on the arm is left."]
    for name in ("diseased-wood", "old-stub"):
        assert not forms_of(desk, RULE_BY_NAME[name])


def test_a_limit_of_one_is_one_bud(handbook: Handbook) -> None:
    english, spanish = (
        when(desk_with(handbook, language, {"buds on a spur at most": 1}), "spur-too-long")
        for language in ("en", "es")
    )
    assert english == ["A spur is left with more than 1 bud."]
    assert spanish == ["Se deja un pulgar con más de 1 yema."]


@pytest.mark.parametrize("language", LANGUAGES)
def test_the_words_give_the_points_that_the_score_takes(handbook: Handbook, language: str) -> None:
    """The numbers of a price, read back from its words, make its sum."""
    desk = desk_with(handbook, language)
    for (name, message), price in RULEBOOK.items():
        words = price_words(desk, RULE_BY_NAME[name], message)
        step = step_words(desk, price)
        told = [int(one) for one in re.findall(r"\d+", words.replace(step, ""))]
        # A cap of a whole score or more saves nobody a point.
        caps = [price.most] if price.each and price.most < 100 else []
        assert told == [one for one in (price.first, price.each) if one] + caps, words


def test_a_price_by_steps_names_its_unit() -> None:
    """What one step is stands in the words exactly where points are asked for each."""
    for language in LANGUAGES:
        named = {
            (name, message)
            for name, message in RULEBOOK
            if f"pages.price.{name}.{message}.each" in catalogue(language)
        }
        assert named == {key for key, price in RULEBOOK.items() if price.each}


def test_lengths_are_the_steps_of_lengths() -> None:
    """A step of more than one is millimetres, and only those are shown with their length."""
    words = catalogue("en")
    for (name, message), price in RULEBOOK.items():
        if price.each:
            shown = "{step}" in words[f"pages.price.{name}.{message}.each"]
            assert shown == (price.step > 1), name
