"""Puts a new site in the place of the old one, so that at no moment there is none.

A web server or somebody with the site on a stick reads while we write. Two renames, old away and
new in, leave a moment without a site, and a build killed in that moment leaves none at all. Linux
can exchange two names in one step, in which a reader meets either site and never nothing. Where
the system or the disk cannot do that, the two renames it is, and `put_back` mends what a build
that was killed between them left.
"""

from __future__ import annotations

import ctypes
import errno
import os
import shutil
import sys
from pathlib import Path

_HERE = -100
"""AT_FDCWD: paths are taken as they are (Linux, fcntl.h)."""
_EXCHANGE = 2
"""RENAME_EXCHANGE (Linux, renameat2(2))."""
_CANNOT = (errno.ENOSYS, errno.EINVAL, errno.EOPNOTSUPP)
"""What a kernel or a disk says that knows no exchange."""


def waiting_folder(site: Path) -> Path:
    """Where a build works beside the site; there is one, for one build at a time writes a site."""
    return site.parent / f".{site.name}.building"


def swap(site: Path) -> None:
    """Put the finished site that waits under `new` in place, then clear the old one away."""
    waiting = waiting_folder(site)
    if site.exists() and not _exchanged(waiting / "new", site):
        site.rename(waiting / "old")
    if not site.exists():
        _move_in(waiting, site)
    clear(site)


def _move_in(waiting: Path, site: Path) -> None:
    try:
        (waiting / "new").rename(site)
    except OSError:
        if (waiting / "old").exists():
            (waiting / "old").rename(site)
        raise


def put_back(site: Path) -> None:
    """Bring the last good site back that a killed build left moved away."""
    old = waiting_folder(site) / "old"
    if old.is_dir() and not site.exists():
        old.rename(site)


def clear(site: Path) -> None:
    """Take away what a build left beside the site; what cannot go stays for the next one."""
    shutil.rmtree(waiting_folder(site), ignore_errors=True)


def _exchanged(one: Path, other: Path) -> bool:
    """Whether both folders have changed names in one step; nothing is done where that cannot be."""
    if not sys.platform.startswith("linux"):
        return False
    # Found in the C library that Python runs on already; older ones lack it.
    rename = getattr(ctypes.CDLL(None, use_errno=True), "renameat2", None)
    if rename is None:
        return False
    names = os.fsencode(one), os.fsencode(other)
    if rename(_HERE, names[0], _HERE, names[1], ctypes.c_uint(_EXCHANGE)) == 0:
        return True
    number = ctypes.get_errno()
    if number in _CANNOT:
        return False
    raise OSError(number, os.strerror(number), str(other))
