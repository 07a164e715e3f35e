"""Reads a built page: its ids, and where it leads."""

import posixpath
from collections.abc import Iterator
from html.parser import HTMLParser
from pathlib import Path
from urllib.parse import unquote, urlsplit

LEADS = {"href", "src"}


class Reading(HTMLParser):
    """What a test wants to know of a page."""

    def __init__(self, path: Path) -> None:
        super().__init__()
        self.ids: list[str] = []
        self.leads: list[str] = []
        self.languages: list[str] = []
        self.alternates: dict[str, str] = {}
        self.feed(path.read_text("utf-8"))

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = {name: value or "" for name, value in attrs}
        if "id" in given:
            self.ids.append(given["id"])
        if tag == "html":
            self.languages.append(given.get("lang", ""))
        if tag == "a" and "hreflang" in given:
            self.alternates[given["hreflang"]] = given["href"]
        self.leads.extend(value for name, value in given.items() if name in LEADS)


def pages(site: Path) -> dict[str, Reading]:
    """Every page of a site, by its path."""
    found = {path.relative_to(site).as_posix(): Reading(path) for path in site.rglob("*.html")}
    assert found
    return found


def leads_to_nothing(site: Path) -> list[str]:
    """Links of all pages that lead to no file, to no place on a page, or out of the site."""
    read = pages(site)
    return [
        f"{name}: {lead}"
        for name, page in read.items()
        for lead in page.leads
        if any(_troubles(site, read, name, lead))
    ]


def _troubles(site: Path, read: dict[str, Reading], name: str, lead: str) -> Iterator[bool]:
    parts = urlsplit(lead)
    if parts.scheme == "data":
        return
    if parts.scheme in ("http", "https") and posixpath.basename(name) == "sources.html":
        return  # where a source was published; nothing is fetched from there
    yield bool(parts.scheme or parts.netloc)
    path = unquote(parts.path)
    to = posixpath.normpath(posixpath.join(posixpath.dirname(name), path)) if path else name
    yield not (site / to).is_file()
    yield bool(parts.fragment) and to in read and parts.fragment not in read[to].ids
