"""The menu of every page: some words in four groups, and which of them the page belongs to."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from pencilwood.pages.chapters.chapter_page import LIST_OF
from pencilwood.pages.handbook import Handbook
from pencilwood.pages.page import Addresses, Page
from pencilwood.words import say

HOME = "index"
GROUPS = {
    "learn": ("workers", "safety"),
    "practise": ("vines", "practice", "quizzes"),
    "train": ("trainers", "teachers", "blocks", "sums"),
    "look-up": ("rules", "scores", "words", "sources"),
}
"""Paths of the pages in each group; a page that stands in none joins the first."""
_LIST_OF_FOLDER = {
    "cases": "vines",
    "winters": "vines",
    "new-arm": "vines",
    "rules": "rules",
    "quizzes": "quizzes",
    "blocks": "blocks",
}
_LIST_OF_PAGE = {"crew": "trainers"}


@dataclass(frozen=True)
class Entry:
    """One word of the menu."""

    title: str
    address: str
    """From the site's root."""
    current: str
    """`page` where it is the page that is read, `true` where that is part of it, else empty."""


@dataclass(frozen=True)
class Group:
    """Some words with a title above them."""

    name: str
    title: str
    entries: tuple[Entry, ...]


def around(listed: Sequence[Page], handbook: Handbook, page: Page) -> dict[str, object]:
    """What the theme's templates put around `page`; `listed` have a menu title in its language."""
    words = {
        "menu": "menu",
        "home": "home",
        "close": "menu.close",
        "on_page": "menu.on-page",
        "top": "menu.top",
    }
    said = {name: say(page.language, f"pages.{key}") for name, key in words.items()}
    return {"menu": menu_of(listed, handbook, page), "words": said}


def menu_of(listed: Sequence[Page], handbook: Handbook, page: Page) -> tuple[Group, ...]:
    """The menu that stands on `page`; `listed` have a menu title in its language."""
    titles = {one.path: one.menu_title for one in listed if one.path != HOME}
    grouped = {path for paths in GROUPS.values() for path in paths}
    others = tuple(path for path in titles if path not in grouped)
    addresses = Addresses(handbook.profile.languages)
    above = section_of(page, handbook)
    groups = []
    for name, paths in GROUPS.items():
        entries = tuple(
            Entry(
                titles[path],
                addresses.of(path, page.language),
                "page" if path == page.path else "true" if path == above else "",
            )
            for path in (*paths, *(others if name == next(iter(GROUPS)) else ()))
            if path in titles
        )
        if entries:
            groups.append(Group(name, say(page.language, f"pages.menu.{name}"), entries))
    return tuple(groups)


def section_of(page: Page, handbook: Handbook) -> str:
    """Path of the list that a page is part of; empty for one that stands for itself."""
    folder, slash, _ = page.path.partition("/")
    if slash:
        return _LIST_OF_FOLDER.get(folder, "")
    chapter = handbook.chapter(page.path, page.language)
    if chapter is not None and chapter.audience:
        return LIST_OF[chapter.audience]
    return _LIST_OF_PAGE.get(page.path, "")
