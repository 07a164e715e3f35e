"""What the files of sources, figures and trade words hold once they have been read."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal

from pencilwood.places import Place

SourceKind = Literal["published", "common practice", "from memory"]
HowRead = Literal["read", "second hand", "not read"]


@dataclass(frozen=True)
class Title:
    """How a source is cited."""

    words: Mapping[str, str]
    """In each language."""
    as_printed: bool
    """Whether it is the same for all readers, as most titles are; others hold words of ours."""


@dataclass(frozen=True)
class Source:
    """Where something that the handbook says comes from, and how well we know that."""

    key: str
    place: Place
    title: Title
    kind: SourceKind
    read: HowRead
    url: str = ""
    note: Mapping[str, str] = field(default_factory=dict)
    """A remark in each language; empty where there is none."""


@dataclass(frozen=True)
class Amount:
    """A length in millimetres, or a plain number."""

    number: Fraction
    is_length: bool
    is_us: bool = False
    """Whether the length was published in inches or feet."""


@dataclass(frozen=True)
class Figure:
    """A published or customary figure that chapters show."""

    key: str
    place: Place
    low: Amount
    high: Amount
    """The same as `low` where the figure is one value."""
    unit: Mapping[str, str]
    """What is counted, in each language; empty for a length."""
    source: str
    name: Mapping[str, str] = field(default_factory=dict)
    """What the figure is of, in each language, where the file says it."""

    @property
    def is_range(self) -> bool:
        """Whether the figure has two ends."""
        return self.low != self.high


@dataclass(frozen=True)
class TermWords:
    """A trade word in one language."""

    word: str
    plural: str
    meaning: str
    also: tuple[str, ...] = ()
    """Other words for it, such as those of other regions."""


@dataclass(frozen=True)
class Term:
    """A trade word in every language of the handbook."""

    key: str
    place: Place
    words: Mapping[str, TermWords]
    source: str
    by_hand: bool = False
    """Whether only the writer can tell the trade word from an everyday one, as with a head."""


@dataclass(frozen=True)
class Reference:
    """All three files together."""

    sources: Mapping[str, Source] = field(default_factory=dict)
    figures: Mapping[str, Figure] = field(default_factory=dict)
    terms: Mapping[str, Term] = field(default_factory=dict)
