"""Sets a paper in type with Typst; nothing else in the project knows Typst.

The trainer's words reach Typst as data, never as source, so nothing in a case can be taken for
a command. Only the fonts of the pages are used, and those inside Typst where ours lack a sign; no
date is written. So the same handbook gives the same bytes on every machine and every day.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from contextlib import suppress
from dataclasses import dataclass, field
from importlib.metadata import PackageNotFoundError, version
from importlib.util import find_spec
from pathlib import Path
from typing import Literal

from pencilwood.units import UnitSystem
from pencilwood.words import say
from pencilwood.worksheets.numbers_whole import with_whole_numbers

TEMPLATES = Path(__file__).parent / "templates"
FONTS = Path(__file__).parent / "fonts"
"""The fonts of the pages, as Typst reads them (`make fonts`)."""

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


TYPESETTER, QR_MAKER = "typst", "segno"
"""The optional parts, by the names that Python knows them by."""


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


def usual_size(units: UnitSystem) -> PaperSize:
    """The paper that goes with a handbook's units."""
    return "letter" if units == "us" else "a4"


def file_name(name: str, language: str, size: PaperSize) -> str:
    """The name of a paper's file."""
    return f"{name}-{language}-{size}.pdf"


def can_make_papers(*, with_qr: bool) -> bool:
    """Whether the optional parts are installed that papers need."""
    parts = (TYPESETTER, QR_MAKER) if with_qr else (TYPESETTER,)
    return all(find_spec(part) is not None for part in parts)


def makers() -> tuple[str, ...]:
    """The versions of the optional parts: another one may set a paper in other bytes."""
    found = []
    for part in (TYPESETTER, QR_MAKER):
        with suppress(PackageNotFoundError):
            found.append(f"{part} {version(part)}")
    return tuple(found)


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
        font_paths=[str(FONTS)],
        ignore_system_fonts=True,
        format="pdf",
        sys_inputs={"data": json.dumps(with_whole_numbers(data), ensure_ascii=False)},
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
