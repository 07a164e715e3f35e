"""Makes every photograph that a case names ready for its page, or says why it cannot be shown."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from pathlib import Path

from pencilwood.cases.case import Case
from pencilwood.cases.photo_file import (
    LARGEST_SOURCE_BYTES,
    MOST_SOURCE_PIXELS,
    PhotoError,
    ShownPhoto,
    read_photo,
)
from pencilwood.site.hints import Notes

_MILLION = 1_000_000
LIMITS: Mapping[str, int] = {
    "most_mb": LARGEST_SOURCE_BYTES // _MILLION,
    "most_megapixels": MOST_SOURCE_PIXELS // _MILLION,
}
"""What the words of these findings name."""


def open_photos(root: Path, cases: Iterable[Case], notes: Notes) -> Mapping[str, ShownPhoto]:
    """The photographs by the short names of their cases."""
    found: dict[str, ShownPhoto] = {}
    for case in cases:
        if case.photo is None:
            continue
        folder = (root / case.place.file).parent
        try:
            # What came from others is read in its own folder only.
            within = folder if case.shared_in else root
            found[case.slug] = read_photo(folder, case.photo.file, within=within)
        except PhotoError as error:
            file = (folder / case.photo.file).relative_to(root).as_posix()
            notes.add(case.photo.place, error.problem, file=file, **LIMITS)
    return found
