"""What a package of QTI cannot carry of a quiz, found by looking at that very quiz."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from pencilwood.quiz.chance import passing
from pencilwood.quiz.made import MadeQuestion, Ordering, Pruning, Tapping
from pencilwood.quiz.quiz_proof import QuizProof
from pencilwood.units import format_percent
from pencilwood.words import say

_SMALLEST_TOLD = Fraction(1, 100_000)


@dataclass(frozen=True)
class Carried:
    """What became of one question."""

    question: MadeQuestion
    title: str
    carried: bool
    marks: tuple[int, int] = (0, 0)
    """Pieces to mark, and pieces that can be marked, where a pruning is carried as less."""

    @property
    def must_know(self) -> bool:
        """Whether it is in the package and must be right."""
        return self.carried and self.question.asked.common.must_know

    @property
    def guess(self) -> Fraction:
        """Chance of a right guess at what is in the package."""
        if isinstance(self.question.body, Pruning):
            return Fraction(1, 2 ** self.marks[1])
        return self.question.body.guess


def needed_of(proof: QuizProof, carried: Sequence[Carried]) -> tuple[int, int]:
    """Right answers needed, and of how many: the quiz's own share, rounded up."""
    scored = len(_scored(carried))
    were = len(proof.quiz.scored)
    return -(-proof.quiz.passes_needed * scored // max(1, were)), scored


def left_behind(proof: QuizProof, carried: Sequence[Carried], language: str) -> Iterator[str]:
    """Everything that the package lacks or does otherwise, in the reader's language."""
    yield from _questions(carried, language)
    quiz = proof.quiz
    needed, of = needed_of(proof, carried)
    if of != len(quiz.scored):
        facts = {"was": quiz.passes_needed, "were": len(quiz.scored)}
        yield say(language, "qti.needed", needed=needed, of=of, **facts)
    chance = _chance(needed, carried)
    told = _percent(chance, language), _percent(proof.chance_of_one_try, language)
    if told[0] != told[1]:
        yield say(language, "qti.luck", chance=told[0], was=told[1])
    for what in _ways(proof, carried, language):
        yield say(language, "qti.stays-behind", what=what)


def _questions(carried: Sequence[Carried], language: str) -> Iterator[str]:
    for one in carried:
        if not isinstance(one.question.body, Pruning):
            continue
        if one.carried:
            marked, of = one.marks
            yield say(language, "qti.lesser.prune", title=one.title, n=marked, of=of)
        else:
            yield say(language, "qti.left-out.prune", title=one.title)


def _ways(proof: QuizProof, carried: Sequence[Carried], language: str) -> Iterator[str]:
    """Ways of asking and of keeping that have no place in the standard."""
    yield say(language, "qti.modes")
    yield say(language, "qti.tries", tries=proof.quiz.tries)
    for key, has in _LOST.items():
        number = sum(one.carried and has(one.question) for one in carried)
        if number:
            yield say(language, f"qti.{key}", n=number)
    yield say(language, "qti.keeping")


_LOST: dict[str, Callable[[MadeQuestion], bool]] = {
    "order": lambda one: isinstance(one.body, Ordering),
    "tap": lambda one: isinstance(one.body, Tapping),
    "drawings": lambda one: one.picture is not None,
    "links": lambda one: bool(one.asked.common.chapter or one.asked.common.rules),
}


def _scored(carried: Sequence[Carried]) -> list[Carried]:
    return [one for one in carried if one.carried and not one.question.asked.common.must_know]


def _chance(needed: int, carried: Sequence[Carried]) -> Fraction:
    scored = [one.guess for one in _scored(carried)]
    return passing(needed, scored, [one.guess for one in carried if one.must_know])


def _percent(chance: Fraction, language: str) -> str:
    """A small chance in percent, rounded up so that it is never told too low."""
    if chance <= _SMALLEST_TOLD:
        return f"< {format_percent(_SMALLEST_TOLD * 100, 3, language)}"
    thousandths = -(-chance * 100_000 // 1)
    return format_percent(Fraction(thousandths, 1000), 3, language)
