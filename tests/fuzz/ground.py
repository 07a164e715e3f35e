"""What every fuzzed file stands on: the demo handbook, read and proved once."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path

from pencilwood.block.field_list import FIELDS
from pencilwood.cases.case import Profile
from pencilwood.pages.handbook import Handbook
from pencilwood.proof import CaseProof
from pencilwood.rules import RULE_BY_NAME
from pencilwood.site.handbook import open_handbook

PROJECT = Path(__file__).resolve().parent.parent.parent
FIGURES = tuple(FIELDS.values())
RULES = tuple(RULE_BY_NAME)
PICTURES = {"photos/hand.jpg": b"", "es/photos/hand.jpg": b""}
"""Beside the chapters, of which the demo has none, for links to lead to."""


@dataclass(frozen=True)
class Ground:
    """The demo handbook and what a file of it may name."""

    handbook: Handbook

    @property
    def profile(self) -> Profile:
        return self.handbook.profile

    @property
    def safety(self) -> list[str]:
        return list(self.handbook.note_by_name)

    @property
    def chapters(self) -> tuple[str, ...]:
        return tuple(sorted({one.name for one in self.handbook.chapters}))

    def case(self, slug: str = "tidy-vine") -> CaseProof:
        return self.handbook.case_by_slug[slug]


@cache
def ground() -> Ground:
    """The ground; the same for every input of a run."""
    opened = open_handbook(PROJECT)
    assert opened.handbook is not None, [one.render() for one in opened.findings]
    return Ground(replace(opened.handbook, pictures=PICTURES))
