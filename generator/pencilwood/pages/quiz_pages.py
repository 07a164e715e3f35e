"""The quizzes: the list of them, and one page each that the browser brings to life."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from pencilwood.drawing import Paper, WoodShown, draw_vine
from pencilwood.drawing.describe import describe_vine
from pencilwood.drawing.scene.stages import Stages
from pencilwood.drawing.views.close_up import window_on_place
from pencilwood.pages.desk import Desk
from pencilwood.pages.exercise import exercise_parts, script_json
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.page import Page
from pencilwood.pages.quiz_pictures import quiz_pictures
from pencilwood.pages.sign import sign
from pencilwood.quiz.compiled import compile_quiz, version_of
from pencilwood.quiz.made import Picture
from pencilwood.quiz.pictures import wood_shown
from pencilwood.quiz.quiz_proof import QuizProof, pruned
from pencilwood.rules import RULE_BY_NAME
from pencilwood.units import format_percent
from pencilwood.words import catalogue

_SMALLEST_TOLD = Fraction(1, 100_000)


def quizzes_page(handbook: Handbook, practice_vines: int, language: str) -> Page:
    """The list of quizzes, with the ways to practice and to the trainer's crew list."""
    desk = Desk(handbook, "quizzes", language)
    return desk.write(
        "quizzes.html",
        desk.say("quizzes"),
        menu_title=desk.say("quizzes"),
        quizzes=handbook.quizzes,
        pictures=quiz_pictures(desk),
        signs={"practice": sign(desk, "hand-shears"), "crew": sign(desk, "list")},
        practice_vines=practice_vines,
    )


def crew_page(handbook: Handbook, language: str) -> Page:
    """Where a trainer gathers completion slips."""
    desk = Desk(handbook, "crew", language)
    data = {
        "language": language,
        "languages": list(handbook.profile.languages),
        "quizzes": [_for_slips(handbook, proof, language) for proof in handbook.quizzes],
        "strings": strings_of(desk, "quiz."),
    }
    return desk.write("crew.html", desk.say("crew"), data=script_json(data))


def _for_slips(handbook: Handbook, proof: QuizProof, language: str) -> dict[str, object]:
    """What a slip of a quiz may say: its version, and its topics in each language."""
    return {
        "quiz": proof.quiz.slug,
        "title": proof.quiz.title[language],
        "version": version_of(proof.made),
        "topics": {one: _topics(handbook, proof, one) for one in handbook.profile.languages},
    }


def _topics(handbook: Handbook, proof: QuizProof, language: str) -> list[str]:
    """Titles of the chapters that a quiz draws on; without chapters, of its rules."""
    names = (one.common.chapter for one in proof.quiz.questions)
    chapters = [handbook.chapter(name, language) for name in names if name is not None]
    titles = dict.fromkeys(chapter.title for chapter in chapters if chapter is not None)
    rules = (RULE_BY_NAME[name].title[language] for name in proof.made.rules)
    return list(titles or dict.fromkeys(rules))


def quiz_page(handbook: Handbook, proof: QuizProof, language: str) -> Page:
    """One quiz: its questions for the browser, the drawings above them, and its proof."""
    desk = Desk(handbook, f"quizzes/{proof.quiz.slug}", language)
    pruning = [handbook.case_by_slug[slug] for slug in pruned(proof.made)]
    return desk.write(
        "quiz.html",
        desk.own(proof.quiz.title),
        description=desk.own(proof.quiz.intro),
        quiz=proof.quiz,
        proof=proof,
        data=script_json(quiz_data(desk, proof)),
        pictures=[(one.name, _drawing(desk, one)) for one in proof.made.pictures],
        exercises=[exercise_parts(desk, one) for one in pruning],
        luck=luck_words(desk, proof.chance, proof.quiz.tries),
        address=desk.published_address(),
        covers=tuple(RULE_BY_NAME[name] for name in proof.covers),
    )


def quiz_data(desk: Desk, proof: QuizProof) -> dict[str, object]:
    """What the browser reads: the quiz, where its links lead, and the words around it."""
    chapters = (one.common.chapter for one in proof.quiz.questions)
    return {
        **compile_quiz(proof.made, desk.language, _boxes(desk, proof)),
        "links": {
            "rules": rule_links(desk, proof.covers),
            "chapters": _chapter_links(desk, (name for name in chapters if name is not None)),
        },
        "strings": strings_of(desk, "quiz."),
    }


def _boxes(desk: Desk, proof: QuizProof) -> dict[str, list[int]]:
    """The viewBox of each close-up, by the name of its picture."""
    found = {}
    for one in proof.made.questions[desk.language]:
        if one.picture is not None and one.picture.near is not None:
            vine = desk.handbook.case_by_slug[one.picture.vine]
            box = window_on_place(vine.parts, one.picture.near).box
            found[one.picture.name] = [round(side) for side in box]
    return found


def rule_links(desk: Desk, rules: Iterable[str]) -> dict[str, dict[str, str]]:
    """Title and address of rules' pages, by name."""
    return {
        name: {
            "title": RULE_BY_NAME[name].title[desk.language],
            "href": desk.href(f"rules/{name}"),
        }
        for name in rules
    }


def _chapter_links(desk: Desk, names: Iterable[str]) -> dict[str, dict[str, str]]:
    found = {}
    for name in names:
        chapter = desk.handbook.chapter(name, desk.language)
        if chapter is not None:
            found[name] = {"title": chapter.title, "href": desk.href(name)}
    return found


def strings_of(desk: Desk, *prefixes: str) -> dict[str, str]:
    """Every sentence of the catalogue whose key begins with one of the prefixes."""
    return {key: text for key, text in catalogue(desk.language).items() if key.startswith(prefixes)}


def _drawing(desk: Desk, picture: Picture) -> str:
    vine = desk.handbook.case_by_slug[picture.vine]
    parts, left = wood_shown(picture, vine)
    shown = WoodShown(parts, Stages.leaving(left), frame_targets=picture.near is None)
    paper = Paper(
        f"q-{picture.name}",
        desk.language,
        title=desk.own(vine.case.title),
        description=describe_vine(parts, left, desk.language, desk.profile.units),
        units=desk.profile.units,
    )
    return draw_vine(shown, paper)


def luck_words(desk: Desk, chance: Fraction, tries: int) -> str:
    """How many pass by guessing, in percent, rounded up so that it is never told too low."""
    below = chance < _SMALLEST_TOLD
    thousandths = 1 if below else -(-chance * 100_000 // 1)
    told = format_percent(Fraction(thousandths, 1000), 3, desk.language)
    key = "quiz.chance.below" if below else "quiz.chance"
    return desk.say(key, chance=told, tries=tries)
