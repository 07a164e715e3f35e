"""Divides the search among the languages, so that nobody gets pages in the other one."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Mapping
from typing import Any

from pencilwood.pages.page import Addresses
from pencilwood.site.finished_pages import Docs

INDEX = "search/search_index.json"
_BASE = re.compile(r'(<script id="__config" type="application/json">{[^<]*?"base": )"[^"]*"')


def read_index(text: str) -> tuple[Mapping[str, Any], Docs]:
    """What an index says of how to search, and what it knows, section by section."""
    index = json.loads(text)
    docs: Docs = index["docs"]
    # A handbook of thousands of vines has many megabytes of them; nobody is to hold them twice.
    index["docs"] = ()
    return index, docs


def divide_index(
    index: Mapping[str, Any], all_docs: Docs, addresses: Addresses
) -> Iterator[tuple[str, str]]:
    """The search files of each language, one after the other: as the index says, of `all_docs`.

    A page opened from a disk cannot read JSON, so there is the same as a script.
    """
    for language in addresses.languages:
        folder = addresses.folder(language)
        docs = [
            {**doc, "location": str(doc["location"]).removeprefix(folder)}
            for doc in all_docs
            if _language_of(str(doc["location"]), addresses) == language
        ]
        own = {**index, "config": {**index["config"], "lang": [language]}, "docs": docs}
        text = json.dumps(own, ensure_ascii=False, separators=(",", ":"))
        yield f"{folder}{INDEX}", text
        yield f"{folder}{INDEX.removesuffix('on')}", f"var __index = {text}"


def _language_of(location: str, addresses: Addresses) -> str:
    for language in addresses.languages[1:]:
        if location.startswith(addresses.folder(language)):
            return language
    return addresses.languages[0]


def point_search_at(html: str, folder: str) -> str:
    """A page whose search looks into `folder`, the way from the page to its language's root."""
    return _BASE.sub(lambda found: f"{found[1]}{json.dumps(folder)}", html, count=1)
