"""What a rule may look at. Only these shapes exist, so that every score is a plain sum.

A vine rule speaks of one piece of wood, of two neighbouring spurs, or of a total of the whole
vine. A cutting rule speaks of how one cut was made. Nothing else can be looked at; that is what
lets the plan be exact and lets the browser look a score up without knowing any rule.
"""

from __future__ import annotations

import inspect
import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cache
from types import ModuleType
from typing import Any, Final, Literal

from pencilwood.vine.bands import Band, Limits
from pencilwood.vine.model import Form, Piece, Side, Vine
from pencilwood.vine.passes import Pass, Stub, Tool
from pencilwood.vine.wood import Part, Parts
from pencilwood.words import LANGUAGES, say

Family = Literal["vine", "cutting"]
Shape = Literal[
    "piece", "crowding", "blank", "buds", "wounds", "tally", "order", "tool", "stub", "tie"
]

WHY: Final = "why"
PAGE_PARTS = ("checks", WHY, "instead", "limits", "source")
"""What each rule's page says, in this order; `headings` has the words for it."""


@dataclass(frozen=True)
class PieceLeft:
    """One part of a vine, what is left of it, and whether living wood is left above it."""

    parts: Parts
    number: int
    state: int
    """Buds left on a cane, 1 for older wood; 0 when it is gone."""
    living_above: bool

    @property
    def part(self) -> Part:
        """The part itself."""
        return self.parts.parts[self.number]

    @property
    def piece(self) -> Piece:
        """The measured piece that the part belongs to."""
        return self.part.piece

    @property
    def vine(self) -> Vine:
        """The vine it grows on."""
        return self.parts.vine

    def wood_above(self) -> Iterator[Part]:
        """Canes further along the same spur, cut or not."""
        return (self.parts.parts[other] for other in self.parts.above[self.number])


@dataclass(frozen=True)
class Gap:
    """The distance between two neighbouring spurs that are left (or a spur and an arm's end)."""

    gap_mm: int


@dataclass(frozen=True)
class BudTotal:
    """Buds left on the whole vine, and how many it should carry."""

    buds: int
    least: int
    most: int


@dataclass(frozen=True)
class WoundTotal:
    """Large wounds made on the whole vine this winter."""

    wounds: int


@dataclass(frozen=True)
class TallyTotal:
    """How many of something that the vine's form counts are left on the whole vine."""

    tally: str
    """Name of the form's tally; a rule looks at its own and lets the others be."""
    count: int
    wanted: int = 0
    """How many the form is to have."""


@dataclass(frozen=True)
class CutInPass:
    """A cut and the pass it was made in."""

    in_pass: Pass
    buds_left: int | None
    """Buds left by a shortening; None for wood taken off at its foot."""
    backwards: bool
    """Whether a cut of a later pass had been made already."""
    after_rough: bool = True
    """Whether the vine's form has a rough pass, after which only spurs are left to cut."""


@dataclass(frozen=True)
class ToolUse:
    """The tool a cut was made with, and the thickness of the wood."""

    thickness_mm: int
    tool: Tool


@dataclass(frozen=True)
class StubLeft:
    """How much wood a shortening leaves beyond the last bud."""

    stub: Stub


@dataclass(frozen=True)
class CaneTied:
    """A cane that should lie along the wire, and where it was tied."""

    side: Side | None
    """None when it was not tied."""
    has_room: bool
    """Whether the vine has room on that side of the wire."""
    others: int
    """Canes that were tied to that side before it."""


@dataclass(frozen=True)
class Broken:
    """A rule that is broken: which message, by how much, and the facts for the sentence."""

    message: str
    excess: int = 0
    """How far past the limit, in the unit that the rulebook prices."""
    facts: Mapping[str, int] = field(default_factory=dict)
    """Numbers for the message; a name that ends in `_mm` is shown as a length."""


Check = Callable[[Any, Limits], Iterator[Broken]]
"""A rule's one function. Its first argument is the fact class that belongs to its shape."""

FACTS_OF_SHAPE: Mapping[Shape, type] = {
    "piece": PieceLeft,
    "crowding": Gap,
    "blank": Gap,
    "buds": BudTotal,
    "wounds": WoundTotal,
    "tally": TallyTotal,
    "order": CutInPass,
    "tool": ToolUse,
    "stub": StubLeft,
    "tie": CaneTied,
}


@dataclass(frozen=True)
class Rule:
    """A rule as the rest of the program sees it, read from its module."""

    name: str
    family: Family
    shape: Shape
    title: Mapping[str, str]
    messages: Mapping[str, Mapping[str, str]]
    """Message name -> language -> sentence with `{facts}`."""
    bands: tuple[Band, ...]
    check: Check
    page: Mapping[str, Mapping[str, str]]
    """Language -> heading -> text."""

    def why(self, language: str) -> str:
        """Why it matters, as its page says."""
        return self.page[language][say(language, f"rules.heading.{WHY}")]


@dataclass(frozen=True)
class RulesOfForm:
    """What the vines of one way of training go by."""

    forms: tuple[Form, ...]
    rules: tuple[Rule, ...]
    bands: tuple[Band, ...] = ()
    """Figures of these forms alone; one that has the name of a shared figure replaces it here."""


def rules_from(*modules: ModuleType) -> tuple[Rule, ...]:
    """Read rule modules, in the order of the rules' names."""
    return tuple(sorted(map(rule_from, modules), key=lambda rule: rule.name))


@cache
def rule_from(module: ModuleType) -> Rule:
    """Read a rule module: docstring, constants and its one function."""
    first, *others = LANGUAGES
    texts = {first: module.__doc__}
    texts |= {language: getattr(module, f"PAGE_{language.upper()}", None) for language in others}
    pages = {
        language: sections(inspect.cleandoc(text), headings(language))
        for language, text in texts.items()
        if text is not None
    }
    return Rule(
        name=module.NAME,
        family=module.FAMILY,
        shape=module.SHAPE,
        title=module.TITLE,
        messages=module.MESSAGES,
        bands=module.BANDS,
        check=module.check,
        page=pages,
    )


def headings(language: str) -> tuple[str, ...]:
    """The headings of a rule's page, in order."""
    return tuple(say(language, f"rules.heading.{part}") for part in PAGE_PARTS)


def sections(text: str, expected: tuple[str, ...]) -> dict[str, str]:
    """The texts under fixed headings, in order; a heading stands alone on a line with a colon."""
    pattern = "|".join(re.escape(heading) for heading in expected)
    pieces = re.split(rf"^({pattern}):[ \t]*$", text, flags=re.MULTILINE)
    found = {
        heading: inspect.cleandoc(body)
        for heading, body in zip(pieces[1::2], pieces[2::2], strict=True)
    }
    if tuple(found) != expected:
        raise ValueError(f"a rule's page needs the headings {expected}, found {tuple(found)}")
    return found
