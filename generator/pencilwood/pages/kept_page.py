"""Keeps whole pages from one build to the next, see `pencilwood.kept`."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import asdict

from pencilwood.kept import kept_json
from pencilwood.pages.page import Heading, Page


def kept_page(kind: str, facts: object, make: Callable[[], Page]) -> Page:
    """The page that follows from `facts`, made only when no earlier build has kept it."""
    page = _read(kept_json(kind, facts, lambda: asdict(make()), lambda row: _read(row) is not None))
    if page is None:
        raise AssertionError("a page that was just made fits")
    return page


def _read(row: object) -> Page | None:
    """The same read back; None for what is no page."""
    if not isinstance(row, dict):
        return None
    try:
        headings = tuple(Heading(**one) for one in row["headings"])
        return Page(**{**row, "headings": headings})
    except (KeyError, TypeError):
        return None
