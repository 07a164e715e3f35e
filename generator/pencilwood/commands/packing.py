"""What `pencilwood build --zip FILE` does beside building."""

from __future__ import annotations

from pathlib import Path

from pencilwood.findings import in_order
from pencilwood.site.archive import NotForAnArchiveError, check_archive, write_archive
from pencilwood.site.handbook import own_profile
from pencilwood.site.trouble import UnusableCaseError
from pencilwood.words import say


def refusal(file: Path, root: Path, site: Path, language: str) -> str:
    """Why the site must not be packed into `file`, in the user's words; empty when it may."""
    try:
        check_archive(file, root, site)
    except NotForAnArchiveError as refused:
        return say(language, f"start.{refused.reason}", file=str(refused.file))
    return ""


def pack(site: Path, file: Path, root: Path, language: str) -> str:
    """Pack a built site, and say that it is done."""
    profile, findings = own_profile(root, "en")
    if profile is None:
        raise UnusableCaseError(tuple(in_order(findings)))
    write_archive(site, file, profile.languages)
    return say(language, "start.archive.made", file=str(file))
