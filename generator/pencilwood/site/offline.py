"""The service worker of a built site: what the site is made of, and the script that keeps it."""

from __future__ import annotations

import json
import re
import zlib
from collections.abc import Mapping
from pathlib import Path

from pencilwood.assets import asset_root
from pencilwood.kept import kept_text
from pencilwood.pages.finished import content_hash

OFFLINE_WORKER = "offline-worker.js"
"""At the site's root: a worker keeps only what lies beside or below it."""
APOLOGY = "offline"
"""The page that stands in for one that is not on the device."""

# For search engines, and what nobody is led to.
_LEFT_OUT = re.compile(r"sitemap\.xml(\.gz)?|404\.html|.*/search_index\.js")
# The theme brings word stems of all languages; the handbook's search needs its own.
_STEMS = re.compile(r"assets/javascripts/lunr/(?:min/lunr\.)?([a-z.]+?)(?:\.min)?\.js")
_NEEDED = re.compile(rb'(?:<script src|<link rel="stylesheet" href)="([^":]+)"')


def offline_worker(site: Path) -> str:
    """The text of the worker for a site in which every other file is in place."""
    contents = {
        name: path.read_bytes()
        for path in sorted(site.rglob("*"))
        if path.is_file() and _is_kept(name := path.relative_to(site).as_posix(), site)
    }
    files = {name: [content_hash(data), len(data)] for name, data in contents.items()}
    build = {
        "version": content_hash(json.dumps(files).encode()),
        "download": _download_bytes(contents, files),
        "core": _core(contents),
        "files": files,
    }
    script = (asset_root() / OFFLINE_WORKER).read_text(encoding="utf-8")
    told = json.dumps(build, ensure_ascii=False, separators=(",", ":"))
    return f"self.PENCILWOOD_BUILD={told};\n{script}"


def _is_kept(name: str, site: Path) -> bool:
    stems = _STEMS.fullmatch(name)
    if stems is not None:
        return stems[1] == "stemmer.support" or (site / stems[1]).is_dir()
    return name != OFFLINE_WORKER and _LEFT_OUT.fullmatch(name) is None


def _core(contents: Mapping[str, bytes]) -> list[str]:
    """The scripts and styles of all pages, and the page that says what is missing."""
    core = {name for name in contents if Path(name).name == f"{APOLOGY}.html"}
    for name, data in contents.items():
        if name.endswith(".html"):
            for lead in _NEEDED.findall(data):
                core.add(_led_to(name, lead.decode()))
    return sorted(core & contents.keys())


def _led_to(page: str, lead: str) -> str:
    """The file that a page at `page` means."""
    parts = page.split("/")[:-1]
    for part in lead.partition("?")[0].split("/"):
        if part == "..":
            parts = parts[:-1]
        elif part != ".":
            parts.append(part)
    return "/".join(parts)


def _download_bytes(contents: Mapping[str, bytes], files: object) -> int:
    """What a web host sends for all of it: hosts compress text, about as zlib does."""

    def measured() -> str:
        return str(sum(len(zlib.compress(data, 5)) for data in contents.values()))

    return int(kept_text("download", files, measured))
