"""The pages that we make ourselves and their places, for links that lead there from a chapter."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import cache, partial

from pencilwood.pages.block_pages import block_page, blocks_page, sums_page
from pencilwood.pages.case_page import case_page
from pencilwood.pages.chapters.anchors import places_of
from pencilwood.pages.chapters.links import OwnPages
from pencilwood.pages.doors import teachers_page, trainers_page, workers_page
from pencilwood.pages.front_pages import home_page, vines_page
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.page import Page
from pencilwood.pages.quiz_pages import crew_page, quiz_page, quizzes_page
from pencilwood.pages.renewal_page import renewal_page, renewal_path
from pencilwood.pages.rule_pages import rule_page, rules_page
from pencilwood.pages.safety_page import safety_page
from pencilwood.pages.score_page import scores_page
from pencilwood.pages.sources_page import sources_page
from pencilwood.pages.winters_page import winters_page, winters_path
from pencilwood.pages.words_page import words_page
from pencilwood.rules import RULES

Making = Callable[[str], Page]
"""A page in the language that is asked for."""
_PRACTICE = "practice"
"""Its vines grow only when the site is made, so nothing is known of its places."""


def own_pages(handbook: Handbook, *, is_faultless: bool = True) -> OwnPages:
    """All pages of a handbook but its chapters.

    A page is made when the first link leads to a place of it, so a handbook without such links
    loses no time. With a fault anywhere not every page can be made; what a link to one lacks is
    told once that is put right.
    """
    makers = _makers(handbook)
    practice = (_PRACTICE,) if handbook.profile.practice_vines else ()

    @cache
    def places(name: str, language: str) -> frozenset[str] | None:
        makes = makers.get(name) if is_faultless else None
        return None if makes is None else places_of(makes(language))

    return OwnPages((*makers, *practice), places, is_faultless)


def _makers(handbook: Handbook) -> Mapping[str, Making]:
    return {
        **_single_pages(handbook),
        **{f"rules/{rule.name}": partial(rule_page, handbook, rule) for rule in RULES},
        **{f"blocks/{one.slug}": partial(block_page, handbook, one) for one in handbook.blocks},
        **{
            f"quizzes/{one.quiz.slug}": partial(quiz_page, handbook, one)
            for one in handbook.quizzes
        },
        **_pages_of_cases(handbook),
    }


def _single_pages(handbook: Handbook) -> Mapping[str, Making]:
    """Those that stand in no folder; what there is nothing for is not made."""
    # Whether practice vines are listed changes nothing but that one place more is known.
    listed = 1
    pages: dict[str, Making] = {
        "index": partial(home_page, handbook),
        "workers": partial(workers_page, handbook, listed),
        "trainers": partial(trainers_page, handbook),
        "teachers": partial(teachers_page, handbook),
        "vines": partial(vines_page, handbook),
        "rules": partial(rules_page, handbook),
        "scores": partial(scores_page, handbook),
        "sources": partial(sources_page, handbook),
        "sums": partial(sums_page, handbook),
    }
    if handbook.quizzes:
        pages["quizzes"] = partial(quizzes_page, handbook, listed)
        pages["crew"] = partial(crew_page, handbook)
    if handbook.notes:
        pages["safety"] = partial(safety_page, handbook)
    if handbook.reference.terms:
        pages["words"] = partial(words_page, handbook)
    if handbook.blocks:
        pages["blocks"] = partial(blocks_page, handbook)
    return pages


def _pages_of_cases(handbook: Handbook) -> Mapping[str, Making]:
    pages: dict[str, Making] = {}
    for proof in handbook.cases:
        case = proof.case
        pages[f"cases/{case.slug}"] = partial(case_page, handbook, proof)
        if case.three_winters:
            pages[winters_path(case.slug)] = partial(winters_page, handbook, proof)
        if case.renewed_arm:
            pages[renewal_path(case.slug)] = partial(renewal_page, handbook, proof)
    return pages
