"""The service worker of a built site: what the site is made of, and the script that keeps it."""

from __future__ import annotations

import json
import re
import zlib
from collections.abc import Iterator, Mapping, Sequence
from functools import partial
from pathlib import Path

from pencilwood.assets import asset_root
from pencilwood.kept import kept_text
from pencilwood.pages.finished import content_hash
from pencilwood.pages.papers_list import PAPERS

OFFLINE_WORKER = "offline-worker.js"
"""At the site's root: a worker keeps only what lies beside or below it."""
APOLOGY = "offline"
"""The page that stands in for one that is not on the device."""

# For search engines, and what nobody is led to.
_LEFT_OUT = re.compile(r"sitemap\.xml(\.gz)?|404\.html|.*/search_index\.js")
# The theme brings word stems of all languages; the handbook's search needs its own.
_STEMS = re.compile(r"assets/javascripts/lunr/(?:min/lunr\.)?([a-z.]+?)(?:\.min)?\.js")
_NEEDED = re.compile(rb'(?:<script src|<link rel="stylesheet" href)="([^":]+)"')

_AS_A_HOST = 4
"""How hard zlib tries, from 1 to 9; usual for a host that compresses as it sends."""


def offline_worker(site: Path) -> str:
    """The text of the worker for a site in which every other file is in place."""
    files: dict[str, tuple[str, int]] = {}
    core: set[str] = set()
    for path in sorted(site.rglob("*")):
        name = path.relative_to(site).as_posix()
        if path.is_file() and _is_kept(name, site):
            # One after the other: all of them together would fill the memory.
            data = path.read_bytes()
            files[name] = content_hash(data), len(data)
            core.update(_core(name, data))
    build = {
        "version": content_hash(json.dumps(files).encode()),
        "download": _download_bytes(site, files),
        "core": sorted(core & files.keys()),
        "files": files,
    }
    script = (asset_root() / OFFLINE_WORKER).read_text(encoding="utf-8")
    told = json.dumps(build, ensure_ascii=False, separators=(",", ":"))
    return f"self.PENCILWOOD_BUILD={told};\n{script}"


def _is_kept(name: str, site: Path) -> bool:
    # Papers are for a printer: a device keeps those alone that were opened on it.
    if name.startswith(f"{PAPERS}/"):
        return False
    stems = _STEMS.fullmatch(name)
    if stems is not None:
        return stems[1] == "stemmer.support" or (site / stems[1]).is_dir()
    return name != OFFLINE_WORKER and _LEFT_OUT.fullmatch(name) is None


def _core(name: str, data: bytes) -> Iterator[str]:
    """What every page needs: scripts, styles, and the page that says what is missing."""
    if name.endswith(".html"):
        for lead in _NEEDED.findall(data):
            yield _led_to(name, lead.decode())
        if Path(name).name == f"{APOLOGY}.html":
            yield name


def _led_to(page: str, lead: str) -> str:
    """The file that a page at `page` means."""
    parts = page.split("/")[:-1]
    for part in lead.partition("?")[0].split("/"):
        if part == "..":
            parts = parts[:-1]
        elif part != ".":
            parts.append(part)
    return "/".join(parts)


def _download_bytes(site: Path, files: Mapping[str, tuple[str, int]]) -> int:
    """What a web host sends for all of it: hosts compress text, about as zlib does.

    Measured in many small heaps, so that a site in which little has changed is soon measured.
    """
    heaps: dict[str, list[str]] = {}
    for name in sorted(files, key=lambda name: (files[name], name)):
        heaps.setdefault(files[name][0][:2], []).append(name)
    return sum(
        int(kept_text("download", [files[name] for name in heap], partial(_measured, site, heap)))
        for heap in heaps.values()
    )


def _measured(site: Path, heap: Sequence[str]) -> str:
    return str(sum(len(zlib.compress((site / name).read_bytes(), _AS_A_HOST)) for name in heap))
