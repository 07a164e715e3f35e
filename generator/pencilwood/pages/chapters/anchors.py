"""The places on a page that a link can lead to: `#cutting-back`."""

from __future__ import annotations

import re

import markdown

from pencilwood.pages.page import Page

_EXTENSIONS = ("toc", "attr_list", "footnotes", "admonition", "tables", "fenced_code", "def_list")
"""What makes such places, whether or not the handbook asks for it."""
# Of a page of ours, what goes in late is left out: drawings and what scripts read.
_ID = re.compile(r'\b(?:id|name)="([^"]+)"')


def anchors_of(title: str, filled: str) -> frozenset[str]:
    """The names of all places of a chapter whose calls have been filled in."""
    html = markdown.markdown(f"# {title}\n\n{filled}\n", extensions=list(_EXTENSIONS))
    return frozenset(_ID.findall(html))


def places_of(page: Page) -> frozenset[str]:
    """The names of all places of a page that we make ourselves."""
    return anchors_of(page.title, page.markdown) | own_ids(page)


def own_ids(page: Page) -> frozenset[str]:
    """The names of the places in what stands around the trainer's own words."""
    return frozenset(_ID.findall(f"{page.opening} {page.body}"))
