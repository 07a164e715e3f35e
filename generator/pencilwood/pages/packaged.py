"""Pages that stand alone in a package for a learning system, with no theme and no other site.

They lie in their package as they would in the handbook, so that links between them hold. A link
to a page that the package does not hold becomes plain text.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace

from markupsafe import Markup

from pencilwood.cases.credits import credit_words
from pencilwood.cases.quiz import Quiz
from pencilwood.pages.case_page import photo_file
from pencilwood.pages.desk import ASSETS, Desk
from pencilwood.pages.exercise import exercise_parts, script_json
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.page import Addresses, Page
from pencilwood.pages.policy import with_policy
from pencilwood.pages.quiz_pages import quiz_page
from pencilwood.pages.rule_pages import rule_page
from pencilwood.pages.style_sheet import STYLE_SHEET
from pencilwood.pages.wood_words import wood_table
from pencilwood.proof import CaseProof
from pencilwood.quiz.quiz_proof import QuizProof, pruned
from pencilwood.rules import RULE_BY_NAME
from pencilwood.words import catalogue
from pencilwood.words.filling import fill

EXERCISE_SCRIPT = "pencilwood.js"
QUIZ_SCRIPT = "pencilwood-quiz.js"
"""Holds the exercise too."""
JOINING_SCRIPT = "package/pencilwood-scorm.js"
"""Runs before the other and joins the page to the learning system."""
ICON = "icons/favicon.svg"
FONTS = (
    "fonts/alegreya-700.woff2",
    "fonts/atkinson-hyperlegible-400.woff2",
    "fonts/atkinson-hyperlegible-700.woff2",
    # Fonts may go anywhere, with their licence.
    "licences/alegreya.txt",
    "licences/atkinson-hyperlegible.txt",
)
_ASSETS = (*FONTS, JOINING_SCRIPT, ICON)

_NOWHERE = re.compile(r'<a\b[^>]*\bhref=""[^>]*>(.*?)</a>', re.DOTALL)


@dataclass(frozen=True)
class Packaged:
    """The pages of one package."""

    title: str
    start: str
    """Path of the page that is opened."""
    pages: dict[str, str]
    """HTML by path, the start page among them."""
    rules: int
    """How many rules have a page in it."""
    assets: tuple[str, ...]
    """Files of the program that its pages ask for, beside their style sheet."""
    pictures: Mapping[str, bytes] = field(default_factory=dict)
    """Photographs by path."""


def packaged_case(handbook: Handbook, proof: CaseProof, language: str) -> Packaged:
    """The exercise of one case and the pages of the rules that count in it."""
    rules = list(proof.rules_charged)
    part = _part_of(handbook, language, rules)
    packaged = _packaged(part, _case_page(part, proof, language), rules, EXERCISE_SCRIPT)
    slug = proof.case.slug
    photo = part.photos.get(slug)
    pictures = {} if photo is None else {f"{ASSETS}/{photo_file(slug)}": photo.data}
    return replace(packaged, pictures=pictures)


def packaged_quiz(handbook: Handbook, proof: QuizProof, language: str) -> Packaged:
    """A quiz and the pages of the rules that it names."""
    vines = [handbook.case_by_slug[slug] for slug in pruned(proof.made)]
    named = {
        *proof.covers,
        *_asked(proof.quiz),
        *(rule for one in vines for rule in one.rules_charged),
    }
    rules = sorted(named)
    part = _part_of(handbook, language, rules)
    return _packaged(part, quiz_page(part, proof, language), rules, QUIZ_SCRIPT)


def _asked(quiz: Quiz) -> Iterable[str]:
    return (rule for one in quiz.questions for rule in one.common.rules)


def _part_of(handbook: Handbook, language: str, rules: Iterable[str]) -> Handbook:
    """The handbook in one language, knowing that it holds these pages only."""
    profile = replace(handbook.profile, languages=(language,))
    holds = frozenset(f"rules/{rule}" for rule in rules)
    return replace(handbook, profile=profile, holds=holds)


def _packaged(part: Handbook, start: Page, rules: Iterable[str], script: str) -> Packaged:
    language = start.language
    addresses = Addresses(part.profile.languages)
    pages = [rule_page(part, RULE_BY_NAME[rule], language) for rule in rules]
    html = {addresses.of(page.path, language): _alone(part, page, False) for page in pages}
    first = addresses.of(start.path, language)
    html[first] = _alone(part, start, True)
    return Packaged(start.title, first, html, len(pages), (*_ASSETS, script))


def _case_page(part: Handbook, proof: CaseProof, language: str) -> Page:
    """Story, exercise, the vine in words, and cautions; the answer comes with the result."""
    case, facts = proof.case, proof.facts[language]
    desk = Desk(part, f"cases/{case.slug}", language)
    return desk.write(
        "packaged_case.html",
        desk.own(case.title),
        case=case,
        proof=proof,
        story=fill(desk.own(case.story), facts),
        photo=part.photos.get(case.slug),
        photo_file=photo_file(case.slug),
        photo_alt=fill(desk.own(case.photo.alt), facts) if case.photo else "",
        credits=credit_words(case, language),
        exercise=exercise_parts(desk, proof),
        wood=wood_table(desk, case.vine),
        notes=tuple(part.note_by_name[name] for name, _ in case.safety),
    )


def _alone(part: Handbook, page: Page, is_start: bool) -> str:
    """A whole page, from doctype to the closing tag."""
    desk = Desk(part, page.path, page.language)
    words = {
        key: text for key, text in catalogue(page.language).items() if key.startswith("scorm.page.")
    }
    html = desk.render(
        "packaged.html",
        title=page.title,
        body=Markup(_NOWHERE.sub(r"\1", page.body)),  # noqa: S704 - a template of ours made it
        style_sheet=STYLE_SHEET,
        icon=ICON,
        joining_script=JOINING_SCRIPT if is_start else "",
        words=Markup(script_json(words)),  # noqa: S704 - made safe for a script element
    )
    for mark, fragment in page.fragments.items():
        html = html.replace(mark, fragment)
    return with_policy(html)
