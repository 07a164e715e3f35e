"""Everything that the pages of one handbook show."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property
from itertools import pairwise

from pencilwood.cases.blocks_file import Block
from pencilwood.cases.case import Case, Profile, RuleExample
from pencilwood.cases.chapter_head import Audience
from pencilwood.cases.photo_file import ShownPhoto
from pencilwood.cases.reference import Reference
from pencilwood.cases.safety import SafetyNote
from pencilwood.places import Place
from pencilwood.proof import CaseProof
from pencilwood.quiz.quiz_proof import QuizProof

HOME_TEXT = "home"
"""The chapter that stands on the front page; without a title the page has ours."""


@dataclass(frozen=True)
class Chapter:
    """A text in Markdown that the trainer wrote, in one language."""

    name: str
    language: str
    title: str
    markdown: str
    """The text without head and title; empty lines stand for them, so that its lines keep their
    numbers."""
    place: Place
    audience: Audience | None = None
    """Who it is written for; None for a text without a head, such as the front page's."""
    order: int = 0
    order_place: Place | None = None
    audience_place: Place | None = None


@dataclass(frozen=True)
class SitePaper:
    """A paper of the site."""

    kind: str
    """A worksheet, a key, a card and so on, as the command that prints it calls it."""
    slug: str
    """The vine that it shows; empty for papers of the whole handbook."""
    language: str
    file: str
    """Its name in the folder of papers."""
    size_bytes: int


@dataclass(frozen=True)
class Handbook:
    """A trainer's files, read and proved."""

    profile: Profile
    cases: tuple[CaseProof, ...]
    """In teaching order, the easiest first (`teaching_order`)."""
    examples: Mapping[str, Mapping[str, RuleExample]]
    """Rule -> "good" and "bad"."""
    quizzes: tuple[QuizProof, ...]
    notes: tuple[SafetyNote, ...]
    chapters: tuple[Chapter, ...]
    pictures: Mapping[str, bytes] = field(default_factory=dict)
    """Other files beside the chapters, by the path that the site gives them."""
    blocks: tuple[Block, ...] = ()
    """The trainer's blocks, in the order of their file."""
    reference: Reference = field(default_factory=Reference)
    """Sources, figures and trade words."""
    holds: frozenset[str] | None = None
    """Paths of the pages that a package holds; None for the whole handbook."""
    photos: Mapping[str, ShownPhoto] = field(default_factory=dict)
    """Photographs by the short names of their cases."""

    papers: tuple[SitePaper, ...] = ()
    """The PDF files that the site carries; none unless they were asked for."""

    @cached_property
    def case_by_slug(self) -> Mapping[str, CaseProof]:
        """Each case by its short name."""
        return {proof.case.slug: proof for proof in self.cases}

    @cached_property
    def note_by_name(self) -> Mapping[str, SafetyNote]:
        """Each safety note by its name."""
        return {note.name: note for note in self.notes}

    def following(self, case: Case) -> Case | None:
        """The next case in teaching order."""
        return self._next_by_slug.get(case.slug)

    @cached_property
    def _next_by_slug(self) -> Mapping[str, Case]:
        return {one.case.slug: after.case for one, after in pairwise(self.cases)}

    def cases_teaching(self, rule: str) -> tuple[Case, ...]:
        """The cases that nobody passes without this rule."""
        return tuple(
            proof.case
            for proof in self.cases
            if any(taught == rule for taught, _ in proof.case.teaches)
        )

    def chapters_for(self, audience: Audience, language: str) -> tuple[Chapter, ...]:
        """The chapters for somebody in one language, in their order."""
        theirs = (
            one for one in self.chapters if (one.audience, one.language) == (audience, language)
        )
        return tuple(sorted(theirs, key=lambda one: (one.order, one.name)))

    def chapter(self, name: str, language: str) -> Chapter | None:
        """One chapter, where it is written."""
        for chapter in self.chapters:
            if (chapter.name, chapter.language) == (name, language):
                return chapter
        return None
