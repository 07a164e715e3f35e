"""Troubles that end a command: no such case, a wrong one, or a system that does not let us."""

from __future__ import annotations

import errno

from pencilwood.findings import Finding
from pencilwood.words import say

_KINDS = {
    errno.ENOSPC: "no-room",
    errno.EDQUOT: "no-room",
    errno.EFBIG: "no-room",
    errno.EROFS: "read-only",
    errno.EACCES: "no-right",
    errno.EPERM: "no-right",
    errno.ENOENT: "not-there",
    errno.EEXIST: "file-in-the-way",
    errno.ENOTDIR: "file-in-the-way",
    errno.EISDIR: "is-a-folder",
    errno.ENAMETOOLONG: "name-too-long",
}


class NoSuchCaseError(Exception):
    """A case that is not there; `told` says so in the user's language."""

    def __init__(self, told: str) -> None:
        super().__init__(told)
        self.told = told


class UnusableCaseError(Exception):
    """A case whose file, or whose profile, has something wrong in it."""

    def __init__(self, findings: tuple[Finding, ...]) -> None:
        super().__init__(f"{len(findings)} findings")
        self.findings = findings


def told_of(error: OSError, language: str, where: str = "") -> str:
    """One sentence; `where` names the place if the error does not."""
    kind = _KINDS.get(error.errno or 0)
    # A copy that finds no room names the file it was made from.
    place = str(where or error.filename) if kind == "no-room" else str(error.filename or where)
    if kind is None:
        return f"{place}: {error.strerror or error}".lstrip(": ")
    return say(language, f"cli.trouble.{kind}", file=place)
