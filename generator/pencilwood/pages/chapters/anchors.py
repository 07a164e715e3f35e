"""The places on a page that a link can lead to: `#cutting-back`."""

from __future__ import annotations

import re

import markdown

_EXTENSIONS = ("toc", "attr_list", "footnotes", "admonition", "tables", "fenced_code", "def_list")
"""What makes such places, whether or not the handbook asks for it."""
_ID = re.compile(r'\b(?:id|name)="([^"]+)"')


def anchors_of(title: str, filled: str) -> frozenset[str]:
    """The names of all places of a chapter whose calls have been filled in."""
    html = markdown.markdown(f"# {title}\n\n{filled}\n", extensions=list(_EXTENSIONS))
    return frozenset(_ID.findall(html))
