"""How the measures of one form are read, checked and written; each form has one of these."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from pencilwood.cases.drafts import PositionDraft
from pencilwood.cases.fields import Row, Table
from pencilwood.cases.report import Report
from pencilwood.vine.model import Form, Position, Side, Vine


@dataclass(frozen=True)
class FormReading:
    """A form's own part of reading a `vine:` block."""

    names: tuple[str, ...]
    """What `form:` may say."""
    table: Table
    """The keys under `vine:`; `form`, `trunk thickness` and `positions` are always among them."""
    form: Callable[[Row, Report], Form | None]
    """The form these measures belong to; else a finding."""
    check: Callable[[Row, Sequence[PositionDraft], Report], None]
    """Notes a frame that cannot stand and positions out of their order."""
    thickness_mm: Callable[[Row, Side], int | None]
    """How thick the wood is that the pieces of this side grow from, if that could be read."""
    vine: Callable[[Row, Form, Sequence[Position]], Vine]
    """The vine of a sound block."""
    frame_lines: Callable[[Vine], Iterator[str]]
    """The lines between `form:` and `positions:` when a vine is written to a file."""
