"""The demo's quizzes: every question of them, in both languages."""

import math
import re
from fractions import Fraction

import pytest

from pencilwood.quiz.compiled import compile_quiz, version_of
from pencilwood.quiz.learners import HABITS
from pencilwood.quiz.made import Choices, MadeQuestion, Ordering, Tapping
from pencilwood.quiz.making import make_quiz
from pencilwood.quiz.minutes import SECONDS_TO_THINK, seconds_of
from pencilwood.quiz.quiz_proof import HIGHEST_CHANCE
from pencilwood.rules import RULES, rules_of
from pencilwood.vine.forms.cordon import TWO_ARM_CORDON
from pencilwood.words import knows
from quiz_demo import Demo

COURSE = ("before-the-first-day", "crew-leader", "first-week")
OTHER_FORMS = ("cane-pruned", "head-trained", "high-cordons")
"""Shorter ones, each for crews who prune vines of one form."""
KINDS = {"choose", "cane", "part", "count", "order", "safe", "sum", "prune"}


def questions(demo: Demo) -> list[tuple[str, str, MadeQuestion]]:
    return [
        (slug, language, one)
        for slug, proof in demo.quizzes.items()
        for language, made in proof.made.questions.items()
        for one in made
    ]


def test_the_course_asks_in_every_way(demo: Demo) -> None:
    assert tuple(sorted(demo.quizzes)) == tuple(sorted(COURSE + OTHER_FORMS))
    assert {one.about for _, _, one in questions(demo)} == KINDS
    assert set(SECONDS_TO_THINK) == KINDS
    assert [kind for kind in KINDS if not knows(f"quiz.about.{kind}")] == []
    for proof in demo.quizzes.values():
        assert len(proof.quiz.must_know) >= 4


def test_every_choice_says_why_and_one_is_right(demo: Demo) -> None:
    for slug, language, one in questions(demo):
        if isinstance(one.body, Choices):
            where = (slug, language, one.slug)
            assert 3 <= len(one.body.options) <= 5, where
            assert sum(option.right for option in one.body.options) == 1, where
            assert len({option.text for option in one.body.options}) == len(one.body.options), where
            assert all(len(option.why.split()) >= 3 for option in one.body.options), where


def test_why_it_is_right_does_not_agree_with_a_wrong_answer(demo: Demo) -> None:
    """It is also read below a wrong answer, where a "yes" would seem to accept that."""
    for slug, language, one in questions(demo):
        if isinstance(one.body, Choices):
            why = next(option.why for option in one.body.options if option.right)
            assert not re.match(r"(yes|sí)\b", why, re.IGNORECASE), (slug, language, one.slug)


def test_no_question_shows_a_placeholder(demo: Demo) -> None:
    for slug, language, one in questions(demo):
        shown = [one.text]
        if isinstance(one.body, Choices):
            shown += [text for option in one.body.options for text in (option.text, option.why)]
        if isinstance(one.body, Ordering):
            shown += [text for item in one.body.items for text in (item.text, item.why)]
        assert not [text for text in shown if re.search(r"[{}]", text)], (slug, language, one.slug)


def test_the_right_choice_stands_at_the_same_place_in_every_language(demo: Demo) -> None:
    for proof in demo.quizzes.values():
        places = {
            language: [one.body.right for one in made if isinstance(one.body, Choices)]
            for language, made in proof.made.questions.items()
        }
        assert places["en"] == places["es"]


def test_the_places_of_right_choices_are_evenly_used(demo: Demo) -> None:
    for proof in demo.quizzes.values():
        first_three = proof.places[:3]
        assert sum(proof.places) >= 10
        assert max(first_three) <= sum(proof.places) / 2, proof.quiz.slug
        assert min(first_three) >= (2 if proof.quiz.slug in OTHER_FORMS else 3), proof.quiz.slug


def test_steps_are_not_shown_in_their_order(demo: Demo) -> None:
    for slug, language, one in questions(demo):
        if isinstance(one.body, Ordering):
            assert one.body.order != tuple(range(len(one.body.items))), (slug, language)
            assert sorted(one.body.order) == list(range(len(one.body.items)))


