"""Packs a built site into one file, to be carried on a USB stick and opened with no network.

The file holds ``START-HERE.html`` and the site in a folder beside it. The same site gives the same
bytes on every machine with the same zlib: names in order, one fixed time, one set of permissions.
"""

from __future__ import annotations

import html
import os
import tempfile
import zipfile
from contextlib import suppress
from pathlib import Path

from pencilwood.packages.package import zipped
from pencilwood.pages.page import Addresses
from pencilwood.words import LANGUAGES, say

START = "START-HERE.html"
FOLDER = "handbook"
"""Where the site stands in the archive."""
_OWN = ("content", "quizzes", "generator", "site_assets")
_PAGE = """\
<!doctype html>
<html lang="{first}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>{title}</title>
<style>
body {{ max-width: 36rem; margin: 2rem auto; padding: 0 1rem; font: 1.1rem/1.6 sans-serif; }}
a {{ font-size: 1.3rem; }}
</style>
</head>
<body>
{parts}
</body>
</html>
"""
_PART = """\
<section lang="{language}">
<h1>{title}</h1>
<p>{unpack}</p>
<p><a href="{way}">{open}</a></p>
<p>{network}</p>
</section>"""


class NotForAnArchiveError(Exception):
    """An archive must not be put there; `reason` names why, for the catalogue of words."""

    def __init__(self, reason: str, file: Path) -> None:
        super().__init__(f"{reason}: {file}")
        self.reason = reason
        self.file = file


def check_archive(file: Path, root: Path, site: Path) -> None:
    """Raise NotForAnArchiveError when packing into `file` would destroy or spoil something."""
    full = file.resolve()
    if any(full.is_relative_to(own.resolve()) for own in (site, *(root / name for name in _OWN))):
        raise NotForAnArchiveError("archive.inside", file)
    if full.exists() and not _is_ours(full):
        raise NotForAnArchiveError("archive.taken", file)


def _is_ours(file: Path) -> bool:
    try:
        with zipfile.ZipFile(file) as archive:
            return START in archive.namelist()
    except (zipfile.BadZipFile, OSError):
        return False


def write_archive(site: Path, file: Path, languages: tuple[str, ...]) -> None:
    """Pack `site`, a handbook in these languages; the file is there whole or as it was before."""
    found = sorted(path for path in site.rglob("*") if path.is_file())
    held = {START: _start_page(languages).encode()}
    for path in found:
        held[f"{FOLDER}/{path.relative_to(site).as_posix()}"] = path.read_bytes()
    full = file.resolve()
    full.parent.mkdir(parents=True, exist_ok=True)
    handle, waiting = tempfile.mkstemp(prefix=f".{full.name}-", dir=full.parent)
    try:
        with os.fdopen(handle, "wb") as new:
            new.write(zipped(held))
        Path(waiting).chmod(0o644)
        Path(waiting).replace(full)
    finally:
        with suppress(OSError):
            Path(waiting).unlink()


def _start_page(languages: tuple[str, ...]) -> str:
    """A page in every language of the program, leading to the handbook in the nearest one."""
    addresses = Addresses(languages)
    spoken = (*languages, *(one for one in LANGUAGES if one not in languages))
    parts = []
    for language in spoken:
        words = {
            name: html.escape(say(language, f"start.here.{name}"))
            for name in ("title", "unpack", "open", "network")
        }
        there = language if language in languages else languages[0]
        way = f"{FOLDER}/{addresses.of('index', there)}"
        parts.append(_PART.format(language=language, way=way, **words))
    title = " / ".join(say(language, "start.here.title") for language in spoken)
    return _PAGE.format(first=spoken[0], title=html.escape(title), parts="\n".join(parts))
