"""Questions as they are asked in one language, with all that is needed to tell right from wrong."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from math import factorial

from pencilwood.cases.quiz import Quiz, QuizQuestion, Shown


@dataclass(frozen=True)
class Picture:
    """A drawing that stands above questions."""

    vine: str
    """Slug of the case."""
    shown: Shown = "before"
    near: str | None = None
    """The position that is shown close up, with its neighbours; None shows the whole vine."""

    @property
    def name(self) -> str:
        """Its name on the page."""
        return "-".join([self.vine, *([self.near] if self.near else []), self.shown])


@dataclass(frozen=True)
class Option:
    """One thing to choose."""

    text: str
    why: str
    right: bool


@dataclass(frozen=True)
class Choices:
    """Choose one."""

    options: tuple[Option, ...]
    in_fixed_order: bool = False
    """Whether the options always stand in this order."""

    @property
    def guess(self) -> Fraction:
        """Chance of a right guess."""
        return Fraction(1, len(self.options))

    @property
    def right(self) -> int:
        """Where the right one stands."""
        return next(number for number, one in enumerate(self.options) if one.right)


@dataclass(frozen=True)
class WoodToTap:
    """Something on a drawing that can be tapped."""

    name: str
    label: str
    kind: str


@dataclass(frozen=True)
class Tapping:
    """Tap the drawing."""

    targets: tuple[WoodToTap, ...]
    right: tuple[str, ...]
    why: str
    whys: Mapping[str, str]

    @property
    def guess(self) -> Fraction:
        """Chance of a right guess."""
        return Fraction(len(self.right), len(self.targets))


@dataclass(frozen=True)
class Ordering:
    """Put in order."""

    items: tuple[Option, ...]
    """As they are shown."""
    order: tuple[int, ...]
    """Numbers of the items in the right order."""

    @property
    def guess(self) -> Fraction:
        """Chance of a right guess."""
        return Fraction(1, factorial(len(self.items)))


@dataclass(frozen=True)
class Pruning:
    """Prune a vine."""

    vine: str
    guess: Fraction
    """Upper end of the interval of a random pruning's chance."""
    cuts: int
    """How many cuts the plan makes, from which the time is reckoned."""


Body = Choices | Tapping | Ordering | Pruning


@dataclass(frozen=True)
class MadeQuestion:
    """A question in one language."""

    asked: QuizQuestion
    about: str
    """Its kind as the trainer wrote it, in one word."""
    text: str
    body: Body
    picture: Picture | None = None
    at: str | None = None

    @property
    def slug(self) -> str:
        """Its short name."""
        return self.asked.common.slug


@dataclass(frozen=True)
class MadeQuiz:
    """A quiz with its questions worked out in every language."""

    quiz: Quiz
    questions: Mapping[str, tuple[MadeQuestion, ...]]
    """By language, in the order of the quiz."""
    pass_mark: int
    """The score from which the pruning of a vine is right."""

    @property
    def pictures(self) -> tuple[Picture, ...]:
        """Every drawing that its page needs, once."""
        first = next(iter(self.questions.values()))
        return tuple(dict.fromkeys(one.picture for one in first if one.picture is not None))

    @property
    def rules(self) -> tuple[str, ...]:
        """Names of the rules that its questions name, in the order first met."""
        named = (rule for one in self.quiz.questions for rule in one.common.rules)
        return tuple(dict.fromkeys(named))
