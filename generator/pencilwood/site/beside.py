"""Makes what stands beside the chapters ready for the site: pictures, drawings, papers.

A camera hides place, time and name in its files, so pictures are cleaned as the photographs of
cases are. Of what we cannot clean, only drawings without hidden things and papers are published.
"""

from __future__ import annotations

import re
from pathlib import Path

from pencilwood.cases.photo_file import KINDS, PhotoError, PictureKind, read_photo
from pencilwood.cases.report import Report, quoted
from pencilwood.cases.source import read_bytes, read_text
from pencilwood.places import Place
from pencilwood.site.folders import shown_name
from pencilwood.site.hints import Notes
from pencilwood.site.photos import LIMITS

LARGEST_PAPER_BYTES = 20_000_000
DRAWING = ".svg"
PAPERS = (".pdf", ".txt", ".csv")
# Scripts of any sort, what brings other files in, and photographs with all they hide.
_MORE_THAN_LINES = re.compile(
    r"""<\s*(?:\w+:)?(?:script|foreignObject|iframe|image|feImage|metadata)
    | <!ENTITY | <\?xml-stylesheet | \bon\w+\s*= | javascript: | data: | @import | export-filename
    | \bhref\s*=\s*["'](?!\#) | \burl\(\s*["']?(?!\#)""",
    re.IGNORECASE | re.VERBOSE,
)


def beside(root: Path, path: Path, notes: Notes) -> bytes | None:
    """What the site shows of a file beside a chapter; None when a finding says why nothing."""
    ending = path.suffix.lower()
    place = Place(shown_name(root, path))
    if ending in KINDS:
        return _picture(root, path, place, KINDS[ending], notes)
    if ending == DRAWING:
        return _drawing(path, place, notes)
    if ending in PAPERS:
        return _paper(path, place, notes)
    notes.warn(place, "beside-left-out")
    return None


def _picture(root: Path, path: Path, place: Place, kind: PictureKind, notes: Notes) -> bytes | None:
    try:
        return read_photo(path.parent, path.name, kind, within=root).data
    except PhotoError as error:
        notes.add(place, error.problem, file=place.file, **LIMITS)
    return None


def _drawing(path: Path, place: Place, notes: Notes) -> bytes | None:
    report = Report(notes.language)
    text = read_text(path, place.file, report)
    notes.findings.extend(report.findings())
    if text is None:
        return None
    more = _MORE_THAN_LINES.search(text)
    if more is not None:
        before = text[: more.start()].split("\n")
        at = Place(place.file, len(before), len(before[-1]) + 1)
        notes.add(at, "more-than-a-drawing", found=quoted(more[0]))
        return None
    return text.encode("utf-8")


def _paper(path: Path, place: Place, notes: Notes) -> bytes | None:
    report = Report(notes.language)
    data = read_bytes(path, place.file, report, LARGEST_PAPER_BYTES)
    notes.findings.extend(report.findings())
    return data
