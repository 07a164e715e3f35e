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

PaperSize = Literal["a4", "letter", "a2", "a1", "ansi-c", "arch-c"]
HAND_SIZES: tuple[PaperSize, ...] = ("a4", "letter")
WALL_SIZES: tuple[PaperSize, ...] = ("a2", "a1", "ansi-c", "arch-c")
"""Sizes for posters only."""
PAPER_SIZES: tuple[PaperSize, ...] = HAND_SIZES + WALL_SIZES
_INCH_MM = 25.4
_SIZE_MM: Mapping[PaperSize, tuple[float, float]] = {
    "a4": (210.0, 297.0),
    "letter": (8.5 * _INCH_MM, 11 * _INCH_MM),
    "a2": (420.0, 594.0),
    "a1": (594.0, 841.0),
    "ansi-c": (17 * _INCH_MM, 22 * _INCH_MM),
    "arch-c": (18 * _INCH_MM, 24 * _INCH_MM),
}
"""Width and height. ISO 216:2007 for the A series; ASME Y14.1 for 17 x 22 in; 18 x 24 in is the
size that print shops in the United States call Arch C (common practice, no source)."""
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
    width_mm, height_mm = _SIZE_MM[size]
    data = {
        **paper.data,
        "title": paper.title,
        "language": paper.language,
        "sheet": {"width": width_mm, "height": height_mm, "times": _times(size)},
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


def _times(size: PaperSize) -> float:
    """How many times as large as on the papers for the hand all things on a sheet are."""
    if size in HAND_SIZES:
        return 1.0
    (width, height), (base_width, base_height) = _SIZE_MM[size], _SIZE_MM["a4"]
    return min(width / base_width, height / base_height)
