"""What a safety note holds once it has been read."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from pencilwood.cases.reference import Title
from pencilwood.places import Place

Signal = Literal["danger", "warning", "caution"]
About = Literal["tools", "ladders", "you"]
Status = Literal["read", "read at second hand", "common practice, no source", "from memory"]


@dataclass(frozen=True)
class Advice:
    """One piece of advice, and how well we know it."""

    say: Mapping[str, str]
    status: Status
    source: Title | None = None
    """Who published it; none for common practice and for what is told from memory."""


@dataclass(frozen=True)
class SafetyNote:
    """A safety note that cases call for by its name."""

    name: str
    signal: Signal
    about: About
    title: Mapping[str, str]
    advice: tuple[Advice, ...]
    place: Place
