"""One input tried: what must hold of every file, however it came about."""

from __future__ import annotations

import resource
import signal
import sys
import time
import traceback
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from types import FrameType

from fuzz.ground import Ground
from fuzz.readers import Kind
from pencilwood.findings import Finding, has_errors

LONGEST_S = 5.0
FUTURE_S = 15.0
"""A vine whose every story of winters is worked out alone may take four seconds."""
MOST_BYTES = 500_000_000


@dataclass(frozen=True)
class Tried:
    """What came of one input."""

    took_s: float
    accepted: bool
    findings: int
    trouble: str
    """Empty when all is as it must be; else what is not."""
    name: str = ""
    """The first finding's name, to tell how varied a run was."""


class _TooLongError(BaseException):
    """Comes past every `except Exception` of what is tried."""


@contextmanager
def at_most(seconds: float) -> Iterator[None]:
    """Stop whatever works longer; time that the machine gives to others does not count."""

    def stop(_: int, frame: FrameType | None) -> None:
        raise _TooLongError(str(frame and frame.f_code))

    before = signal.signal(signal.SIGPROF, stop)
    signal.setitimer(signal.ITIMER_PROF, seconds)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_PROF, 0)
        signal.signal(signal.SIGPROF, before)


def peak_bytes() -> int:
    """The most memory that this process has ever held."""
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    return peak if sys.platform == "darwin" else peak * 1024


def try_file(
    kind: Kind,
    data: bytes,
    root: Path,
    on: Ground,
    language: str,
    *,
    use: bool = True,
    again: bool = True,
) -> Tried:
    """Read a file, use what was read, read it `again`, and say what does not hold."""
    path = root / kind.file
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(data)
    before = path.stat().st_mtime_ns
    start = time.process_time()
    try:
        accepted, read, used = _read_and_used(kind, root, on, language, use=use)
    except Exception:
        return Tried(time.process_time() - start, False, 0, _last_lines())
    took_s = time.process_time() - start
    found = [*read, *used]
    troubles = (
        "" if accepted or found else "neither taken nor refused",
        wrong_with(found, data, kind.file),
        _unlike(kind, root, on, language, read) if again else "",
        "" if (path.read_bytes(), path.stat().st_mtime_ns) == (data, before) else "file changed",
        "" if peak_bytes() <= MOST_BYTES else f"{peak_bytes() // 1_000_000} MB",
    )
    trouble = next((one for one in troubles if one), "")
    return Tried(took_s, accepted, len(found), trouble, found[0].name if found else "")


def _read_and_used(
    kind: Kind, root: Path, on: Ground, language: str, *, use: bool
) -> tuple[bool, list[Finding], list[Finding]]:
    """Whether a file was taken, and the findings of reading it and of using it."""
    used: Sequence[Finding] = ()
    longest_s = LONGEST_S
    try:
        with at_most(longest_s):
            read, found = kind.read(root, language, on)
        accepted = read is not None and not has_errors(found)
        if accepted and use:
            longest_s = FUTURE_S if getattr(read, "three_winters", False) else LONGEST_S
            with at_most(longest_s):
                used = kind.use(read, on, language)
    except _TooLongError as error:
        raise TimeoutError(f"took longer than {longest_s} s") from error
    return accepted, list(found), list(used)


def _last_lines() -> str:
    return " | ".join(line.strip() for line in traceback.format_exc().splitlines()[-12:])


def _unlike(kind: Kind, root: Path, on: Ground, language: str, found: list[Finding]) -> str:
    """Whether the same file read again gives other findings."""
    with at_most(LONGEST_S):
        again = kind.read(root, language, on)[1]
    return "" if list(again) == found else "other findings the second time"


def wrong_with(findings: list[Finding], data: bytes, file: str) -> str:
    """What is wrong with how findings are told; empty when nothing is."""
    rows = _rows(data)
    for one in findings:
        place = one.place
        if place.file != file:
            return f"another file: {one.render()}"
        if not 1 <= place.line <= len(rows):
            return f"no such line of {len(rows)}: {one.render()}"
        if not 1 <= place.column <= len(rows[place.line - 1]) + 1:
            return f"no such column of {len(rows[place.line - 1])}: {one.render()}"
        told = one.render()
        if not one.what or not one.name or len(told) > 2000:
            return f"empty or endless: {told[:300]}"
        if not told.isprintable():
            return f"something unseen in: {told!r}"
    return ""


def _rows(data: bytes) -> list[str]:
    """The lines as an editor shows them; bytes that are no UTF-8 count as one sign each."""
    text = data.decode("utf-8-sig", errors="surrogateescape")
    return text.replace("\r\n", "\n").replace("\r", "\n").split("\n")
