"""Reads a built page: its ids, and where it leads."""

from html.parser import HTMLParser
from pathlib import Path

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
