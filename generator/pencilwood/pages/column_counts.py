"""Tables of a chapter tell how many columns they have, so that a narrow screen can set them.

A style sheet could find that out by itself, but then every change of any page, each tap of an
exercise too, would have all of the page styled anew.
"""

from __future__ import annotations

import re

_HEAD = re.compile(r"<table>(\s*<thead>\s*<tr>)(.*?)(</tr>)", re.DOTALL)


def with_column_counts(html: str) -> str:
    """The same text, `data-columns` on each table that Markdown made."""
    return _HEAD.sub(_counted, html)


def _counted(found: re.Match[str]) -> str:
    opening, cells, closing = found.groups()
    return f'<table data-columns="{cells.count("</th>")}">{opening}{cells}{closing}'
