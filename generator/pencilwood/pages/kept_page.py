"""Keeps whole pages from one build to the next, see `pencilwood.kept`."""

from __future__ import annotations

import json
from collections.abc import Callable
from dataclasses import asdict, replace
from functools import cache

from pencilwood.kept import is_kept, kept_json, key_of
from pencilwood.pages.page import Heading, Page


def kept_page(kind: str, facts: object, make: Callable[[], Page], *, whole: bool = True) -> Page:
    """The page that follows from `facts`, made only when no earlier build has kept it.

    Its fragments, nearly all of its bytes, are an entry of their own. Where they are kept and not
    the `whole` page is wanted, they stay there, and the page `waits` for them.
    """
    made = cache(make)
    page = _read(kept_json(kind, facts, lambda: _row(made()), lambda row: _read(row) is not None))
    if page is None:
        raise AssertionError("a page that was just made fits")
    late = f"{kind}-late"
    if whole or not is_kept(late, facts):
        found = kept_json(late, facts, lambda: dict(made().fragments), _are_texts)
        page = replace(page, fragments=_texts(found))
    if whole or not is_kept(late, facts):
        return page
    return replace(page, fragments={}, waits=key_of(kind, facts))


def page_facts(page: Page) -> object:
    """All that a page says, or the name of what it was made of."""
    return [page.path, page.language, page.waits] if page.waits else json.dumps(asdict(page))


def _row(page: Page) -> dict[str, object]:
    row = asdict(replace(page, fragments={}))
    del row["waits"]
    return row


def _read(row: object) -> Page | None:
    """The same read back; None for what is no page."""
    if not isinstance(row, dict):
        return None
    try:
        headings = tuple(Heading(**one) for one in row["headings"])
        return Page(**{**row, "headings": headings})
    except (KeyError, TypeError):
        return None


def _are_texts(row: object) -> bool:
    return isinstance(row, dict) and _texts(row) == row


def _texts(row: object) -> dict[str, str]:
    items = row.items() if isinstance(row, dict) else ()
    return {mark: text for mark, text in items if isinstance(text, str)}
