"""Divides the search among the languages, so that nobody gets pages in the other one."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping

from pencilwood.pages.page import Addresses
from pencilwood.site.finished_pages import Docs

INDEX = "search/search_index.json"
_BASE = re.compile(r'(<script id="__config" type="application/json">{[^<]*?"base": )"[^"]*"')


def docs_of(index: str) -> Docs:
    """What an index knows, section by section."""
    docs: Docs = json.loads(index)["docs"]
    return docs


def divide_index(index: str, all_docs: Docs, addresses: Addresses) -> Mapping[str, str]:
    """The search files of each language: as the index says, but of `all_docs`.

    A page opened from a disk cannot read JSON, so there is the same as a script.
    """
    whole = json.loads(index)
    files: dict[str, str] = {}
    for language in addresses.languages:
        folder = addresses.folder(language)
        docs = [
            {**doc, "location": str(doc["location"]).removeprefix(folder)}
            for doc in all_docs
            if _language_of(str(doc["location"]), addresses) == language
        ]
        own = {**whole, "config": {**whole["config"], "lang": [language]}, "docs": docs}
        text = json.dumps(own, ensure_ascii=False, separators=(",", ":"))
        files[f"{folder}{INDEX}"] = text
        files[f"{folder}{INDEX.removesuffix('on')}"] = f"var __index = {text}"
    return files


def _language_of(location: str, addresses: Addresses) -> str:
    for language in addresses.languages[1:]:
        if location.startswith(addresses.folder(language)):
            return language
    return addresses.languages[0]


def point_search_at(html: str, folder: str) -> str:
    """A page whose search looks into `folder`, the way from the page to its language's root."""
    return _BASE.sub(lambda found: f"{found[1]}{json.dumps(folder)}", html, count=1)
