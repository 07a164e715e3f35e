"""A quiz as a package: the items that the standard can carry, their test, and the manifest."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

from pencilwood.cases.case import Profile
from pencilwood.packages.package import Package, zipped
from pencilwood.packages.qti.assessment import ASSESSMENT_FILE, Assessment, assessment
from pencilwood.packages.qti.feedback import Saying
from pencilwood.packages.qti.hotspots import name_part
from pencilwood.packages.qti.items import Asked, Item, choice, item, order
from pencilwood.packages.qti.left_out import Carried, left_behind, needed_of
from pencilwood.packages.qti.manifest import MANIFEST_FILE, manifest
from pencilwood.packages.qti.markup import identifier
from pencilwood.packages.qti.must_go import choices, pieces_to_mark, which_must_go
from pencilwood.packages.qti.pictures import Drawn, draw
from pencilwood.quiz.made import Choices, MadeQuestion, Ordering, Picture, Pruning, Tapping
from pencilwood.quiz.quiz_proof import QuizProof
from pencilwood.quiz.vines import Vines
from pencilwood.words import say


@dataclass(frozen=True)
class QuizPacker:
    """Makes the package of one quiz in one language."""

    proof: QuizProof
    vines: Vines
    profile: Profile
    saying: Saying

    @property
    def language(self) -> str:
        """The language of the package."""
        return self.saying.language

    @property
    def questions(self) -> tuple[MadeQuestion, ...]:
        """The questions of the quiz."""
        return self.proof.made.questions[self.language]

    @cached_property
    def items(self) -> tuple[Item, ...]:
        """What the standard can carry, in the quiz's order."""
        return tuple(made for one in self.questions if (made := self._item(one)) is not None)

    @cached_property
    def carried(self) -> tuple[Carried, ...]:
        """What became of each question."""
        names = {one.name for one in self.items}
        return tuple(self._carried(one, names) for one in self.questions)

    @cached_property
    def to_mark(self) -> Mapping[str, tuple[str, ...]]:
        """By vine to prune, the pieces of it that can be asked for."""
        pruned = (one.body.vine for one in self.questions if isinstance(one.body, Pruning))
        return {slug: pieces_to_mark(self.vines[slug], self.profile) for slug in pruned}

    def package(self) -> Package | None:
        """The package, or None where none of the questions can be carried."""
        if not self.items:
            return None
        files = dict(self._files())
        notes = left_behind(self.proof, self.carried, self.language)
        slug = self.proof.quiz.slug
        return Package(f"quiz-{slug}-{self.language}-qti3.zip", zipped(files), tuple(notes))

    def _files(self) -> Iterator[tuple[str, bytes]]:
        test = self._assessment()
        yield MANIFEST_FILE, manifest(test.identifier, self.items)
        yield ASSESSMENT_FILE, assessment(test)
        for one in self.items:
            yield one.file, one.content
        for one in self.items:
            if one.picture is not None:
                yield one.picture.file, one.picture.content

    def _assessment(self) -> Assessment:
        quiz, language = self.proof.quiz, self.language
        needed, of = needed_of(self.proof, self.carried)
        must_know = sum(one.must_know for one in self.carried)
        told = [
            quiz.intro[language],
            say(language, "qti.intro.needed", needed=needed, of=of),
            *([say(language, "qti.intro.must-know", n=must_know)] if must_know else []),
            say(language, "pages.quiz.no-proof-of-skill"),
        ]
        return Assessment(
            identifier("pencilwood", quiz.slug, language),
            quiz.title[language],
            needed,
            told,
            say(language, "qti.passed"),
            say(language, "qti.failed"),
            self.items,
        )

    def _item(self, one: MadeQuestion) -> Item | None:
        drawn = self._drawn(one)
        asked = self._asked(one, drawn)
        if asked is None:
            return None
        picture = None if drawn is None else drawn.file
        return item(one, self.proof.quiz.slug, self.language, asked, picture)

    def _asked(self, one: MadeQuestion, drawn: Drawn | None) -> Asked | None:
        body, saying = one.body, self.saying
        if isinstance(body, Choices):
            return choice(one, body, saying, None if drawn is None else drawn.file)
        if isinstance(body, Ordering):
            return order(one, body, saying)
        if drawn is None:
            return None
        if isinstance(body, Tapping):
            return name_part(one, body, saying, drawn)
        vine, gone = self.vines[body.vine], self.to_mark[body.vine]
        return which_must_go(one, vine, gone, self.profile, saying, drawn)

    def _drawn(self, one: MadeQuestion) -> Drawn | None:
        """The drawing of a question; a vine to prune has one where some of it can be asked."""
        picture = one.picture
        if isinstance(one.body, Pruning):
            picture = Picture(one.body.vine) if self.to_mark[one.body.vine] else None
        if picture is None:
            return None
        vine = self.vines[picture.vine]
        drawn = draw(picture, vine, self.profile, self.language)
        if isinstance(one.body, Tapping) and not drawn.shows_all_wood():
            # What cannot be seen cannot be tapped; a page has a button for the whole drawing.
            return draw(picture, vine, self.profile, self.language, from_afar=True)
        return drawn

    def _carried(self, one: MadeQuestion, names: set[str]) -> Carried:
        if not isinstance(one.body, Pruning):
            return Carried(one, one.text, one.slug in names)
        vine, gone = self.vines[one.body.vine], self.to_mark[one.body.vine]
        marks = (len(gone), len(choices(vine, gone)))
        return Carried(one, vine.case.title[self.language], one.slug in names, marks)


def quiz_package(
    proof: QuizProof,
    vines: Vines,
    profile: Profile,
    chapters: Mapping[str, str],
    language: str,
) -> Package | None:
    """A quiz as a package of QTI 3.0; `chapters` gives the chapters' titles by short name."""
    return QuizPacker(proof, vines, profile, Saying(language, chapters)).package()
