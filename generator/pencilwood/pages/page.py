"""One finished page, before any site generator has seen it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True)
class Heading:
    """A heading that the page's own table of contents names."""

    anchor: str
    title: str


@dataclass(frozen=True)
class Page:
    """A page in one language.

    `body` is HTML with a mark (an HTML comment) wherever one of the `fragments` goes in. The
    fragments, drawings above all, stay out of the way of the site generator and of its search.
    """

    path: str
    """Where it stands, with neither language nor ending: `cases/tidy-vine`."""
    language: str
    title: str
    body: str = ""
    fragments: Mapping[str, str] = field(default_factory=dict)
    """What goes in late, by its mark."""
    opening: str = ""
    """HTML that stands right under the title."""
    markdown: str = ""
    """The trainer's own words, which stand between the opening and the body."""
    headings: tuple[Heading, ...] = ()
    description: str = ""
    menu_title: str = ""
    """What the menu calls it; empty when it is not in the menu."""

    def complete(self, html: str) -> str:
        """HTML that holds the body, with every fragment put where its mark stands."""
        for mark, fragment in self.fragments.items():
            html = html.replace(mark, fragment)
        return html


@dataclass(frozen=True)
class Addresses:
    """Where pages are found: the first language at the root, each other in its own folder."""

    languages: tuple[str, ...]

    def folder(self, language: str) -> str:
        """The folder of a language, with a slash behind it, or nothing."""
        return "" if language == self.languages[0] else f"{language}/"

    def of(self, path: str, language: str) -> str:
        """The address of a page from the site's root."""
        return f"{self.folder(language)}{path}.html"
