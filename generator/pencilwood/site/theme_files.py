"""Which of the theme's files a handbook takes along, and what stands in place of others."""

from __future__ import annotations

import re
from pathlib import Path

from pencilwood.words import LANGUAGES

# English needs no word stems of its own. The other stems, and the word breakers beside them, serve
# languages that no handbook speaks; one of the breakers names no licence, the rest is weight.
_STEMS = re.compile(r"assets/javascripts/lunr/(?:min/lunr\.)?([a-z.]+?)(?:\.min)?\.js")
_NEEDED_STEMS = {"stemmer.support", "multi", *LANGUAGES}
# Source maps are for people who mend the theme; the icon is the theme's own sign.
_UNUSED = re.compile(r".*\.(?:js|css)\.map|assets/images/favicon\.png")


TEMPLATES = Path(__file__).parents[1] / "theme"
"""Our own masthead, menu, list of headings and foot of a page."""


def put_before_theme(folders: list[str], trainers: str | None) -> None:
    """Let our templates go before the theme's, and those of a trainer's own folder before ours.

    `folders` is where templates are looked for, in this order.
    """
    ours = str(TEMPLATES)
    if ours not in folders:
        folders.insert(sum(one == trainers for one in folders), ours)


def is_of_use(path: str) -> bool:
    """Whether a handbook needs the theme's file at `path` of the site."""
    stems = _STEMS.fullmatch(path)
    if stems is not None:
        return stems[1] in _NEEDED_STEMS
    return _UNUSED.fullmatch(path) is None
