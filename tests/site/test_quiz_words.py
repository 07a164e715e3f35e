"""What the page of a quiz says on paper, and of those who only guess."""

from dataclasses import replace
from fractions import Fraction

import pytest

from pencilwood.pages.desk import Desk
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.quiz_pages import luck_words


@pytest.mark.parametrize(
    ("site", "address"),
    [
        ("", ""),
        ("https://high-bank.example/vines/", "https://high-bank.example/vines/quizzes/q.html"),
        ("https://high-bank.example", "https://high-bank.example/quizzes/q.html"),
    ],
)
def test_a_page_knows_its_address_where_the_site_does(
    plain: Handbook, site: str, address: str
) -> None:
    book = replace(plain, profile=replace(plain.profile, site_address=site))
    assert Desk(book, "quizzes/q", "en").published_address() == address


@pytest.mark.parametrize(
    ("chance", "said"),
    [
        (Fraction(1, 10**9), "less than 0.001% pass"),
        (Fraction(1, 100_000), "guess, 0.001% pass"),
        (Fraction(11, 1_000_000), "guess, 0.002% pass"),
    ],
)
def test_a_small_chance_is_never_told_too_low(plain: Handbook, chance: Fraction, said: str) -> None:
    told = luck_words(Desk(plain, "quizzes/q", "en"), chance, 2)
    assert said in told
    assert told.endswith("with 2 tries.")
