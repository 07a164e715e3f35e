"""Says in the user's words why the system would not let us read or write."""

from __future__ import annotations

import errno

from pencilwood.words import say

_KINDS = {
    errno.ENOSPC: "no-room",
    errno.EDQUOT: "no-room",
    errno.EFBIG: "no-room",
    errno.EROFS: "read-only",
    errno.EACCES: "no-right",
    errno.EPERM: "no-right",
}


def told_of(error: OSError, language: str, where: str = "") -> str:
    """One sentence; `where` names the place if the error does not."""
    kind = _KINDS.get(error.errno or 0)
    # A copy that finds no room names the file it was made from.
    place = str(where or error.filename) if kind == "no-room" else str(error.filename or where)
    if kind is None:
        return f"{place}: {error.strerror or error}".lstrip(": ")
    return say(language, f"cli.trouble.{kind}", file=place)
