"""Keeps pages as the site generator finished them, so that it need not finish them again.

A page is finished anew when anything changes that it is made of: what we give, what is said around
it, the settings, the versions of what makes it. So the bytes are the same as if nothing were kept.
"""

from __future__ import annotations

import json
import re
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from importlib.metadata import PackageNotFoundError, version
from importlib.util import find_spec
from pathlib import Path

from pencilwood.kept import found_text, keep_text, key_of
from pencilwood.pages.finished import our_versions
from pencilwood.pages.kept_page import page_facts
from pencilwood.pages.page import Page

_KIND = "finished-page"
_THEME = "material"
_PLUGINS = {"pencilwood", "search", "material/search", "offline", "material/offline"}
_FROM_ELSEWHERE = re.compile(r"INHERIT|!")
"""Settings that take something from another file, or from the environment."""
_MAKERS = ("mkdocs", "mkdocs-material", "Jinja2", "MarkupSafe", "Markdown", "pymdown-extensions")

Docs = Sequence[Mapping[str, object]]
"""What the search knows of a page, section by section."""


@dataclass(frozen=True)
class FinishedPage:
    """A page as it is published, and what the rest of the site must know of it."""

    html: str
    docs: Docs
    anchors: tuple[str, ...]
    """What in it a chapter may link to."""


@dataclass(frozen=True)
class Makers:
    """Who has a hand in a page beside us, as the settings name them."""

    theme: str | None
    has_own_ways: bool
    """Whether the trainer has templates or scripts of their own, which may do anything."""
    plugins: Iterable[str]
    extensions: Iterable[str]
    settings: str
    """Their text."""


def surroundings(makers: Makers, more: Sequence[object]) -> str | None:
    """A name for all that every page is made of beside its own: `more` is what is said around it.

    None where somebody has a hand in pages of whom we do not know what they do.
    """
    known = (
        makers.theme == _THEME
        and not makers.has_own_ways
        and set(makers.plugins) <= _PLUGINS
        and _FROM_ELSEWHERE.search(makers.settings) is None
        and all(_is_known(one) for one in makers.extensions)
    )
    if not known:
        return None
    versions = [_version(one) for one in _MAKERS]
    return key_of(_KIND, [makers.settings, versions, our_versions(), more])


def can_be_finished(page: Page) -> bool:
    """Whether nothing on the page must be looked at in every build.

    The trainer's own Markdown has links that may lead nowhere any more, and of what stands in the
    menu the site generator wants to know more.
    """
    return not page.markdown and not page.menu_title


class FinishedPages:
    """What earlier builds finished, by its address in the site."""

    def __init__(self) -> None:
        self._surroundings: str | None = None
        self._folder = Path()
        self._making: dict[str, str] = {}
        self._there: dict[str, tuple[str, FinishedPage]] = {}
        self._shown: dict[str, tuple[str, FinishedPage]] = {}

    def begin(self, surroundings: str | None, folder: Path) -> None:
        """Start a build in a folder; without `surroundings` nothing is found and nothing kept."""
        if folder != self._folder:
            self._folder, self._shown = folder, {}
        self._surroundings = surroundings
        self._making, self._there = {}, {}

    def found(self, page: Page, address: str) -> FinishedPage | None:
        """The page, if a build has finished it; with no `html` where the folder holds it still."""
        if self._surroundings is None or not can_be_finished(page):
            return None
        name = key_of(_KIND, [self._surroundings, page_facts(page)])
        shown_name, shown = self._shown.get(address, ("", None))
        if shown is None or shown_name != name:
            text = found_text(_KIND, name)
            shown = None if text is None else _read(text)
        if shown is None:
            self._making[address] = name
        else:
            self._there[address] = name, replace(shown, html="")
        return shown

    @property
    def making(self) -> Collection[str]:
        """Addresses of the pages that must be finished in this build, and are kept then."""
        return self._making

    def keep(self, address: str, html: str, docs: Docs, anchors: Iterable[str]) -> None:
        """Keep one of the pages that were `making`."""
        page = FinishedPage(html, docs, tuple(sorted(anchors)))
        name = self._making[address]
        about = json.dumps([page.docs, page.anchors], ensure_ascii=False)
        keep_text(_KIND, name, f"{about}\n{page.html}")
        self._there[address] = name, replace(page, html="")

    def hold(self) -> None:
        """Hold what this build made for the next one in the same folder."""
        self._shown = self._there

    def all_docs(self, read: Docs, addresses: Iterable[str]) -> Docs:
        """All that the search knows, page by page: what it has just `read`, and what was kept."""
        of_page = docs_by_page(read)
        kept = {address: page.docs for address, (_, page) in self._there.items()}
        return [doc for one in addresses for doc in of_page.get(one) or kept.get(one, ())]


def docs_by_page(docs: Docs) -> Mapping[str, Docs]:
    """The sections that a search knows by the address of their page."""
    found: dict[str, list[Mapping[str, object]]] = {}
    for doc in docs:
        found.setdefault(str(doc["location"]).partition("#")[0], []).append(doc)
    return found


def _read(text: str) -> FinishedPage | None:
    about, end, html = text.partition("\n")
    try:
        docs, anchors = json.loads(about)
    except (TypeError, ValueError):
        return None
    return FinishedPage(html, docs, tuple(anchors)) if end else None


def _is_known(extension: str) -> bool:
    if extension.startswith("pymdownx."):
        return True
    name = extension.removeprefix("markdown.extensions.")
    return name.isidentifier() and find_spec(f"markdown.extensions.{name}") is not None


def _version(package: str) -> str:
    try:
        return version(package)
    except PackageNotFoundError:
        return ""
