"""What the questions need to know of a proved vine."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Protocol

from pencilwood.block.errors import BlockError
from pencilwood.cases.case import Case
from pencilwood.plan import Plan
from pencilwood.score.judge import Target
from pencilwood.score.sheet import Sheet
from pencilwood.vine.wood import Part, Parts, WoodLeft


class Tried(Protocol):
    """How often random prunings passed."""

    @property
    def interval(self) -> tuple[float, float]:
        """Both ends of the interval that holds the true chance."""


class ProvedVine(Protocol):
    """A case with what the proofs computed of it."""

    @property
    def case(self) -> Case:
        """The case itself."""

    @property
    def parts(self) -> Parts:
        """Its wood."""

    @property
    def sheet(self) -> Sheet:
        """Its scoring sheet."""

    @property
    def target(self) -> Target:
        """Buds that it should carry."""

    @property
    def plan(self) -> Plan:
        """Its best pruning."""

    @property
    def answer_left(self) -> WoodLeft:
        """What the trainer's answer leaves."""

    @property
    def luck(self) -> Tried:
        """How random prunings fared."""

    @property
    def facts(self) -> Mapping[str, Mapping[str, str]]:
        """Language -> placeholder -> text."""


Vines = Mapping[str, ProvedVine]
"""Every proved vine by the slug of its case."""


@dataclass
class QuestionError(Exception):
    """A question that cannot be made; its words stand under `asking.problem.<problem>`."""

    problem: str
    facts: Mapping[str, str | int]
    cause: BlockError | None = None
    """The refusal of a sum, which is told in the reader's language as the fact `told`."""

    def facts_in(self, language: str) -> Mapping[str, str | int]:
        """The facts of its words."""
        return (
            self.facts if self.cause is None else {**self.facts, "told": self.cause.told(language)}
        )


def slip(problem: str, **facts: str | int) -> QuestionError:
    """A question that cannot be made, with the facts of its words."""
    return QuestionError(problem, facts)


def position_named(vine: ProvedVine, name: str) -> str:
    """A position of the vine, by its own name or by that of a piece on it."""
    parts = vine.parts
    if name in parts.index:
        return parts.parts[parts.index[name]].position.name
    positions = [position.name for position in parts.positions]
    if name not in positions:
        raise slip("no-such-place", name=name, vine=vine.case.slug, known=", ".join(positions))
    return name


def cane_named(vine: ProvedVine, name: str | None) -> Part:
    """A cane of the vine."""
    canes = {part.name: part for part in vine.parts.parts if part.is_cane}
    if name not in canes:
        raise slip("no-such-cane", name=name or "-", vine=vine.case.slug)
    return canes[name]
