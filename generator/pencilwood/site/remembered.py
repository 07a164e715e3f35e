"""Remembers what was read of each case for as long as the program runs.

A preview reads a handbook again and again, and nearly all of its cases are what they were.
"""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Sequence
from pathlib import Path

from pencilwood.cases.case import Case
from pencilwood.cases.report import Report
from pencilwood.cases.source import read_bytes
from pencilwood.findings import Finding

ReadCase = tuple[Case | None, Sequence[Finding]]

_MOST = 20_000
_read: dict[Path, tuple[object, ReadCase]] = {}


def remembered(path: Path, facts: object, read: Callable[[], ReadCase]) -> ReadCase:
    """What `read` makes of a file, as long as neither the file nor the other `facts` change.

    The very same case, so that what was worked out of it is found again.
    """
    # Before it is read: what is saved in between is read again next time.
    data = read_bytes(path, path.name, Report())
    if data is None:
        return read()
    digest = hashlib.sha256(data).digest()
    held = _read.pop(path, None)
    if held is None or held[0] != (digest, facts):
        held = (digest, facts), read()
    _read[path] = held
    if len(_read) > _MOST:
        del _read[next(iter(_read))]
    return held[1]