def test_what_is_right_to_tap_can_be_tapped(demo: Demo) -> None:
    for slug, _, one in questions(demo):
        if isinstance(one.body, Tapping):
            names = [target.name for target in one.body.targets]
            assert set(one.body.right) < set(names), (slug, one.slug)
            assert len(one.body.right) * 3 <= len(names), (slug, one.slug)
            wrong = [t for t in one.body.targets if t.name not in one.body.right]
            assert all(target.kind in one.body.whys for target in wrong)


def test_guessing_passes_less_than_once_in_a_hundred(demo: Demo) -> None:
    for proof in demo.quizzes.values():
        assert 0 < proof.chance <= HIGHEST_CHANCE
        assert proof.chance > proof.chance_of_one_try  # all have two tries
        assert proof.chance_of_one_try <= Fraction(1, 1000)


def test_lucky_learners_fail(demo: Demo) -> None:
    for proof in demo.quizzes.values():
        for language, habits in proof.habits.items():
            assert set(habits) == {habit.name for habit in HABITS}
            passed = [name for name, one in habits.items() if one.passed]
            assert passed == [], (proof.quiz.slug, language)


def test_who_does_not_know_one_rule_is_told_which(demo: Demo) -> None:
    for proof in demo.quizzes.values():
        assert proof.covers
        for rule, one in proof.ignorant.items():
            assert rule in one.told, (proof.quiz.slug, rule)
            # Whoever knows all other rules is not sent to look at everything again.
            assert len(one.told) <= 4, (proof.quiz.slug, rule, one.told)


def test_the_course_covers_every_rule(demo: Demo) -> None:
    course = [demo.quizzes[slug] for slug in COURSE]
    covered = {rule for proof in course for rule in proof.covers}
    left_out = set.intersection(*(set(proof.leaves_out) for proof in course))
    assert left_out == set()
    assert covered >= {rule.name for rule in rules_of(TWO_ARM_CORDON)}


def test_all_quizzes_together_cover_the_rules_of_every_form(demo: Demo) -> None:
    covered = {rule for proof in demo.quizzes.values() for rule in proof.covers}
    assert covered == {rule.name for rule in RULES}


def test_the_right_choice_is_seldom_the_longest(demo: Demo) -> None:
    for proof in demo.quizzes.values():
        for longest, of in proof.longest.values():
            assert of >= 4
            assert longest * 2 <= of


def test_a_quiz_takes_a_bearable_time(demo: Demo) -> None:
    for proof in demo.quizzes.values():
        assert 5 <= proof.minutes <= 30


def test_a_quiz_takes_as_long_in_every_language(demo: Demo) -> None:
    """One quiz has one figure: the slower language's, never less than either alone."""
    for proof in demo.quizzes.values():
        alone = []
        for language, questions in proof.made.questions.items():
            told = compile_quiz(proof.made, language)["minutes"]
            assert told == proof.minutes
            alone.append(math.ceil(sum(map(seconds_of, questions)) / 60))
        assert proof.minutes == max(alone)


@pytest.mark.parametrize("slug", COURSE + OTHER_FORMS)
def test_the_same_quiz_comes_out_every_time(demo: Demo, slug: str) -> None:
    proof = demo.quizzes[slug]
    again, findings = make_quiz(proof.quiz, demo.vines, demo.profile)
    assert findings == ()
    assert again == proof.made
    assert version_of(again) == version_of(proof.made)


def test_the_browser_is_given_what_it_needs(demo: Demo) -> None:
    proof = demo.quizzes["before-the-first-day"]
    english, spanish = (compile_quiz(proof.made, language) for language in ("en", "es"))
    assert english["version"] == spanish["version"]
    assert re.fullmatch(r"[0-9a-f]{12}", str(english["version"]))
    assert english["tries"] == 2
    scored, must_know = english["scored"], english["mustKnow"]
    assert isinstance(scored, list)
    assert isinstance(must_know, list)
    asked = english["questions"]
    assert isinstance(asked, list)
    assert sorted(one["id"] for one in asked) == sorted([*scored, *must_know])
    names = {picture.name for picture in proof.made.pictures}
    assert {one["drawing"]["drawing"] for one in asked if one["drawing"]} == names
    kinds = {one["kind"] for one in asked}
    assert kinds == {"choice", "part", "order", "prune"}
