"""What SCORM 1.2 cannot carry of one exercise or quiz, told when it is exported."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from pencilwood.packages.scorm.room import ROOM, most_for_quiz, most_for_vines, sure_cuts
from pencilwood.proof import CaseProof
from pencilwood.quiz.made import Pruning, Tapping
from pencilwood.quiz.quiz_proof import QuizProof, pruned
from pencilwood.vine.wood import Parts
from pencilwood.words import say

MOST_PATTERNS = 10
"""As in `site_assets/js/lms/record.mjs`."""


def case_notes(proof: CaseProof, language: str) -> Iterator[str]:
    """What of an exercise does not reach the learning system."""
    rules = proof.rules_charged
    yield _say(language, "record", rules=len(rules))
    yield _say(language, "best")
    yield _on_room([proof.parts], 0, language)
    yield from _always(language)


def quiz_notes(
    proof: QuizProof, vines: Mapping[str, CaseProof], rule_pages: int, language: str
) -> Iterator[str]:
    """What of a quiz does not reach the learning system."""
    questions = proof.made.questions[language]
    yield _say(language, "answers", n=len(questions))
    cut = [one for one in questions if isinstance(one.body, Pruning)]
    if cut:
        yield _say(language, "pruned", n=len(cut))
    tapped = [one.body for one in questions if isinstance(one.body, Tapping)]
    unlisted = sum(len(body.right) > MOST_PATTERNS for body in tapped)
    if unlisted:
        yield _say(language, "many-right", n=unlisted, most=MOST_PATTERNS)
    if proof.quiz.must_know:
        yield _say(language, "must-know", n=len(proof.quiz.must_know))
    yield _say(language, "best")
    parts = [vines[slug].parts for slug in pruned(proof.made)]
    yield _on_room(parts, most_for_quiz(questions), language)
    chapters = {one.common.chapter for one in proof.quiz.questions} - {None}
    if chapters:
        yield _say(language, "chapters", n=len(chapters), rules=rule_pages)
    yield from _always(language)


def _on_room(vines: Sequence[Parts], besides: int, language: str) -> str:
    most = most_for_vines(vines) + besides
    if most <= ROOM:
        return _say(language, "fits", most=most, room=ROOM)
    return _say(language, "may-not-fit", room=ROOM, cuts=sure_cuts(vines, ROOM - besides))


def _always(language: str) -> Iterator[str]:
    yield _say(language, "inside")
    yield _say(language, "no-xapi")


def _say(language: str, key: str, **facts: int) -> str:
    return say(language, f"scorm.note.{key}", **facts)
