"""What others made and the built site carries: whose it is, its licence and which files hold it.

The list is `site_assets/licences/parts.json`; the licence texts stand beside it and are published.
"""

from __future__ import annotations

import json
from dataclasses import dataclass
from functools import cache

from pencilwood.assets import asset_root


@dataclass(frozen=True)
class PartByOthers:
    """One work of others."""

    name: str
    licence: str
    """In the words of SPDX."""
    text: str
    """File of the licence text in `site_assets/licences/`."""
    source: str
    """Where its sources are, as some of the licences ask us to say."""
    files: tuple[str, ...]
    """Patterns of the site's files that hold it."""
    bundled: tuple[str, ...]
    """Names of the npm packages that it has in the theme's scripts and styles."""
    icons: str = ""
    """Name of the theme's set of icons that it is."""
    in_papers: tuple[str, ...] = ()
    """Patterns of the package's files that papers take it from."""


@cache
def parts_by_others() -> tuple[PartByOthers, ...]:
    """All of them, the theme first."""
    read = json.loads((asset_root() / "licences" / "parts.json").read_text(encoding="utf-8"))
    return tuple(
        PartByOthers(
            name=entry["name"],
            licence=entry["licence"],
            text=entry["text"],
            source=entry["source"],
            files=tuple(entry["files"]),
            bundled=tuple(entry["bundled"]),
            icons=entry.get("icons", ""),
            in_papers=tuple(entry.get("in papers", ())),
        )
        for entry in read["parts"]
    )
