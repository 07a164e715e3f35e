"""The places of the pages that we make ourselves, for links that lead there from a chapter."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import cache, partial

from pencilwood.pages.block_pages import block_page, blocks_page
from pencilwood.pages.case_page import case_page
from pencilwood.pages.chapters.anchors import places_of
from pencilwood.pages.chapters.links import OwnPlaces
from pencilwood.pages.front_pages import vines_page
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.page import Page
from pencilwood.pages.quiz_pages import quiz_page, quizzes_page
from pencilwood.pages.rule_pages import rule_page, rules_page
from pencilwood.pages.safety_page import safety_page
from pencilwood.pages.score_page import scores_page
from pencilwood.pages.sources_page import sources_page
from pencilwood.pages.words_page import words_page
from pencilwood.rules import RULES

Making = Callable[[str], Page]
"""A page in the language that is asked for."""


def own_places(handbook: Handbook) -> OwnPlaces:
    """The places of a page by its name and language; None where no such page is ours.

    A page is made when the first link leads to a place of it, so a handbook without such links
    loses no time. The handbook must be without faults, or its pages could not be made.
    """
    makers = _makers(handbook)

    @cache
    def of(name: str, language: str) -> frozenset[str] | None:
        return places_of(makers[name](language)) if name in makers else None

    return of


def _makers(handbook: Handbook) -> Mapping[str, Making]:
    return {
        "vines": partial(vines_page, handbook),
        # Whether practice vines are listed there changes nothing but that one place more is known.
        "quizzes": partial(quizzes_page, handbook, 1),
        "rules": partial(rules_page, handbook),
        "scores": partial(scores_page, handbook),
        "safety": partial(safety_page, handbook),
        "words": partial(words_page, handbook),
        "sources": partial(sources_page, handbook),
        "blocks": partial(blocks_page, handbook),
        **{f"rules/{rule.name}": partial(rule_page, handbook, rule) for rule in RULES},
        **{f"blocks/{one.slug}": partial(block_page, handbook, one) for one in handbook.blocks},
        **{f"cases/{one.case.slug}": partial(case_page, handbook, one) for one in handbook.cases},
        **{
            f"quizzes/{one.quiz.slug}": partial(quiz_page, handbook, one)
            for one in handbook.quizzes
        },
    }
