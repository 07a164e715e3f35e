"""Sets a paper in type with Typst; nothing else in the project knows Typst.

The trainer's words reach Typst as data, never as source, so nothing in a case can be taken for
a command. Only the fonts inside Typst are used, and no date is written: the same handbook gives
the same bytes on every machine and every day.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Literal

from pencilwood.words import say

TEMPLATES = Path(__file__).parent / "templates"

PaperSize = Literal["a4", "letter"]
PAPER_SIZES: tuple[PaperSize, ...] = ("a4", "letter")
_TYPST_NAME = {"a4": "a4", "letter": "us-letter"}
_STANDARD: Literal["ua-1"] = "ua-1"
"""PDF/UA-1: tagged, with a title, a language and words for every drawing."""


class NoTypesetterError(Exception):
    """Typst, which is an optional part, is not installed."""


@dataclass(frozen=True)
class Paper:
    """One paper before it is set in type."""

    name: str
    """Name of the file without its ending."""
    template: str
    language: str
    title: str
    data: Mapping[str, object] = field(default_factory=dict)


def typeset(paper: Paper, size: PaperSize, footer: str = "") -> bytes:
    """The paper as a PDF; raises NoTypesetterError."""
    try:
        import typst
    except ImportError:
        raise NoTypesetterError from None
    data = {
        **paper.data,
        "title": paper.title,
        "language": paper.language,
        "paper": _TYPST_NAME[size],
        "footer": footer,
        "page": say(paper.language, "print.page"),
    }
    made = typst.compile(
        str(TEMPLATES / f"{paper.template}.typ"),
        root=str(TEMPLATES),
        font_paths=[],
        ignore_system_fonts=True,
        format="pdf",
        sys_inputs={"data": json.dumps(data, ensure_ascii=False)},
        pdf_standards=[_STANDARD],
        timestamp=0,
    )
    if not isinstance(made, bytes):
        raise TypeError("Typst gave no single PDF")
    return made
