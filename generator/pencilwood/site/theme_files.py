"""Which of the theme's files a handbook takes along."""

from __future__ import annotations

import re

from pencilwood.words import LANGUAGES

# English needs no word stems of its own. The other stems, and the word breakers beside them, serve
# languages that no handbook speaks; one of the breakers names no licence, the rest is weight.
_STEMS = re.compile(r"assets/javascripts/lunr/(?:min/lunr\.)?([a-z.]+?)(?:\.min)?\.js")
_NEEDED_STEMS = {"stemmer.support", "multi", *LANGUAGES}
# Source maps are for people who mend the theme; the icon is the theme's own sign.
_UNUSED = re.compile(r".*\.(?:js|css)\.map|assets/images/favicon\.png")


def is_of_use(path: str) -> bool:
    """Whether a handbook needs the theme's file at `path` of the site."""
    stems = _STEMS.fullmatch(path)
    if stems is not None:
        return stems[1] in _NEEDED_STEMS
    return _UNUSED.fullmatch(path) is None
