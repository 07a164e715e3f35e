"""Tables of a chapter tell how many columns they have, so that a narrow screen can set them.

A style sheet could count them by itself, but then every change of any page, each tap of an exercise
too, would have all of the page styled anew. Each cell tells the head of its column as well, which
stands before it where cells stand one above the other.
"""

from __future__ import annotations

import re
from itertools import count
from typing import Final

_TABLE = re.compile(r"<table>(\s*<thead>\s*<tr>)(.*?)(</tr>)(.*?)(?=</table>)", re.DOTALL)
_HEAD = re.compile(r"<th\b[^>]*>(.*?)</th>", re.DOTALL)
_ROW = re.compile(r"<tr>.*?</tr>", re.DOTALL)
_CELL = re.compile(r"<td\b")
_TAG = re.compile(r"<!--.*?-->|<[^>]*>", re.DOTALL)
_STACKED: Final = (2, 3)
"""Numbers of columns that handbook/page.css sets one above the other on a phone."""


def with_column_counts(html: str) -> str:
    """The same text, `data-columns` on each table that Markdown made, `data-label` on its cells."""
    return _TABLE.sub(_counted, html)


def _counted(found: re.Match[str]) -> str:
    opening, cells, closing, rows = found.groups()
    labels = [_plain(head) for head in _HEAD.findall(cells)]
    if len(labels) in _STACKED:
        rows = _ROW.sub(lambda row: _labelled(row[0], labels), rows)
    return f'<table data-columns="{len(labels)}">{opening}{cells}{closing}{rows}'


def _labelled(row: str, labels: list[str]) -> str:
    column = count()

    def told(_: re.Match[str]) -> str:
        here = next(column)
        label = labels[here] if here < len(labels) else ""
        return f'<td data-label="{label}"' if label else "<td"

    return _CELL.sub(told, row)


def _plain(head: str) -> str:
    """The words of a head, fit for an attribute: what it is escaped by stays as it is."""
    return " ".join(_TAG.sub("", head).replace('"', "&quot;").split())
