"""Lets one build at a time write a site.

The operating system holds the lock and takes it from a process that dies, however it dies, so a
lock file that a killed build left behind stops nobody.
"""

from __future__ import annotations

import contextlib
import errno
import os
import sys
from collections.abc import Iterator
from pathlib import Path

if sys.platform == "win32":
    import msvcrt
else:
    import fcntl

_HELD_BY_ANOTHER = (errno.EAGAIN, errno.EACCES, errno.EDEADLK)


class BusyError(Exception):
    """Another build is writing this site just now."""


@contextlib.contextmanager
def only_builder(site: Path) -> Iterator[int]:
    """Hold the site's lock, and give the open file that holds it.

    A program that is started with the open file holds the lock as well, even after its starter is
    killed. Raises BusyError when another build holds it, OSError when the lock file cannot be made.
    """
    path = site.parent / f".{site.name}.lock"
    handle = _locked(path, site)
    try:
        yield handle
    finally:
        # While we hold it; afterwards it may be the file that the next build has locked.
        with contextlib.suppress(OSError):
            path.unlink()
        os.close(handle)


def _locked(path: Path, site: Path) -> int:
    while True:
        handle = os.open(path, os.O_RDWR | os.O_CREAT, 0o666)
        try:
            _lock(handle)
            # The build before us may have taken its file away after we opened it; a lock on a
            # file that nobody can find any more keeps nobody out.
            if _is_still(path, handle):
                return handle
        except OSError as error:
            os.close(handle)
            if error.errno in _HELD_BY_ANOTHER:
                raise BusyError(str(site)) from error
            raise
        os.close(handle)


def _lock(handle: int) -> None:
    if sys.platform == "win32":
        msvcrt.locking(handle, msvcrt.LK_NBLCK, 1)
    else:
        fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)


def _is_still(path: Path, handle: int) -> bool:
    try:
        return path.stat().st_ino == os.fstat(handle).st_ino
    except FileNotFoundError:
        return False
