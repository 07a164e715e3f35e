"""Reads a trainer's file as text, or says why it cannot be read."""

from __future__ import annotations

import re
from pathlib import Path

from pencilwood.cases.report import Report
from pencilwood.places import Place

LARGEST_BYTES = 1_000_000
"""A case needs a few thousand bytes; more than this is not a notebook but a mistake."""

_BREAK = re.compile("\r\n|\r|\n")
# Control characters, half characters, and marks that nobody sees on the screen. Some of them
# are line ends to one program and not to another, so that line numbers would be wrong; others
# turn the order of what stands around them, or make two names look the same. The joiners of
# letters and of emoji are left alone.
UNSEEN = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u061c\u180e\u200b\u200e\u200f\u2028-\u202e"
    "\u2060-\u206f\ud800-\udfff\ufeff\ufff9-\ufffb\ufffe\uffff\U000e0000-\U000e007f]"
)


def read_text(
    path: Path, file: str, report: Report, largest_bytes: int = LARGEST_BYTES
) -> str | None:
    """The text of a UTF-8 file without its byte order mark; None when a finding says why not."""
    data = read_bytes(path, file, report, largest_bytes)
    if data is None:
        return None
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        before = data[: error.start].decode("utf-8-sig", errors="replace")
        report.add(place_after(before, file), "not-utf-8")
        return None
    unseen = first_unseen(text)
    if unseen is not None:
        place = place_after(text[: unseen.start()], file)
        report.add(place, "unseen-character", code=f"U+{ord(unseen[0]):04X}")
        return None
    return text


def first_unseen(text: str) -> re.Match[str] | None:
    """The first sign of `UNSEEN` in a text."""
    # Nearly every value of a file is plain, which is told much quicker.
    return None if text.isascii() and text.isprintable() else UNSEEN.search(text)


def place_after(before: str, file: str) -> Place:
    """The place of the character that follows this text."""
    lines = _BREAK.split(before)
    return Place(file, len(lines), len(lines[-1]) + 1)


def read_bytes(
    path: Path, file: str, report: Report, largest_bytes: int = LARGEST_BYTES
) -> bytes | None:
    """All of a file; None when a finding says why it cannot be had, or that it is too large."""
    try:
        if path.is_dir():
            report.add(Place(file), "is-a-folder")
            return None
        if path.exists() and not path.is_file():
            # A pipe or a device would be waited on for ever.
            report.add(Place(file), "unreadable-file")
            return None
        with path.open("rb") as source:
            data = source.read(largest_bytes + 1)
    except FileNotFoundError:
        report.add(Place(file), "missing-file")
    except (OSError, ValueError):
        report.add(Place(file), "unreadable-file")
    else:
        if len(data) <= largest_bytes:
            return data
        report.add(Place(file), "file-too-large", limit=largest_bytes // 1000)
    return None
